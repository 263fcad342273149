import type { Quantity } from '../catalogue/quantities';
import { at } from '../exposure/core/at';
import { exactOn, type Ladder, ladderOf } from '../exposure/stops/marks';
import { type Bare, bareNumber } from './bareNumber';
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
const SMALL_F = codeOf('f');
const LARGE_F = codeOf('F');
const LARGE_M = codeOf('M');

/** A point before so many digits may part thousands. */
const MOST_AMBIGUOUS = 3;

const isDigit = (code: number): boolean => code >= ZERO && code <= NINE;

/** Where the last decimal ended, and how many of its digits stand behind the point. */
let end = 0;
let below = 0;

/** Reads 11 or 5.6 from a place in a text and leaves its end in `end`; NaN where no plain decimal stands there. */
function decimalAt(text: string, start: number): number {
  let digits = 0;
  let place = start;
  below = 0;
  for (; isDigit(text.charCodeAt(place)); place++) digits = digits * 10 + text.charCodeAt(place) - ZERO;
  end = place;
  if (place === start) return NaN;
  if (text.charCodeAt(place) === POINT) {
    const point = place++;
    for (; isDigit(text.charCodeAt(place)); place++) digits = digits * 10 + text.charCodeAt(place) - ZERO;
    below = place - point - 1;
    if (below === 0) return NaN;
  }
  end = place;
  return place - start > MOST_DIGITS ? NaN : digits / at(POWERS, below);
}

const markOr = (value: number, marks: Ladder | undefined): number => {
  const exact = marks === undefined ? NaN : exactOn(marks, value);
  return Number.isNaN(exact) ? value : exact;
};

const APERTURES = ladderOf('aperture');
/** What an aperture is multiplied by for so many tenths of a stop more, and for so many less. */
const MORE = Array.from({ length: 10 }, (_, tenths) => 2 ** (tenths / 10 / 2));
const LESS = Array.from({ length: 10 }, (_, tenths) => 2 ** (-tenths / 10 / 2));

/** f/11, 11, f/11+0.3, f/11 +0.3. */
function aperture(text: string, { tails }: Quantity, bare: Bare): number {
  const first = text.charCodeAt(0);
  const hasPrefix = (first === SMALL_F || first === LARGE_F) && text.charCodeAt(1) === SLASH;
  const figure = decimalAt(text, hasPrefix ? 2 : 0);
  if (end === text.length) return hasPrefix ? markOr(figure, bare.named) : bareNumber(figure, bare);
  if (!hasPrefix || tails === 'apart') return NaN;
  const tail = text.charCodeAt(end) === SPACE ? end + 1 : end;
  const sign = text.charCodeAt(tail);
  const tenths = text.charCodeAt(tail + 3);
  const isTenths =
    text.charCodeAt(tail + 1) === ZERO && text.charCodeAt(tail + 2) === POINT && isDigit(tenths);
  if ((sign !== PLUS && sign !== MINUS) || !isTenths || text.length !== tail + 4) return NaN;
  return markOr(figure, APERTURES) * at(sign === MINUS ? LESS : MORE, tenths - ZERO);
}

/** 400, 1/60, 400 Ws, 1/125 s. */
function plain(text: string, quantity: Quantity, bare: Bare): number {
  const whole = decimalAt(text, 0);
  let value = whole;
  let isPlain = below !== MOST_AMBIGUOUS || value < 1;
  if (text.charCodeAt(end) === SLASH) {
    const { fraction } = quantity;
    if (value !== 1 || below > 0 || fraction === undefined || fraction === 'stops') return NaN;
    const under = decimalAt(text, end + 1);
    isPlain = below === 0 && under > 1;
    value /= under;
  }
  if (!isPlain) return NaN;
  if (end === text.length) return bareNumber(value, bare);
  if (quantity.limits?.always) return NaN;
  const unit = text.slice(text.charCodeAt(end) === SPACE ? end + 1 : end);
  const small = unit.toLowerCase();
  const factor = unitFactor(quantity, small);
  // Ms and Mm are refused, and so is a fraction of a smaller unit
  const isClear = factor !== undefined && (unit.charCodeAt(0) !== LARGE_M || unit === unit.toUpperCase());
  return isClear && (value === whole || factor >= 1) ? markOr(value * factor, bare.named) : NaN;
}

/**
 * Reads the forms that most cells have, sign by sign: a number, a fraction, a unit behind it, an aperture with stops.
 *
 * @param given - as it stands in the cell.
 * @param bare - as from `bareOf`, for texts.
 * @returns what the grammar makes of it, or NaN for any other form.
 */
export function commonText(given: string, quantity: Quantity, bare: Bare): number {
  const value =
    quantity.grammar === 'aperture' ? aperture(given, quantity, bare) : plain(given, quantity, bare);
  return value === 0 ? NaN : value;
}
