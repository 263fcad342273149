import { errorNamed } from '../formula/errors';
import type { BookCell } from '../book/book';
import { unescaped } from './readTexts';

/** Sentences for what a cell holds and cannot be kept as it is. */
const NOT_OF_ITS_KIND =
  'Cells that the file calls numbers, dates or truths, and that hold something else, are kept as texts.';
const LOST_TEXT = 'Some texts are missing in the file: their cells are empty.';
const OTHER_ERROR = (code: string): string => `The error ${code} is not known here, and is shown as #VALUE!.`;

/** Not what JavaScript takes besides for a number, such as 0x10. */
const NUMBER = /^\s*[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?\s*$/i;
const TRUTHS: Readonly<Record<string, boolean>> = { '1': true, true: true, '0': false, false: false };

/**
 * What a cell shows. A text stays one, whatever it begins with, and so does one of no letters.
 *
 * @param type - as the file names it: s, inlineStr, str, b, e, d; a number where it names none.
 * @param texts - which all sheets share; of such a text `value` is the number.
 * @param say - hears what was not kept as it is
 */
export function cellValue(
  type: string | undefined,
  value: string | undefined,
  inline: string | undefined,
  texts: readonly string[],
  say: (sentence: string) => void,
): BookCell['value'] {
  const ofItsKind = <T>(found: T | undefined): T | string | null => {
    if (found !== undefined) return found;
    if (value === undefined || value.trim() === '') return null;
    say(NOT_OF_ITS_KIND);
    return unescaped(value);
  };
  switch (type) {
    case 's': {
      if (value === undefined) return null;
      const text = texts[Number(value)];
      if (text === undefined) say(LOST_TEXT);
      return text ?? null;
    }
    case 'inlineStr':
      return inline === undefined ? null : unescaped(inline);
    case 'str':
      return value === undefined ? null : unescaped(value);
    case 'b':
      return ofItsKind(TRUTHS[value?.trim().toLowerCase() ?? '']);
    case 'e': {
      const error = errorNamed(value);
      if (value !== undefined && error.error !== value) say(OTHER_ERROR(value));
      return error;
    }
    case 'd':
      return ofItsKind(serial(value ?? ''));
    default: {
      const number = NUMBER.test(value ?? '') ? Number(value) : Number.NaN;
      return ofItsKind(Number.isFinite(number) ? number + 0 : undefined);
    }
  }
}

const DAY = 86_400_000;
/** Days since the start of 1900, as spreadsheets count them. */
function serial(date: string): number | undefined {
  const time = Date.parse(/(?:Z|[+-]\d\d:\d\d)$/.test(date) || !date.includes('T') ? date : `${date}Z`);
  return Number.isNaN(time) ? undefined : (time - Date.UTC(1899, 11, 30)) / DAY;
}
