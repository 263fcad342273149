import { expect, test } from 'vitest';
import { sheetAsRead } from '../../../src/hosts/workbench/pictures/readSheet';
import { openedBook } from '../../sheets/openedBook';

/** A sheet whose last cell stands in a row and a column, counted from 0. */
async function readWith(row: number, column: number) {
  const cells = [
    { row: 0, column: 0, value: 'Camera x' },
    { row, column, value: 1 },
  ];
  const book = await openedBook([{ name: 'Set', tables: [], cells }]);
  const sheet = book.workbook.getSheetByName('Set');
  if (!sheet) throw new Error('The sheet is not there.');
  const { cells: lines, unread } = sheetAsRead(sheet);
  book.dispose();
  return [lines.length, lines[0]?.length, unread];
}

test('a sheet is read up to 2000 rows and 200 columns, and it is said where something stands beyond', async () => {
  const BEYOND = 'Of this sheet only 2000 rows and the columns up to GR are read: what stands beyond them is not in the picture.'; // prettier-ignore
  expect(await readWith(1999, 199)).toEqual([2000, 200, undefined]);
  expect(await readWith(2000, 0)).toEqual([2000, 1, BEYOND]);
  expect(await readWith(0, 200)).toEqual([1, 200, BEYOND]);
});
