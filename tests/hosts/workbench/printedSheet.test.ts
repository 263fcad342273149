import { expect, it, vi } from 'vitest';
import { printedSheet } from '../../../src/hosts/workbench/print/cellFace';
import { tallRow } from '../../../src/hosts/workbench/book/measures';
import { calculated } from '../../engine/book';
import { gridOver } from './gridOver';

// The presets want a page; what is taken from them here is in the packages below them.
vi.mock('@univerjs/preset-sheets-core', async () => ({
  ...(await import('@univerjs/engine-formula')),
  ...(await import('@univerjs/sheets')),
}));
// No conditions here.
vi.mock('../../../src/hosts/workbench/grid/rules', () => ({ conditions: () => [] }));

it('prints merged cells from the first row and column of them that are shown', async () => {
  const book = await calculated({
    Plan: [
      ['Job', null, 'beside'],
      [null, null, 'next'],
      ['below', 'right', null],
    ],
  });
  const { workbook } = book;
  const { grid } = gridOver(workbook);
  const sheet = workbook.getActiveSheet();
  sheet.getRange('A1:B2').merge();
  const inRow = (row: number) =>
    printedSheet(grid, sheet)
      .inRow(row)
      .map(({ text, row: at, column, rows, columns }) => [text, at, column, rows, columns]);
  expect(inRow(0)).toEqual([['beside', 0, 2, 1, 1], ['Job', 0, 0, 2, 2]]); // prettier-ignore
  expect(inRow(1)).toEqual([['next', 1, 2, 1, 1]]);
  sheet.hideRows(0, 1);
  sheet.hideColumns(0, 1);
  expect(inRow(1)).toEqual([['next', 1, 2, 1, 1], ['Job', 1, 1, 1, 1]]); // prettier-ignore
  expect(inRow(2)).toEqual([['below', 2, 0, 1, 1], ['right', 2, 1, 1, 1]]); // prettier-ignore
  book.dispose();
});

it('prints a row as high as it was made where its words need more on this screen alone', async () => {
  const { workbook, dispose } = await calculated({ Plan: [['broken'], ['into'], ['lines'], ['here']] });
  const { grid } = gridOver(workbook);
  const sheet = workbook.getActiveSheet();
  const rows = sheet.getSheet().getRowManager();
  const onScreen = { pixels: 60, points: 30 };
  Object.assign(rows.getRowOrCreate(0), tallRow(37.5, onScreen));
  Object.assign(rows.getRowOrCreate(1), tallRow(37.5, { pixels: 60, points: 41 }));
  Object.assign(rows.getRowOrCreate(2), tallRow(37.5, onScreen), { h: 80 });
  Object.assign(rows.getRowOrCreate(3), tallRow(37.5, { pixels: 40, points: 30 }));
  const points = (pixels: number): number => (pixels * 72) / 96;
  expect(printedSheet(grid, sheet).rows(0, 4).map(({ height }) => points(height))).toEqual([37.5, 42, 57, 37.5]); // prettier-ignore
  dispose();
});
