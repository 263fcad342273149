import type { Quantity } from '../catalogue/quantities';
import { exactOn, type Ladder, ladderOf } from '../exposure/stops/marks';
import { fail, isFail, type Fail, type Result } from '../exposure/core/result';
import { SLACK, spoken } from '../exposure/core/numbers';
import { commonText } from './commonText';
import { byGrammar } from './grammar';
import { meaning, type Reading } from './reason';
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

/** A number in a cell, and why it is read so. What a spreadsheet made of a fraction is refused. */
function readNumber(value: number, quantity: Quantity, name: string, exact: boolean): Reading<number> {
  const bare = bareOf(quantity, exact);
  const read = bareNumber(value, bare);
  if (!Number.isNaN(read)) return meaning(read, whyBare(value, bare, quantity));
  if (value === 0) return { missing: 'zero' };
  return { refused: wrongNumber(value, quantity, name) };
}

function whyBare(value: number, { marks }: Bare, quantity: Quantity): 'number' | 'mark' | 'decimals' {
  if (marks !== undefined) return Number.isNaN(exactOn(marks, value)) ? 'number' : 'mark';
  return quantity.marks === undefined ? 'number' : 'decimals';
}

/** What is wrong with a number that no cell of the quantity holds. */
function wrongNumber(value: number, { limits }: Quantity, name: string): Fail {
  if (!Number.isFinite(value)) return fail('unreadable', `${name} must be a finite number.`);
  return Number.isInteger(value)
    ? mistyped(name, spoken(value, 6), 'a date', limits?.date)
    : mistyped(name, spoken(value), 'a clock time', limits?.clock);
}

/** What to type instead of a fraction that the spreadsheet turned into something else. */
function mistyped(name: string, came: string, what: string, fraction = ''): Fail {
  const typed = `Type =${fraction.replace(':', '/')}, or ${fraction} in a text cell.`;
  return fail('unreadable', `${name}: ${came} looks like ${what}, made of ${fraction} or the like. ${typed}`);
}

const NOTHING: Reading<number> = { missing: 'nothing' };
const ZERO_FOR_NOTHING = meaning(0, 'nothing');
const blankReading = ({ blank }: Quantity): Reading<number> =>
  blank === 'missing' ? NOTHING : ZERO_FOR_NOTHING;

/** A text in a cell, whatever its form, and why it is read so. */
function readText(given: string, quantity: Quantity, name: string, exact: boolean): Reading<number> {
  const text = normalise(given);
  if (text === '') return blankReading(quantity);
  const word = text.toLowerCase();
  const worded = quantity.words?.[word];
  // every record has names of its own, such as "constructor": no number stands behind those
  if (typeof worded === 'number') return { value: worded, reason: { by: 'word', word } };
  const read = byGrammar(word, quantity, exact);
  if (read === undefined) return { refused: unreadable(name, quantity, given) };
  if (isFail(read)) return { refused: fail('unreadable', `${name}: ${quote(given)} ${read.message}.`) };
  return read.value === 0 && quantity.blank === 'missing' ? { missing: 'zero' } : read;
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
 * One cell as a quantity in its base unit, and why it is read so.
 *
 * @param cell - what the host passes for the cell.
 * @param name - the argument's name, for messages.
 * @param exact - takes bare numbers as typed, though the quantity knows marks.
 * @returns the number with its reason; `missing` for an empty cell of a quantity that cannot be 0; or a refusal in words.
 */
export function readingOf(cell: unknown, quantity: Quantity, name: string, exact = false): Reading<number> {
  if (typeof cell === 'number') return readNumber(cell, quantity, name, exact);
  if (cell === null || cell === undefined) return blankReading(quantity);
  if (typeof cell === 'string') return readText(cell, quantity, name, exact);
  const { date } = quantity.limits ?? {};
  if (date !== undefined && isDate(cell)) return { refused: mistyped(name, 'it', 'a date', date) };
  const wanted = `not ${quantity.title}. Write ${orList(quantity.forms)}.`;
  return { refused: fail('unreadable', `${name} holds ${describe(cell)}, ${wanted}`) };
}

/** What a reading comes to, without its reason. */
export const valueOf = <Value>(reading: Reading<Value>): Value | Blank | Fail =>
  'value' in reading ? reading.value : 'refused' in reading ? reading.refused : BLANK;

/** The number of a cell in one of the forms that most cells have; NaN for every other, and where there is more to say. */
export const quickNumber = (cell: unknown, quantity: Quantity, exact: boolean): number =>
  typeof cell === 'number'
    ? bareNumber(cell, bareOf(quantity, exact))
    : typeof cell === 'string'
      ? commonText(cell, quantity, exact)
      : NaN;

/** The same number as that of `readingOf`, without the reason and in less time; `BLANK` where it is missing. */
export function readQuantity(
  cell: unknown,
  quantity: Quantity,
  name: string,
  exact = false,
): Result<number> | Blank {
  const quick = quickNumber(cell, quantity, exact);
  return Number.isNaN(quick) ? valueOf(readingOf(cell, quantity, name, exact)) : quick;
}
