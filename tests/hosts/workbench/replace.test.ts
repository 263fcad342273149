import { CellValueType } from '@univerjs/core';
import { afterEach, expect, it, vi } from 'vitest';
import { replaceIn } from '../../../src/hosts/workbench/find/replace';
import { search } from '../../../src/hosts/workbench/find/search';
import { growTables } from '../../../src/hosts/workbench/tables/growTables';
import { calculated, type TestCell } from '../../engine/book';
import { gridOver } from './gridOver';

// The presets want a page; what is taken from them here is in the packages below them.
vi.mock('@univerjs/preset-sheets-core', async () => ({
  ...(await import('@univerjs/engine-formula')),
  ...(await import('@univerjs/sheets')),
  PREDEFINED_HOOK_NAME_PASTE: {},
}));
vi.mock('@univerjs/preset-sheets-table', async () => await import('@univerjs/sheets-table'));
vi.mock('../../../src/hosts/workbench/book/besideCells', () => ({ RULE_TYPES: {} }));
vi.mock('../../../src/hosts/workbench/grid/rules', () => ({ inputRules: () => [], conditions: () => [] }));
vi.mock('../../../src/hosts/workbench/tables/growForPaste', async (actual) => ({
  ...(await actual<object>()),
  growForPaste: () => {},
}));
vi.mock('../../../src/hosts/workbench/tables/widenRules', () => ({
  rulesOf: () => ({}),
  widenRules: () => ({ redos: [], undos: [] }),
}));

type Book = Awaited<ReturnType<typeof calculated>>;
const books: Book[] = [];
afterEach(() => books.splice(0).forEach((book) => book.dispose()));

async function open(rows: readonly (readonly TestCell[])[]) {
  const book = await calculated({ Plan: rows });
  books.push(book);
  const { workbook } = book;
  const { grid } = gridOver(workbook);
  const sheet = workbook.getActiveSheet();
  const replace = (text: string, by: string) => {
    const wanted = { text, isCaseMinded: false, isWhole: false, isEverywhere: false };
    const { at, left } = replaceIn(grid, search(grid, wanted).matches, wanted, by);
    return { count: at.length, left };
  };
  return { workbook, grid, sheet, replace, read: (area: string) => book.read('Plan', area).flat() };
}

it('replaces where nothing is selected, the signs as they are, in one step', async () => {
  const { workbook, replace, read } = await open([['a.b', 'axb', 'a.b a.b']]);
  expect(replace('a.b', '$&$1')).toEqual({ count: 2, left: [] });
  expect(read('A1:C1')).toEqual(['$&$1', 'axb', '$&$1 $&$1']);
  await workbook.undo();
  expect(read('A1:C1')).toEqual(['a.b', 'axb', 'a.b a.b']);
});

it('empties a cell whose whole text goes', async () => {
  const { replace, read } = await open([['birch', 'birch lamp']]);
  expect(replace('birch', '').count).toBe(2);
  expect(read('A1:B1')).toEqual([null, ' lamp']);
});

it('leaves the day number of a date and the fraction of a percentage, which nobody sees', async () => {
  const { sheet, replace, read } = await open([[45658, 0.5, 0.75, 1450]]);
  sheet.getRange('A1').setNumberFormat('yyyy-mm-dd');
  sheet.getRange('B1').setNumberFormat('0%');
  sheet.getRange('C1').setNumberFormat('hh:mm');
  sheet.getRange('D1').setNumberFormat('#,##0" Ws"');
  expect(replace('45', '46')).toEqual({ count: 1, left: [] });
  expect(replace('0.5', '0.6')).toEqual({ count: 0, left: [] });
  // 50% and 18:00 show it
  expect(replace('0', '1')).toEqual({ count: 1, left: ['format', 'format', 'format'] });
  expect(read('A1:D1')).toEqual([45658, 0.5, 0.75, 1461]);
});

it('keeps what was kept as text a text', async () => {
  const { sheet, replace, read } = await open([[null]]);
  sheet.getRange('A1').setValue({ v: '0071', t: CellValueType.FORCE_STRING });
  expect(replace('1', '2').count).toBe(1);
  expect(read('A1')).toEqual(['0072']);
});

it('leaves headings of a table that would be empty or like another, and says so', async () => {
  const { workbook, replace, read } = await open([
    ['Power', 'Reading', 'power now'],
    ['power', 'Reading', 'x'],
  ]);
  const range = { startRow: 0, endRow: 1, startColumn: 0, endColumn: 2 };
  await workbook.addTable('Plan', 'Kit', range, 'kit');
  // below the heading all may be alike
  expect(replace('Reading', 'POWER')).toEqual({ count: 1, left: ['heading'] });
  expect(read('A1:C2')).toEqual(['Power', 'Reading', 'power now', 'power', 'POWER', 'x']);
  expect(replace('Reading', '')).toEqual({ count: 0, left: ['heading'] });
  expect(replace(' now', '')).toEqual({ count: 0, left: ['heading'] });
  expect(replace('Reading', 'Metered')).toEqual({ count: 1, left: [] });
  expect(replace('Metered', 'Reading')).toEqual({ count: 1, left: [] });
  expect(read('A1:C1')).toEqual(['Power', 'Reading', 'power now']);
});

it('makes no row of a table of words below it that were there before', async () => {
  const { workbook, grid, replace, read } = await open([['Head'], ['birch'], ['see birch']]);
  const area = { startRow: 0, endRow: 1, startColumn: 0, endColumn: 0 };
  await workbook.addTable('Plan', 'Kit', area, 'kit');
  growTables(grid);
  expect(replace('see birch', 'see cedar').count).toBe(1);
  expect(workbook.getTableList()[0]?.range).toMatchObject(area);
  await workbook.undo();
  expect(read('A1:A3')).toEqual(['Head', 'birch', 'see birch']);
});

it('makes a row of a table of what is typed into the free row below it, which undo takes back', async () => {
  const { workbook, grid, sheet, read } = await open([['Head'], ['birch']]);
  const area = { startRow: 0, endRow: 1, startColumn: 0, endColumn: 0 };
  await workbook.addTable('Plan', 'Kit', area, 'kit');
  growTables(grid);
  sheet.getRange('A3').setValue('cedar');
  expect(workbook.getTableList()[0]?.range).toMatchObject({ ...area, endRow: 2 });
  await workbook.undo();
  expect(workbook.getTableList()[0]?.range).toMatchObject(area);
  expect(read('A1:A3')).toEqual(['Head', 'birch', null]);
});
