import { errorNamed } from '../formula/errors';
import type { BookCell } from '../book/book';
import { unescaped } from './readTexts';
import { isTrue } from './xml';

/**
 * What a cell shows. A text stays one, whatever it begins with.
 *
 * @param type - as the file names it: s, inlineStr, str, b, e, d; a number where it names none.
 * @param texts - which all sheets share; of such a text `value` is the number.
 */
export function cellValue(
  type: string | undefined,
  value: string | undefined,
  inline: string | undefined,
  texts: readonly string[],
): BookCell['value'] {
  switch (type) {
    case 's':
      return value === undefined ? null : (texts[Number(value)] ?? '');
    case 'inlineStr':
      return unescaped(inline ?? '');
    case 'str':
      return unescaped(value ?? '');
    case 'b':
      return isTrue(value);
    case 'e':
      return errorNamed(value);
    case 'd':
      return value === undefined ? null : serial(value);
    default: {
      const number = value === undefined || value.trim() === '' ? Number.NaN : Number(value);
      return Number.isFinite(number) ? number + 0 : null;
    }
  }
}

const DAY = 86_400_000;
/** Days since the start of 1900, as spreadsheets count them. */
function serial(date: string): number | null {
  const time = Date.parse(/(?:Z|[+-]\d\d:\d\d)$/.test(date) || !date.includes('T') ? date : `${date}Z`);
  return Number.isNaN(time) ? null : (time - Date.UTC(1899, 11, 30)) / DAY;
}
