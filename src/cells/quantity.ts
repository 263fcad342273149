import type { Quantity } from '../catalogue/quantities';
import { exactOn, type Ladder, ladderOf } from '../exposure/stops/marks';
import { fail, isFail, type Fail, type Result } from '../exposure/core/result';
import { SLACK, spoken } from '../exposure/core/numbers';
import { commonText } from './commonText';
import { byGrammar } from './grammar';
import { normalise, orList, quote } from './text';

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
  const unitFraction = Math.abs(inverse - Math.round(inverse)) <= SLACK * inverse;
  return !shortDecimal && !unitFraction;
}

const unreadable = (name: string, quantity: Quantity, text: string): Fail =>
  fail(
    'unreadable',
    `${name}: ${quote(text)} cannot be read as ${quantity.title}. Write ${orList(quantity.forms)}.`,
  );

/** How bare numbers of a quantity are read; in one form for all quantities, as every number of a column passes here. */
export interface Bare {
  /** What 0 is: NaN where it counts as a blank. */
  readonly zero: number;
  /** Whole numbers from here up are dates. */
  readonly firstDate: number;
  readonly clocks: boolean;
  readonly marks: Ladder | undefined;
}

const BARE = new WeakMap<Quantity, Bare>();

/** @param exact - takes numbers as typed, though the quantity knows marks. */
export function bareOf(quantity: Quantity, exact: boolean): Bare {
  const known = BARE.get(quantity);
  const bare: Bare = known ?? {
    zero: quantity.blank === 'missing' ? NaN : 0,
    firstDate: quantity.limits?.date === undefined ? Infinity : FIRST_DATE,
    clocks: quantity.limits?.clock !== undefined,
    marks: quantity.marks === undefined ? undefined : ladderOf(quantity.marks),
  };
  if (known === undefined) BARE.set(quantity, bare);
  return exact ? { ...bare, marks: undefined } : bare;
}

/** A number in a cell as the function gets it, a mark as the exact value behind it; NaN where it is blank or refused. */
export function bareNumber(value: number, { zero, firstDate, clocks, marks }: Bare): number {
  if (value === 0) return zero;
  if (value >= firstDate && Number.isInteger(value)) return NaN;
  if ((clocks && looksLikeClock(value)) || Math.abs(value) === Infinity) return NaN;
  if (marks === undefined) return value;
  const exact = exactOn(marks, value);
  return Number.isNaN(exact) ? value : exact;
}

/** A number in a cell. What a spreadsheet made of a fraction is refused. */
function readNumber(value: number, quantity: Quantity, name: string, exact: boolean): Result<number> | Blank {
  const read = bareNumber(value, bareOf(quantity, exact));
  if (!Number.isNaN(read)) return read;
  if (value === 0) return BLANK;
  if (!Number.isFinite(value)) return fail('unreadable', `${name} must be a finite number.`);
  return Number.isInteger(value)
    ? mistyped(name, spoken(value, 6), 'a date', quantity.limits?.date)
    : mistyped(name, spoken(value), 'a clock time', quantity.limits?.clock);
}

/** What to type instead of a fraction that the spreadsheet turned into something else. */
function mistyped(name: string, came: string, what: string, fraction = ''): Fail {
  const typed = `Type =${fraction.replace(':', '/')}, or ${fraction} in a text cell.`;
  return fail('unreadable', `${name}: ${came} looks like ${what}, made of ${fraction} or the like. ${typed}`);
}

/** A text in a cell, whatever its form. */
export function readAnyText(
  given: string,
  quantity: Quantity,
  name: string,
  exact: boolean,
): Result<number> | Blank {
  const text = normalise(given);
  if (text === '') return quantity.blank === 'missing' ? BLANK : 0;
  const low = text.toLowerCase();
  if (quantity.words !== undefined && Object.hasOwn(quantity.words, low))
    return quantity.words[low] as number;
  const value = byGrammar(low, quantity, exact);
  if (value === undefined) return unreadable(name, quantity, given);
  if (isFail(value)) return fail('unreadable', `${name}: ${quote(given)} ${value.message}.`);
  return value === 0 && quantity.blank === 'missing' ? BLANK : value;
}

/** A text in a cell: the forms that most cells have are read without the grammar. */
function readText(given: string, quantity: Quantity, name: string, exact: boolean): Result<number> | Blank {
  const common = commonText(given, quantity, exact);
  return Number.isNaN(common) ? readAnyText(given, quantity, name, exact) : common;
}

/** Dates come from hosts that run us in a world of their own, so that `instanceof` does not know them. */
const isDate = (cell: unknown): boolean => Object.prototype.toString.call(cell) === '[object Date]';

/** What a cell holds, in words. */
export function describe(cell: unknown): string {
  if (typeof cell === 'string') return quote(cell);
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : 'a number without end';
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
  const { date } = quantity.limits ?? {};
  if (date !== undefined && isDate(cell)) return mistyped(name, 'it', 'a date', date);
  return fail(
    'unreadable',
    `${name} holds ${describe(cell)}, not ${quantity.title}. Write ${orList(quantity.forms)}.`,
  );
}
