import { describe, expect, test } from 'vitest';
import type { BookCell, BookSheet } from '../../src/book/book';
import { formatOf } from '../../src/sheets/formats';
import { layout } from '../../src/sheets/layout';
import { WARNED_STYLE } from '../../src/sheets/looks';
import { planAlone } from '../../src/sheets/makePlan';
import type { Field, Template, TemplateColumn, TemplateTable } from '../../src/sheets/template';
import { TEMPLATES } from '../../src/sheets/templates';

/* WCAG 2.2, success criterion 1.4.1: colour is not the only way in which something is told. */

const warned = <T extends Field | TemplateColumn>(all: readonly T[]): readonly T[] =>
  all.filter(({ warning }) => warning);
const fields = ({ blocks }: Template): readonly Field[] =>
  warned(blocks.flatMap((block) => (block.kind === 'form' ? block.fields : [])));
const tables = ({ blocks }: Template): readonly TemplateTable[] =>
  blocks.filter((block) => block.kind === 'table');
/** Words stand left, numbers right. */
const holdsWords = ({ quantity }: TemplateColumn): boolean => formatOf(quantity)?.align === 'left';

/** Whether a cell that is marked says why: it holds words, or a word in the place of a number. */
const saysItself = ({ id, warning, ...column }: TemplateColumn): boolean =>
  holdsWords({ id, ...column }) || (warning?.when.startsWith(`=[@${id}]="`) ?? false);

/** Columns with a warning that neither their cells nor their rows nor the title above them put into words. */
const silent = (table: TemplateTable): readonly string[] =>
  warned(table.columns)
    .filter((column) => !saysItself(column))
    .filter(({ warning }) => {
      const said = [table.title, ...table.columns.filter(holdsWords).map(({ formula = '' }) => formula)];
      return !said.some((words) => words.includes(warning?.text ?? ''));
    })
    .map(({ id }) => id);

const cellAt = (sheet: BookSheet, row: number, column: number): BookCell | undefined =>
  sheet.cells.find((cell) => cell.row === row && cell.column === column);

test('a warning is bold as well as coloured', () => expect(WARNED_STYLE.bold).toBe(true));

describe.each(TEMPLATES.map((template) => [template.name, template] as const))('%s', (_, template) => {
  const { sheet } = planAlone(template, true);

  test('says each warning of a form beside it, behind an exclamation mark', () => {
    const { cells } = layout(template);
    const beside = fields(template).map(({ id }) => {
      const place = cells.get(id)?.place;
      return place && cellAt(sheet, place.row, place.column + 2);
    });
    expect(beside.map((cell) => cell?.part)).toEqual(beside.map(() => 'warning'));
    for (const cell of beside) expect(cell?.formula).toContain('"! ');
  });

  test('says each warning of a table in its cell, its row or its title', () =>
    expect(tables(template).map(silent)).toEqual(tables(template).map(() => [])));

  test('shows the numbers that a map colours', () => {
    const mapped = tables(template).flatMap(({ columns, map = [] }) =>
      columns.filter(({ id }) => map.includes(id)),
    );
    for (const { quantity } of mapped) expect(formatOf(quantity)?.result).toMatch(/0/);
    expect(sheet.conditions.filter(({ kind }) => kind === 'scale')).toHaveLength(mapped.length > 0 ? 1 : 0);
  });
});
