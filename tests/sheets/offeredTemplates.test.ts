import { describe, expect, test } from 'vitest';
import { LONG } from '../../src/sheets/longTemplates';
import { planAlone } from '../../src/sheets/makePlan';
import { SHORT, templateOf, TOPS } from '../../src/sheets/offeredTemplates';
import type { BookSheet } from '../../src/book/book';
import type { Template } from '../../src/sheets/template';
import { TEMPLATES } from '../../src/sheets/templates';
import { PICTURED_ROWS, picturedPart } from '../../src/sheets/picturedPart';

const planOf = (template: Template): BookSheet => planAlone(template, true).sheet;
const rowsOf = (template: Template): number =>
  template.blocks.reduce((sum, block) => sum + (block.kind === 'table' ? block.rows.length : 0), 0);

test('a page starts without the rows of the proof, and with all others', () => {
  expect(LONG.map(({ id }) => id)).toEqual(['proof']);
  expect(TOPS.map(({ id }) => id)).toEqual(TEMPLATES.map(({ id }) => id));
  expect(SHORT).toEqual(TEMPLATES.filter(({ id }) => id !== 'proof'));
  const [proof, top] = [TEMPLATES, TOPS].map((all) => all.find(({ id }) => id === 'proof') as Template);
  expect(rowsOf(proof as Template)).toBeGreaterThan(10 * rowsOf(top as Template));
});

test('the sheet that is laid is whole', async () => {
  for (const template of TEMPLATES) expect(await templateOf(template.id)).toEqual(template);
  expect(await templateOf('no-such-sheet')).toBeUndefined();
});

describe.each(TEMPLATES)('of “$name”', (template) => {
  test('the top shows every cell that a picture does, and no other rows', () => {
    const top = picturedPart(template);
    const pictured = ({ cells }: BookSheet) => cells.filter(({ row }) => row < PICTURED_ROWS);
    expect(pictured(planOf(top))).toEqual(pictured(planOf(template)));
    // a table keeps one row, wherever it lies
    const below = planOf(top).tables.filter(({ area }) => area.row >= PICTURED_ROWS);
    for (const { area } of below) expect(area.rows).toBe(2);
  });
});
