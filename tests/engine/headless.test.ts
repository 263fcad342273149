import { expect, test } from 'vitest';
import { headless } from '../../src/engine/headless';
import { snapshot } from './book';

/** What workbooks of one id give that are calculated at the same time: each has a price and formulas that read it. */
async function prices(id: string): Promise<unknown[]> {
  const books = [3, 5, 7, 11].map((price) => {
    const book = headless({ ...snapshot({ Data: [['=Fee*2', '=SUM(D1:D3)', null, price]] }), id });
    book.workbook.insertDefinedName('Fee', String(price));
    return book;
  });
  await Promise.all(books.map((book) => book.calculate()));
  const values = books.map((book) => book.read('Data', 'A1:B1')[0]);
  for (const book of books) book.dispose();
  return values;
}

test('workbooks of one id that are open at once have each its own answers', async () => {
  // twice the price, and the price
  const wanted = [3, 5, 7, 11].map((price) => [2 * price, price]);
  expect(await prices('book')).toEqual(wanted);
  expect(await prices('book')).toEqual(wanted);
});

test('nothing is calculated before it is asked for, however long after something was typed', async () => {
  const book = headless(snapshot({ Data: [[2, '=A1+1']] }));
  await book.calculate();
  book.workbook.getSheetByName('Data')?.getRange('A1').setValue(5);
  // the engine by itself would have begun by now, and be done
  await new Promise((resolve) => setTimeout(resolve, 300));
  expect(book.read('Data', 'A1:B1')).toEqual([[5, 3]]);
  await book.calculate();
  expect(book.read('Data', 'A1:B1')).toEqual([[5, 6]]);
  book.dispose();
});

test('calculations that are asked for at once come one after the other', async () => {
  const book = headless(snapshot({ Data: [[2, '=A1+1']] }));
  const first = book.calculate();
  book.workbook.getSheetByName('Data')?.getRange('A1').setValue(5);
  await Promise.all([first, book.calculate()]);
  expect(book.read('Data', 'A1:B1')).toEqual([[5, 6]]);
  book.dispose();
});
