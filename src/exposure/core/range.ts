import { type Fail, fail } from './result';
import { isWhole, spoken } from './numbers';

/** What an argument may be. Catalogue rows and pure functions share these, so documents and code cannot differ. */
export interface Range {
  readonly above?: number;
  readonly below?: number;
  readonly least?: number;
  readonly most?: number;
  readonly whole?: true;
  /** A few words added to the refusal: what the number probably was. */
  readonly hint?: string;
}

export const ABOVE_ZERO: Range = { above: 0 };
export const NOT_NEGATIVE: Range = { least: 0 };
export const ANY: Range = {};
export const POPS: Range = { least: 1, whole: true };
/** Pops of one head among others: with none it does not fire. */
export const POPS_OR_NONE: Range = { least: 0, whole: true };
/** A level of a pulse: a fraction of its peak. */
export const LEVEL: Range = { above: 0, below: 1 };

/** The range in words: "above 0", "a whole number from 1 up". */
export function rangeText(range: Range): string {
  const low =
    range.least !== undefined
      ? `from ${range.least}`
      : range.above !== undefined
        ? `above ${range.above}`
        : '';
  const high =
    range.most !== undefined
      ? `up to ${range.most}`
      : range.below !== undefined
        ? `below ${range.below}`
        : '';
  const span =
    low && high
      ? `${low} ${range.above !== undefined ? 'and ' : ''}${high}`
      : low && range.least !== undefined
        ? `${low} up`
        : low || high;
  return `${range.whole ? 'a whole number ' : ''}${span}`.trim();
}

export function inRange(value: number, range: Range): boolean {
  if (!Number.isFinite(value)) return false;
  if (range.above !== undefined && !(value > range.above)) return false;
  if (range.least !== undefined && !(value >= range.least)) return false;
  if (range.below !== undefined && !(value < range.below)) return false;
  if (range.most !== undefined && !(value <= range.most)) return false;
  return !(range.whole && !isWhole(value));
}

/**
 * A refusal where the argument lies outside its range, undefined where it is in order.
 * An argument that is not given (undefined) passes. Chain several with `??`.
 */
export function outside(name: string, value: number | undefined, range: Range): Fail | undefined {
  if (value === undefined || inRange(value, range)) return undefined;
  const wanted = rangeText(range) || 'a number';
  const came = Number.isFinite(value) ? `not ${spoken(value)}` : 'and finite';
  return fail('domain', `${name} must be ${wanted}, ${came}.${range.hint ? ` ${range.hint}` : ''}`);
}

/** The same for every member of a list, which must not be empty; the refusal says which one. */
export function outsideAny(name: string, values: readonly number[], range: Range): Fail | undefined {
  if (values.length === 0) return fail('unreadable', `${name} is blank: give at least one.`);
  for (const [i, value] of values.entries()) {
    if (!inRange(value, range))
      return outside(values.length === 1 ? name : `${name} (number ${i + 1} of the list)`, value, range);
  }
  return undefined;
}
