import { afterAll, beforeAll, expect, test } from 'vitest';
import { isCellError } from '../../src/formula/errors';
import { areaText } from '../../src/formula/areaText';
import { area } from '../../src/formula/area';
import { blockPlace, layout, tableTop } from '../../src/sheets/layout';
import { planAlone } from '../../src/sheets/makePlan';
import { openedBook } from './openedBook';
import { templateOf } from './support';

const template = templateOf('shot-record');
const { sheet } = planAlone(template, true);
const { tables } = layout(template);

let book: Awaited<ReturnType<typeof openedBook>>;
beforeAll(async () => {
  book = await openedBook([sheet]);
  await book.calculate();
});
afterAll(() => book.dispose());

const here = () => {
  const found = book.workbook.getSheetByName(sheet.name);
  if (!found) throw new Error('The sheet is gone.');
  return found;
};
const table = (id: string) => {
  const found = tables.get(id);
  if (!found) throw new Error(`There is no table ${id}.`);
  return found;
};
/** Place of a column's first row. */
const top = (id: string, name: string) => ({
  row: tableTop(table(id)) + 1,
  column: blockPlace(table(id)).column + table(id).columns.findIndex((column) => column.id === name),
});
/** So many rows of a column, from so far below where they were laid. */
const column = (id: string, name: string, rows: number, lower = 0): unknown[] => {
  const { row, column: at } = top(id, name);
  return book
    .read(sheet.name, areaText(area({ row: row + lower, column: at }, rows, 1)))
    .flat()
    .map((value) => (isCellError(value) ? value.error : value));
};

/** Types a formula, or a value, below a heading of the lights. */
const typed = (name: string, row: number, cell: { v?: unknown; f: string | null }): void => {
  const { row: first, column: at } = top('Record', name);
  here()
    .getRange(first + row, at)
    .setValue(cell as { f: string });
};

test('an error in one cell of a light is said in its own row', async () => {
  const [notes, own] = [column('Again', 'Note', 5), column('Again', 'Its own', 5)];
  const held: readonly (readonly [string, number, unknown])[] = [
    ['Light', 1, 'fill'],
    ['Shows', 4, '600'],
  ];
  for (const [name, row] of held) typed(name, row, { f: '=1/0' });
  await book.calculate();
  expect(column('Record', 'Lacks', 5)).toEqual(['', 'error', '', '', 'error']);
  for (const id of ['Again', 'AsLit'])
    expect(column(id, 'Light', 5)).toEqual(['key', 'error', 'rim', 'accent', 'background']);
  // The middle of −0.2, −0.2 and +0.5 is what it was.
  const ERROR = 'a cell holds an error: type it again';
  expect(column('Again', 'Note', 5)).toEqual([notes[0], ERROR, notes[2], notes[3], ERROR]);
  expect(column('Again', 'Its own', 5)).toEqual([own[0], '', own[2], own[3], '']);
  for (const [name, row, value] of held) typed(name, row, { v: value, f: null });
  await book.calculate();
  expect([column('Again', 'Note', 5), column('Again', 'Its own', 5)]).toEqual([notes, own]);
});

// The grid leaves a row that is inserted in a table empty; the workbench fills in the formulas of the row above it.
test('a row more among the answers shows no light in the place of another, with its formulas and without', async () => {
  const notes = column('Again', 'Note', 5);
  const { row, column: at } = top('Again', 'Light');
  here().insertRows(row + 2, 1);
  await book.calculate();
  const names = ['key', 'fill', null, 'rim', 'accent', 'background', ''];
  const texts =
    here()
      .getRange(row + 1, at, 1, table('Again').columns.length)
      .getFormulas()[0] ?? [];
  for (const [i, text] of texts.entries())
    if (text !== '')
      here()
        .getRange(row + 2, at + i)
        .setValue({ f: text.replaceAll(`$${row + 2}`, `$${row + 3}`) });
  await book.calculate();
  expect(column('Again', 'Light', 7)).toEqual(names.map((name) => name ?? ''));
  expect(column('Again', 'Note', 6)).toEqual([notes[0], notes[1], '', notes[2], notes[3], notes[4]]);
});

test('a light more in the middle of the table is answered in its place', async () => {
  // one row lower than it was laid: the answers above have one more
  here().insertRows(top('Record', 'Light').row + 3, 1);
  await book.calculate();
  expect(column('Again', 'Light', 8).map((name) => name ?? '')).toEqual(['key', 'fill', '', '', 'rim', 'accent', 'background', '']); // prettier-ignore
});
