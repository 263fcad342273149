import { expect, test } from 'vitest';
import { LONG } from '../../src/sheets/longTemplates';
import { SHORT, templateOf, TOPS } from '../../src/sheets/offeredTemplates';
import type { Template } from '../../src/sheets/template';
import { TEMPLATES } from '../../src/sheets/templates';
import { topOf } from '../../src/sheets/topOf';
import { byUse } from '../../src/sheets/byUse';

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

test.each(TEMPLATES)('the top of “$name” has all of its blocks, and a row of each table', (template) => {
  const { blocks } = topOf(template);
  expect(blocks.map(({ title }) => title)).toEqual(template.blocks.map(({ title }) => title));
  for (const block of blocks) if (block.kind === 'table') expect(block.rows).toHaveLength(1);
});

test('sheets are offered by use: those of a job first, in the order in which they are filled', () => {
  const ids = byUse(TOPS).map(({ id }) => id);
  expect(ids.slice(0, 3)).toEqual(['heads', 'pops-plan', 'set-card']);
  expect([...ids].sort()).toEqual(TOPS.map(({ id }) => id).sort());
  // none is left to the end by having been forgotten
  expect(ids.at(-1)).toBe('proof');
});
