import type { BookCell } from '../book/book';

/** From the first day of 1900 to that of 1904, with the 29th of February 1900 that spreadsheets count. */
const YEARS = 1462;

/** Sentence for a file that counts from 1904: what is a number there and no date in the look of its cell stays as it is. */
export const FROM_1904 =
  'This file counts days from 1904; here they are counted from 1900. Cells that look like dates show the same days as before; days that formulas name by their number, or that stand in cells without a date format, are four years and a day early.';

/** Whether a number format shows days: letters of dates outside of texts, and not only those of hours and minutes. */
function showsDays(format: string): boolean {
  const bare = format.replace(/"[^"]*"|\\.|_.|\*.|\[[^\]]*\]/g, '');
  return /[yd]/i.test(bare) || (/m/i.test(bare) && !/[hs]/i.test(bare));
}

/** A stored number of a file that counts from 1904, as days are counted here. */
export const from1904 = (
  value: BookCell['value'],
  type: string | undefined,
  format: string | undefined,
): BookCell['value'] =>
  typeof value === 'number' &&
  (type === undefined || type === 'n') &&
  format !== undefined &&
  showsDays(format)
    ? value + YEARS
    : value;
