import type { BookCell, BookSheet } from '../../book/book';
import { usedArea } from '../../book/cells';
import { isCellError } from '../../formula/errors';
import { at } from '../../exposure/core/at';

type Content = string | number | boolean | null;

/** One array for the whole area; Excel leaves a cell as it is where the array says null. */
function block<T>(sheet: BookSheet, content: (cell: BookCell) => T | null): (T | null)[][] {
  const { rows, columns } = usedArea(sheet);
  const lines = Array.from({ length: rows }, () => Array<T | null>(columns).fill(null));
  for (const cell of sheet.cells) at(lines, cell.row)[cell.column] = content(cell);
  return lines;
}

/** The number format with which a cell takes everything that is typed as text. */
export const TEXT = '@';

/** What Excel takes for a formula, a number or a date, where it is typed. */
const MISREAD = /^[=+\-@']|^[\d.,]+( ?%|e[+-]?\d+)?$|^\d+ ?[/:.-]/i;

/** Words that Excel would take for something else are marked as words, except in cells that take everything as text anyway. */
export const markedAsWords = <T extends Content>(value: T, format: string | undefined): T | string =>
  typeof value === 'string' && format !== TEXT && MISREAD.test(value) ? `'${value}` : value;

function typed({ value, formula, style }: BookCell): Content {
  if (formula !== undefined) return null;
  return isCellError(value) ? value.error : markedAsWords(value, style?.format);
}

export const numberFormats = (sheet: BookSheet): (string | null)[][] =>
  block(sheet, ({ style }) => style?.format ?? null);
export const values = (sheet: BookSheet): Content[][] => block(sheet, typed);
