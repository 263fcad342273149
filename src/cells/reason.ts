import type { Fail } from '../exposure/core/result';
import type { WrittenMark } from '../exposure/stops/marks';
import type { MarkName } from '../exposure/stops/stopText';

/** Why nothing stands in a cell: it is blank, it holds a 0 that counts as blank, or somebody wrote "none". */
export type Absence = 'nothing' | 'zero' | 'none';

/**
 * Why a cell was read as the value that it was:
 *
 * - `nothing`, `zero`, `none`: an absence, and what stands in for it
 * - `number`: a number as it stands
 * - `mark`: a number that names a mark, as the exact value behind the mark; the mark is said as it is written
 * - `decimals`: a number as it stands although marks are known, as its list is read to decimals
 * - `stops`: a figure, and the stops written after it
 * - `exact`: a figure as it stands, as somebody wrote "exact"
 * - `unit`: a number with its unit
 * - `form`: a percentage, a pair such as 3:1, the name of a filter
 * - `choice`: one of a few words
 * - `word`: a word that stands for a number
 *
 * A number that names no mark may still be the exact value of one, such as one that another cell has worked out.
 */
export type Reason =
  | { readonly by: Absence | 'decimals' | 'exact' | 'form' | 'choice' }
  | { readonly by: 'number' | 'stops' | 'unit'; readonly mark?: MarkName }
  | { readonly by: 'mark'; readonly mark: MarkName }
  | { readonly by: 'word'; readonly word: string };

/** A value, and why it is that. */
export interface Meaning<Value> {
  readonly value: Value;
  readonly reason: Reason;
}

/** What a cell was read as; `missing` where nothing is there and no value stands for nothing, `refused` where it is not read. */
export type Reading<Value> = Meaning<Value> | { readonly missing: Absence } | { readonly refused: Fail };

export const meaning = <Value>(value: Value, by: Exclude<Reason['by'], 'word' | 'mark'>): Meaning<Value> => ({
  value,
  reason: { by },
});

/** The exact value of the mark that a number names. */
export const markMeaning = ({ scale, figure, exact }: WrittenMark): Meaning<number> => ({
  value: exact,
  reason: { by: 'mark', mark: { scale, figure, tenths: 0 } },
});
