import type { Limit, Quantity } from '../catalogue/quantities';
import { at } from '../exposure/core/at';
import { SLACK, spoken } from '../exposure/core/numbers';
import { fail, type Fail } from '../exposure/core/result';
import { exactOn, type Ladder, ladderOf, writtenMark } from '../exposure/stops/marks';
import { markMeaning, type Meaning, meaning } from './reason';

/** Numbers from here up are dates of this century, not times or ratios. */
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

/** How bare numbers of a quantity are read; in one form for all quantities, as every number of a column passes here. */
export interface Bare {
  /** What 0 is: NaN where it counts as a blank. */
  readonly zero: number;
  /** The least and the most that are believed. */
  readonly least: number;
  readonly most: number;
  readonly clocks: boolean;
  readonly marks: Ladder | undefined;
  /** Marks that a number with its unit names, also where bare numbers are taken as typed. */
  readonly named: Ladder | undefined;
}

const BARE = new WeakMap<Quantity, readonly Bare[]>();

function bareWays(quantity: Quantity): readonly Bare[] {
  const { limits = {}, blank } = quantity;
  const marks = quantity.marks && ladderOf(quantity.marks);
  const ofCells: Bare = {
    zero: blank === 'missing' ? NaN : 0,
    least: limits.least === undefined ? -Number.MAX_VALUE : limits.least.at * (1 - SLACK),
    most: Math.min(
      limits.most === undefined ? Number.MAX_VALUE : limits.most.at * (1 + SLACK),
      limits.date === undefined ? Number.MAX_VALUE : FIRST_DATE * (1 - Number.EPSILON),
    ),
    clocks: limits.clock !== undefined,
    marks,
    named: marks,
  };
  const ofTexts = { ...ofCells, clocks: false };
  return [ofCells, { ...ofCells, marks: undefined }, ofTexts, { ...ofTexts, marks: undefined }];
}

/**
 * @param exact - takes numbers as typed, though the quantity knows marks.
 * @param written - of a text, in which a spreadsheet cannot have made a time of day of a ratio.
 */
export function bareOf(quantity: Quantity, exact: boolean, written = false): Bare {
  let ways = BARE.get(quantity);
  if (ways === undefined) BARE.set(quantity, (ways = bareWays(quantity)));
  return at(ways, (exact ? 1 : 0) + (written ? 2 : 0));
}

/** A bare number as the function gets it, a mark as the exact value behind it; NaN where there is more to say. */
export function bareNumber(value: number, { zero, least, most, clocks, marks }: Bare): number {
  if (value === 0) return zero;
  if (!(value >= least && value <= most) || (clocks && looksLikeClock(value))) return NaN;
  if (marks === undefined) return value;
  const exact = exactOn(marks, value);
  return Number.isNaN(exact) ? value : exact;
}

/**
 * A bare number other than 0 and why it is read so, or what is wrong with it.
 *
 * @param bare - as from `bareOf`.
 * @returns a refusal whose message goes on from the number.
 */
export function readBare(value: number, quantity: Quantity, bare: Bare): Meaning<number> | Fail {
  const read = bareNumber(value, bare);
  if (!Number.isNaN(read)) return bareMeaning(value, bare, quantity);
  if (!Number.isFinite(value)) return fail('unreadable', 'must be a finite number');
  const { date, clock } = quantity.limits ?? {};
  if (date !== undefined && value >= FIRST_DATE) return fail('unreadable', `looks like a date, ${date}`);
  const beyond = beyondLimit(value, quantity);
  if (beyond !== undefined) return beyond;
  // what a number below 0 may be at least is for the argument to say
  return value < 0 ? meaning(value, 'number') : fail('unreadable', `looks like a clock time, ${clock}`);
}

function bareMeaning(value: number, bare: Bare, { marks }: Quantity): Meaning<number> {
  if (marks === undefined) return meaning(value, 'number');
  if (bare.marks === undefined) return meaning(value, 'decimals');
  const mark = writtenMark(marks, value);
  return mark === undefined ? meaning(value, 'number') : markMeaning(mark);
}

/** What to say of a number beyond what is believed of a quantity. */
export function beyondLimit(value: number, { limits = {}, title }: Quantity): Fail | undefined {
  const said = (size: string, { hint }: Limit): Fail =>
    fail('unreadable', `is too ${size} for ${title}: ${hint.replaceAll('#', spoken(value, 6))}`);
  if (limits.least && value > 0 && value < limits.least.at * (1 - SLACK)) return said('small', limits.least);
  if (limits.most && value > limits.most.at * (1 + SLACK)) return said('large', limits.most);
  return undefined;
}
