import { fail, type Fail, isFail, type Result } from '../exposure/core/result';

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
};

/**
 * One spelling for what is written in several: spaces, minus signs, primes, the micro sign, the f of an f-number. Marks of
 * direction and the like are taken off the ends, and so is the sign before a formula that a text cell kept: =1/60.
 */
export function normalise(text: string): string {
  return text
    .replace(/^[\s\u200b\u200e\u200f]+|[\s\u200b\u200e\u200f]+$/g, '')
    .replace(/[\s\u00a0\u2007\u2009\u202f]+/g, ' ')
    .replace(/^=(?=[+-]?[\d.,]+(?:\/[\d.,]+)?$)/, '')
    .replace(
      /(\d?) ?([½⅓⅔¼¾⅛])(?!\d)/g,
      (_, before: string, sign: string) => (before ? `${before} ` : '') + VULGAR[sign],
    )
    .replace(/[−–‐‑－]/g, '-')
    .replace(/[⁄∕]/g, '/')
    .replace(/[″“”„]|''|′′|’’|´´/g, '"')
    .replace(/[′‘’´]/g, "'")
    .replace(/[μµ]/g, 'µ')
    .replace(/ƒ/g, 'f')
    .replace(/×/g, 'x')
    .replace(/∶/g, ':');
}

/** A cell's text as quoted in a message: short, on one line. */
export function quote(text: string): string {
  const line = text.replace(/[\p{C}\s]+/gu, ' ').trim();
  return `"${[...line].length > 40 ? `${[...line].slice(0, 39).join('')}…` : line}"`;
}

/** A list with "or" before its last member. */
export const orList = (items: readonly string[]): string =>
  items.length < 2 ? items.join() : `${items.slice(0, -1).join(', ')} or ${items[items.length - 1]}`;

/** A plain decimal. */
export const FIGURE = '(?:\\d+(?:[.,]\\d+)?|\\.\\d+)';
const AT_START = new RegExp(`^([+-]?) ?(?:(\\d+) (\\d+)/(\\d+)|(\\d+)/(${FIGURE})|(${FIGURE})(e[+-]?\\d+)?)`);

/** Whether a point stands before three digits, where it may as well part thousands. */
export const isParted = (digits: string): boolean => /^[1-9]\d*\.\d{3}$/.test(digits);

export function twoWays(digits: string): Fail {
  const [whole, decimals] = [digits.replace(/[.,]/, ''), Number(digits.replace(',', '.'))];
  return fail('unreadable', `can be read two ways: write ${whole}, or ${decimals}`);
}

/**
 * A decimal as a number. A comma is a decimal comma, except before exactly three digits, where it may as well part
 * thousands: that is refused, not guessed, unless the number starts with 0.
 *
 * @param thousands - a point may part thousands too.
 */
export const decimal = (digits: string, thousands = false): Result<number> =>
  /^[1-9]\d*,\d{3}$/.test(digits) || (thousands && isParted(digits))
    ? twoWays(digits)
    : Number(digits.replace(',', '.'));

/** A number at the start of a text, and what follows it. */
export interface Leading {
  readonly value: number;
  /** A decimal, perhaps with a power of ten; or a fraction, perhaps after a whole number. */
  readonly form: 'decimal' | 'power' | 'fraction' | 'mixed';
  readonly signed: boolean;
  /** The digits of a decimal; what stands above and below the line of a fraction. */
  readonly digits: string;
  readonly over: number;
  readonly under: number;
  /** With the space before it. */
  readonly rest: string;
}

/** Reads 11, -1/3, 1 1/3 or 5,6 from the start of a normalised text; undefined where no number stands there. */
export function leadingNumber(text: string): Result<Leading> | undefined {
  const found = AT_START.exec(text);
  if (!found) return undefined;
  const [all, sign, whole, part, parts, above, below, digits = '', power = ''] = found;
  const form = whole !== undefined ? 'mixed' : above !== undefined ? 'fraction' : power ? 'power' : 'decimal';
  const under = decimal(parts ?? below ?? '1', true);
  const plain = decimal(digits);
  if (isFail(under)) return under;
  if (isFail(plain)) return plain;
  const over = Number(part ?? above ?? 0);
  const size =
    form === 'power'
      ? Number(`${plain}${power}`)
      : form === 'decimal'
        ? plain
        : Number(whole ?? 0) + over / under;
  if (!Number.isFinite(size)) return fail('unreadable', 'divides by nothing or is too large');
  return {
    value: sign === '-' ? -size : size,
    form,
    signed: sign !== '',
    digits,
    over,
    under,
    rest: text.slice(all.length),
  };
}
