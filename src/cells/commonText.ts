import type { Quantity } from '../catalogue/quantities';
import { exactOn, ladderOf, type MarkedScale } from '../exposure/stops/marks';
import { unitFactor } from './units';

/** So many digits a number holds exactly, so that one division by a power of ten gives the nearest number. */
const MOST_DIGITS = 15;
const POWERS = Array.from({ length: MOST_DIGITS + 1 }, (_, i) => 10 ** i);

const codeOf = (sign: string): number => sign.charCodeAt(0);
const ZERO = codeOf('0');
const NINE = codeOf('9');
const POINT = codeOf('.');
const SLASH = codeOf('/');
const SPACE = codeOf(' ');
const PLUS = codeOf('+');
const MINUS = codeOf('-');

const isDigit = (code: number): boolean => code >= ZERO && code <= NINE;

/** Where the last decimal ended. */
let end = 0;

/** Reads 11 or 5.6 from a place in a text and leaves its end in `end`; NaN where no plain decimal stands there. */
function decimalAt(text: string, start: number): number {
  let digits = 0;
  let below = 0;
  let at = start;
  for (; isDigit(text.charCodeAt(at)); at++) digits = digits * 10 + text.charCodeAt(at) - ZERO;
  end = at;
  if (at === start) return NaN;
  if (text.charCodeAt(at) === POINT) {
    const point = at++;
    for (; isDigit(text.charCodeAt(at)); at++) digits = digits * 10 + text.charCodeAt(at) - ZERO;
    below = at - point - 1;
    if (below === 0) return NaN;
  }
  end = at;
  return at - start > MOST_DIGITS ? NaN : digits / (POWERS[below] as number);
}

/** A decimal, or a fraction such as 2/3, to the end of the text; NaN for all else. */
function numberToEnd(text: string, start: number): number {
  const over = decimalAt(text, start);
  if (end === text.length) return over;
  if (text.charCodeAt(end) !== SLASH) return NaN;
  const under = decimalAt(text, end + 1);
  return end === text.length && under !== 0 ? over / under : NaN;
}

function markOr(value: number, scale: MarkedScale | undefined): number {
  if (scale === undefined) return value;
  const exact = exactOn(ladderOf(scale), value);
  return Number.isNaN(exact) ? value : exact;
}

/** f/11, 11, f/11+0.3, f/11 +0.3, f/8 2/3. */
function aperture(text: string, quantity: Quantity, exact: boolean): number {
  const hasPrefix = text.startsWith('f/') || text.startsWith('F/');
  const figure = decimalAt(text, hasPrefix ? 2 : 0);
  const isMark = quantity.marks !== undefined && (hasPrefix || !exact);
  if (end === text.length) return isMark ? markOr(figure, 'aperture') : figure;
  if (!hasPrefix || quantity.tail === 'apart') return NaN;
  const at = text.charCodeAt(end) === SPACE ? end + 1 : end;
  const sign = text.charCodeAt(at);
  const isSigned = sign === PLUS || sign === MINUS;
  const stops = numberToEnd(text, isSigned ? at + 1 : at);
  if (Number.isInteger(stops)) return NaN;
  return markOr(figure, 'aperture') * 2 ** ((sign === MINUS ? -stops : stops) / 2);
}

/** 400, 1/60, 400 Ws, 1/125 s, ISO 400. */
function plain(text: string, quantity: Quantity): number {
  const { prefix, fraction, marks } = quantity;
  let start = 0;
  if (prefix !== undefined && text.slice(0, prefix.length).toLowerCase() === prefix)
    start = text.charCodeAt(prefix.length) === SPACE ? prefix.length + 1 : prefix.length;
  let value = decimalAt(text, start);
  if (text.charCodeAt(end) === SLASH) {
    value /= fraction === undefined ? NaN : decimalAt(text, end + 1);
    if (value === Infinity) return NaN;
  }
  if (end === text.length) return markOr(value, marks);
  const unit = text.slice(text.charCodeAt(end) === SPACE ? end + 1 : end).toLowerCase();
  const factor = unitFactor(quantity, unit) ?? NaN;
  return factor === 1 ? markOr(value, marks) : value * factor;
}

/**
 * Reads the forms that most cells have, sign by sign: a number, a fraction, a unit behind it, an aperture with stops.
 *
 * @param given - as it stands in the cell.
 * @returns what the grammar makes of it, or NaN for any other form.
 */
export function commonText(given: string, quantity: Quantity, exact: boolean): number {
  const value = quantity.grammar === 'aperture' ? aperture(given, quantity, exact) : plain(given, quantity);
  return value === 0 ? NaN : value;
}
