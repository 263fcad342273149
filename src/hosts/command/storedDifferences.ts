import { readFileSync, writeFileSync } from 'node:fs';
import { address } from '../../formula/address';
import { functionsIn } from '../../formula/calls';
import { type CellError, cellError, isCellError } from '../../formula/errors';
import { lex } from '../../formula/lex';
import type { Book, BookCell, BookSheet } from '../../book/book';
import { withValues } from '../../book/cells';
import type { EngineValue } from '../../engine/headless';
import { withLimits } from '../../engine/limits';
import { readXlsx, UnreadableFile } from '../../xlsx/read';
import { calculatedBook } from './bookInEngine';
import { formulaRefusal } from './sentences';

/** A book as it was read, and what was not, in sentences. Throws `UnreadableFile`. */
export async function openBook(
  path: string,
): Promise<{ readonly book: Book; readonly notUnderstood: readonly string[] }> {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(path);
  } catch (reason) {
    throw new UnreadableFile(`There is no file ${path} to read. ${(reason as Error).message}`);
  }
  return readXlsx(bytes);
}

/** A formula cell whose stored value is another than ours. */
export interface Difference {
  readonly sheet: string;
  readonly cell: string;
  readonly formula: string;
  readonly stored: string | number | boolean | null;
  readonly calculated: string | number | boolean | null;
  /** Why, where ours is an error. */
  readonly message?: string;
}

/** What gives another value each time. */
const CHANGING: ReadonlySet<string> = new Set(['NOW', 'TODAY', 'RAND', 'RANDBETWEEN', 'RANDARRAY']);
const changes = ({ formula = '' }: BookCell): boolean =>
  functionsIn(lex(formula)).some((name) => CHANGING.has(name));

/** Sums add up in another order elsewhere: their last digits may differ. */
const DIGITS = 1e-12;
function isSame(one: BookCell['value'], other: EngineValue): boolean {
  if (typeof one === 'number' && typeof other === 'number')
    return Math.abs(one - other) <= DIGITS * Math.max(1e-3, Math.abs(one), Math.abs(other));
  if (isCellError(one) && isCellError(other)) return one.error === other.error;
  // A file keeps no value where a formula gives a text of no letters.
  return one === other || ((one ?? '') === '' && (other ?? '') === '');
}

const isErrorValue = (value: EngineValue): value is CellError => typeof value === 'object' && value !== null;
const plain = (value: EngineValue): Difference['stored'] => (isErrorValue(value) ? value.error : value);

/** The engine says #CYCLE! of a circle, which no cell of a file may hold. */
const inFile = (value: EngineValue): EngineValue =>
  isErrorValue(value) && !isCellError(value) ? cellError('#N/A') : value;

export interface Checked {
  /** The book with our values in its formula cells, and in those that they spill over. */
  readonly recalculated: Book;
  readonly differences: readonly Difference[];
  /** Formula cells that were compared, and those that change each time. */
  readonly compared: number;
  readonly changing: number;
  readonly isCircular: boolean;
}

/**
 * Calculates a book anew and compares what is stored in it.
 * @param only - the one sheet that is compared; all of them where it is left out
 */
export const checkBook = (book: Book, only?: string): Promise<Checked> =>
  withLimits(async () => {
    const calculated = await calculatedBook(book);
    const differences: Difference[] = [];
    let [compared, changing] = [0, 0];
    const sheets = book.sheets.map((sheet) => {
      const valueAt = calculated.valuesOf(sheet);
      for (const cell of sheet.cells) {
        if (cell.formula === undefined || (only !== undefined && sheet.name !== only)) continue;
        if (changes(cell)) changing++;
        else compared++;
        const ours = valueAt(cell.row, cell.column);
        if (changes(cell) || isSame(cell.value, ours)) continue;
        differences.push({
          sheet: sheet.name,
          cell: address(cell),
          formula: cell.formula,
          stored: plain(cell.value),
          calculated: plain(ours),
          ...(typeof ours === 'object' && ours !== null
            ? { message: formulaRefusal(cell.formula, ours).message }
            : {}),
        });
      }
      const filed = (row: number, column: number) => inFile(valueAt(row, column));
      return withSpills(withValues(sheet, filed), filed);
    });
    calculated.dispose();
    const { isCircular } = calculated;
    return { recalculated: { ...book, sheets }, differences, compared, changing, isCircular };
  });

/** Cells that a formula fills beside its own hold what it gives there. */
function withSpills(sheet: BookSheet, valueAt: (row: number, column: number) => EngineValue): BookSheet {
  const areas = sheet.cells.flatMap(({ spill }) => spill ?? []);
  const isFilled = ({ row, column }: BookCell): boolean =>
    areas.some(
      (area) =>
        row >= area.row &&
        row < area.row + area.rows &&
        column >= area.column &&
        column < area.column + area.columns,
    );
  if (areas.length === 0) return sheet;
  const cells = sheet.cells.map((cell) =>
    cell.formula === undefined && isFilled(cell) ? { ...cell, value: valueAt(cell.row, cell.column) } : cell,
  );
  return { ...sheet, cells };
}

/** What became of a file: what is otherwise in it than in the book, or why there is none, in sentences. */
export type SavedBook = { readonly changed: readonly string[] } | { readonly refused: string };

export async function saveBook(path: string, book: Book): Promise<SavedBook> {
  const { asFile } = await import('../../xlsx/write');
  try {
    const { bytes, changed } = await asFile(book);
    writeFileSync(path, bytes);
    return { changed };
  } catch (reason) {
    return { refused: `The file could not be written. ${(reason as Error).message}` };
  }
}
