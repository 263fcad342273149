import { readQuantity } from '../../../cells/quantityReader';
import { quote } from '../../../cells/textParts';
import { isFail } from '../../../exposure/core/result';
import { quantitiesIn } from '../tables/pastedCell';

const NUMBER = /^-?\d+(\.\d+)?$/;
const OUTSIDE = /^.+? (must be .+, not (\S+)\.)/;

/**
 * What a refusal says of a value that somebody has typed: without the name of the argument, which stands for a cell here.
 * Undefined where it speaks of something else.
 */
export function refusedFor(message: string, typed: string | number): string | undefined {
  const from = typeof typed === 'string' ? message.indexOf(`: ${quote(typed)} `) : -1;
  if (from >= 0) return message.slice(from + 2);
  // a cell of texts holds the number -5 as a text
  const isNumber = typeof typed === 'number' || NUMBER.test(typed);
  const [, rest, value] = (isNumber && OUTSIDE.exec(message)) || [];
  return rest !== undefined && value === String(Number(typed)) ? `It ${rest}` : undefined;
}

/** Formats that take any text. */
const OF_ANYTHING: readonly string[] = ['General', '@'];

/** What is said of a text in a cell of f-numbers, seconds or the like, by its format, that is none; undefined where it may be one. */
export function unreadIn(format: string, typed: string): string | undefined {
  if (OF_ANYTHING.includes(format)) return undefined;
  const held = quantitiesIn(format);
  const read = held.map((quantity) => readQuantity(typed, quantity, ''));
  const [first] = read;
  return first !== undefined && isFail(first) && read.every(isFail)
    ? refusedFor(first.message, typed)
    : undefined;
}
