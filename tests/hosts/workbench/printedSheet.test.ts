import { expect, it, vi } from 'vitest';
import { printedSheet } from '../../../src/hosts/workbench/print/cellFace';
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
