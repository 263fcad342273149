import { fail, isFail, type Result } from '../exposure/core/result';

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
};

/** One spelling for what is written in several: spaces, minus signs, primes, the micro sign, the f of an f-number. */
export function normalise(text: string): string {
  return text
    .replace(/[\s\u00a0\u2007\u2009\u202f]+/g, ' ')
    .trim()
    .replace(
      /(\d?) ?([½⅓⅔¼¾⅛])/g,
      (_, before: string, sign: string) => (before ? `${before} ` : '') + VULGAR[sign],
    )
    .replace(/[−–‐‑]/g, '-')
    .replace(/[⁄∕]/g, '/')
    .replace(/[″“”„]|''|′′|’’/g, '"')
    .replace(/[′‘’`´]/g, "'")
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

/** A plain decimal: digits in groups of three parted by spaces, a point or a comma, a power of ten. */
const DECIMAL = '(?:\\d{1,3}(?: \\d{3})+(?![\\d/])(?:[.,]\\d+)?|\\d+(?:[.,]\\d+)?|[.,]\\d+)(?:e[+-]?\\d+)?';
const AT_START = new RegExp(`^([+-]?) ?(?:(\\d+) (\\d+)/(\\d+)|(${DECIMAL})/(${DECIMAL})|(${DECIMAL}))`, 'i');

/**
 * A decimal as a number. A comma is a decimal comma, except before exactly three digits, where it may as well part
 * thousands: that is refused, not guessed, unless the number starts with 0.
 */
export function decimal(digits: string): Result<number> {
  const close = digits.replace(/ /g, '');
  if (/^[1-9]\d*,\d{3}$/.test(close)) {
    const whole = close.replace(',', '');
    return fail('unreadable', `can be read two ways: write ${whole}, or ${Number(close.replace(',', '.'))}`);
  }
  return Number(close.replace(',', '.'));
}

/** A number at the start of a text, and what follows it. */
export interface Leading {
  readonly value: number;
  readonly form: 'decimal' | 'fraction' | 'mixed';
  readonly signed: boolean;
  readonly rest: string;
}

/** Reads 11, -1/3, 1 1/3 or 5,6 from the start of a normalised text; undefined where no number stands there. */
export function leadingNumber(text: string): Result<Leading> | undefined {
  const found = AT_START.exec(text);
  if (!found) return undefined;
  const [all, sign, whole, over, under, above, below, plain] = found;
  const parts = [whole, over, under, above, below, plain].map((p) => (p === undefined ? 0 : decimal(p)));
  const wrong = parts.find(isFail);
  if (wrong) return wrong;
  const [w, o, u, a, b, p] = parts as [number, number, number, number, number, number];
  const form = whole !== undefined ? 'mixed' : above !== undefined ? 'fraction' : 'decimal';
  const size = form === 'mixed' ? w + o / u : form === 'fraction' ? a / b : p;
  if (!Number.isFinite(size)) return fail('unreadable', 'divides by nothing or is too large');
  return {
    value: sign === '-' ? -size : size,
    form,
    signed: sign !== '',
    rest: text.slice(all.length).trim(),
  };
}
