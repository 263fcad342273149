import type { Book, BookSheet } from '../../book/book';
import { type CalculatedBook, calculatedBook } from './bookInEngine';

/** What each cell holds, by row and column. */
export type SheetValues = ReturnType<CalculatedBook['valuesOf']>;

/** Calculates the formulas of one sheet. */
export async function sheetValues(sheet: BookSheet): Promise<SheetValues> {
  const book: Book = { sheets: [sheet], names: [] };
  const calculated = await calculatedBook(book);
  const values = calculated.valuesOf(sheet);
  calculated.dispose();
  return values;
}
