import { Q, type Quantity } from '../catalogue/quantities';
import { exactHalfMark, exactMark, type MarkedScale } from '../exposure/stops/marks';
import { fail, isFail, type Fail, type Result } from '../exposure/core/result';
import { SLACK, spoken } from '../exposure/core/numbers';
import { readAperture } from './aperture';
import { leadingNumber, normalise, quote } from './text';
import { unitFactor, whatItMeasures } from './units';

/** An empty cell. */
export const BLANK = Symbol('blank');
export type Blank = typeof BLANK;

/** Whole numbers from here up are dates of this century, not times or ratios. */
const FIRST_DATE = 10_000;
const MINUTES_A_DAY = 1440;

/** Whether a number is what 3:1 becomes in an unformatted cell: a time of day that no one would type as a ratio. */
function looksLikeClock(value: number): boolean {
  const minutes = Math.round(value * MINUTES_A_DAY);
  if (minutes < 60 || minutes % 60 === 0 || Math.abs(value * MINUTES_A_DAY - minutes) > 1e-6) return false;
  const shortDecimal = Math.abs(value * 1e4 - Math.round(value * 1e4)) <= SLACK * 1e4 * value;
  const inverse = 1 / value;
  const unitFraction =
    Math.abs(inverse - Math.round(inverse)) <= SLACK * inverse && Math.round(inverse) <= 100;
  return !shortDecimal && !unitFraction;
}

/** A list with "or" before its last member. */
export const orList = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} or ${items[items.length - 1]}`;

const unreadable = (name: string, quantity: Quantity, text: string): Fail =>
  fail(
    'unreadable',
    `${name}: ${quote(text)} cannot be read as ${quantity.title}. Write ${orList(quantity.forms)}.`,
  );

/** A number in a cell. Marks become the exact value behind them; what a spreadsheet made of a fraction is refused. */
function readNumber(value: number, quantity: Quantity, name: string, exact: boolean): Result<number> | Blank {
  if (value === 0) return quantity.blank === 'missing' ? BLANK : 0;
  if (!Number.isFinite(value)) return fail('unreadable', `${name} must be a finite number.`);
  if (quantity.mistyped !== undefined) {
    if (value >= FIRST_DATE && Number.isInteger(value))
      return mistyped(name, spoken(value, 6), 'a date', quantity);
    if (quantity.mistyped === 'date or clock' && looksLikeClock(value))
      return mistyped(name, spoken(value), 'a clock time', quantity);
  }
  return exact || quantity.marks === undefined ? value : (exactMark(quantity.marks, value) ?? value);
}

/** What to type instead of a fraction that the spreadsheet turned into something else. */
function mistyped(name: string, came: string, what: 'a date' | 'a clock time', quantity: Quantity): Fail {
  const fraction = quantity.unit === 's' ? '1/60' : what === 'a date' ? '1/4' : '3:1';
  const typed = `Type =${fraction.replace(':', '/')}, or ${fraction} in a text cell.`;
  return fail('unreadable', `${name}: ${came} looks like ${what}, made of ${fraction} or the like. ${typed}`);
}

/** A text in a cell. */
function readText(given: string, quantity: Quantity, name: string, exact: boolean): Result<number> | Blank {
  const text = normalise(given);
  if (text === '') return quantity.blank === 'missing' ? BLANK : 0;
  const low = text.toLowerCase();
  if (quantity.words !== undefined && Object.hasOwn(quantity.words, low))
    return quantity.words[low] as number;
  const value =
    quantity.grammar === 'aperture' ? apertureText(low, quantity, exact) : plainText(low, quantity);
  if (value === undefined) return unreadable(name, quantity, given);
  if (isFail(value)) return fail('unreadable', `${name}: ${quote(given)} ${value.message}.`);
  return value === 0 && quantity.blank === 'missing' ? BLANK : value;
}

function apertureText(text: string, quantity: Quantity, exact: boolean): Result<number> | undefined {
  const marked = quantity.marks === undefined ? 'none' : exact ? 'with f/' : 'all';
  return readAperture(text, marked) ?? foreignUnit(text, quantity);
}

/** A unit that measures something else, said so. */
function foreignUnit(text: string, quantity: Quantity): Fail | undefined {
  const found = leadingNumber(text);
  if (found === undefined || isFail(found)) return undefined;
  const measured = whatItMeasures(found.rest);
  if (measured === undefined) return undefined;
  const extra =
    measured === 'a power' && quantity.title === 'an energy' ? ' (a power for one second is 1 Ws)' : '';
  return fail('unreadable', `is ${measured}, not ${quantity.title}${extra}. Write ${orList(quantity.forms)}`);
}

function plainText(text: string, quantity: Quantity): Result<number> | undefined {
  if (quantity.grammar === 'filter') {
    const nd = neutralDensity(text, quantity);
    if (nd !== undefined) return nd;
  }
  if (quantity.grammar === 'length') {
    const feet = /^(\d+)' ?(\d+(?:[.,]\d+)?)"$/.exec(text);
    if (feet)
      return (
        Number(feet[1]) * unit(quantity, "'") +
        Number((feet[2] as string).replace(',', '.')) * unit(quantity, '"')
      );
  }
  const bare =
    quantity.prefix !== undefined && text.startsWith(quantity.prefix)
      ? text.slice(quantity.prefix.length).trim()
      : text;
  const found = leadingNumber(bare);
  if (found === undefined || isFail(found)) return found;
  const { value, form, rest } = found;
  if (form !== 'decimal' && quantity.fraction === undefined) return foreignUnit(text, quantity);
  const mark = (): number =>
    quantity.marks === undefined ? value : (exactMark(quantity.marks, value) ?? value);
  if (rest === '') return mark();
  if (rest === '%') return quantity.percent ? value / 100 : foreignUnit(text, quantity);
  if (rest.startsWith(':')) return quantity.pair ? pair(value, rest.slice(1)) : undefined;
  if (quantity.marksInText !== undefined) {
    const marked = markedText(value, rest, quantity, quantity.marksInText);
    if (marked !== undefined) return marked;
  }
  const factor = unitFactor(quantity, rest);
  if (factor === undefined) return foreignUnit(text, quantity);
  return factor === 1 ? mark() : value * factor;
}

const unit = (quantity: Quantity, word: string): number => unitFactor(quantity, word) ?? Number.NaN;

function pair(value: number, text: string): Result<number> | undefined {
  const second = leadingNumber(text.trim());
  if (second === undefined || isFail(second)) return second;
  if (second.rest !== '' || second.value === 0) return undefined;
  return value / second.value;
}

/** `1/60 exact`, `1/20 half`, `1/125 s +0.3`, `ISO 100 +0.3`: what follows the figure of a time or a speed. */
function markedText(
  value: number,
  rest: string,
  quantity: Quantity,
  scale: MarkedScale,
): Result<number> | undefined {
  const plain = rest.replace(/^s(?:ec|econds?)?(?= |\+|-|$)/, '').trim();
  if (plain === 'exact') return value;
  if (plain === 'half') return exactHalfMark(scale, value) ?? fail('unreadable', 'names no half-stop mark');
  if (!/^[+-]/.test(plain)) return undefined;
  const stops = leadingNumber(plain);
  if (stops === undefined || isFail(stops)) return stops;
  if (!/^(?:stops?)?$/.test(stops.rest)) return undefined;
  if (Number.isInteger(stops.value))
    return fail('unreadable', `can be read two ways. Write ${orList(quantity.forms)}`);
  return (exactMark(scale, value) ?? value) * 2 ** stops.value;
}

/** `ND8` is a factor, `ND 0.9` a density, `8x` a factor: whichever way the value is wanted. */
function neutralDensity(text: string, quantity: Quantity): Result<number> | undefined {
  const found = /^(?:nd ?(\d+(?:[.,]\d+)?|[.,]\d+)|(\d+(?:[.,]\d+)?) ?x|x ?(\d+(?:[.,]\d+)?))$/.exec(text);
  if (!found) return undefined;
  const digits = (found[1] ?? found[2] ?? found[3]) as string;
  const value = Number(digits.replace(',', '.'));
  const isDensity = found[1] !== undefined && /[.,]/.test(digits);
  if (quantity === Q.filterDensity) return isDensity ? value : Math.log10(value);
  const factor = isDensity ? 10 ** value : value;
  return quantity === Q.filterTransmission ? 1 / factor : factor;
}

/** Dates come from hosts that run us in a world of their own, so that `instanceof` does not know them. */
const isDate = (cell: unknown): boolean => Object.prototype.toString.call(cell) === '[object Date]';

/** What else a cell may hold, in words. */
function describe(cell: unknown): string {
  if (typeof cell === 'boolean') return String(cell).toUpperCase();
  if (isDate(cell)) return 'a date';
  return 'something that is neither a number nor a text';
}

/**
 * One cell as a quantity in its base unit.
 *
 * @param cell - what the host passes for the cell.
 * @param name - the argument's name, for messages.
 * @param exact - takes bare numbers as typed, though the quantity knows marks.
 * @returns the number, `BLANK` for an empty cell of a quantity that cannot be 0, or a refusal in words.
 */
export function readQuantity(
  cell: unknown,
  quantity: Quantity,
  name: string,
  exact = false,
): Result<number> | Blank {
  if (typeof cell === 'number') return readNumber(cell, quantity, name, exact);
  if (cell === null || cell === undefined) return quantity.blank === 'missing' ? BLANK : 0;
  if (typeof cell === 'string') return readText(cell, quantity, name, exact);
  if (isDate(cell) && quantity.mistyped !== undefined) return mistyped(name, 'it', 'a date', quantity);
  return fail(
    'unreadable',
    `${name} holds ${describe(cell)}, not ${quantity.title}. Write ${orList(quantity.forms)}.`,
  );
}
