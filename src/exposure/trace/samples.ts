import { at } from '../core/at';
import { ABOVE_ZERO, outside } from '../core/range';
import { type Fail, fail, type Result } from '../core/result';
import { type Blocks, blocksOf } from './sampleBlocks';

/** A recording that is in order: finite values at times that never fall. */
export interface Samples {
  readonly values: ArrayLike<number>;
  /** A time for each value, or undefined where the samples come at a steady step. */
  readonly times: ArrayLike<number> | undefined;
  readonly step: number;
  /** Rows that count: blank ones at the end are left off. */
  readonly count: number;
  readonly lowest: number;
  readonly highest: number;
  readonly mean: number;
  readonly blocks: Blocks;
}

/** Fewer samples have no rise and fall. */
const LEAST = 3;
/** Values beyond this would overflow when they are added. */
const LARGEST = 1e300;

export const timeAt = (samples: Samples, i: number): number =>
  samples.times === undefined ? i * samples.step : (samples.times[i] as number);

/** Rows up to the last that is not 0, in both columns where there are two: blank cells arrive as 0. */
function rowsThatCount(times: ArrayLike<number> | undefined, values: ArrayLike<number>): number {
  const isBlank = (i: number): boolean => values[i] === 0 && (times === undefined || times[i] === 0);
  let count = values.length;
  while (count > 0 && isBlank(count - 1)) count--;
  return count;
}

/**
 * Reads a recording, without copying it.
 *
 * @param times - seconds, one for each value, equal neighbours allowed; or one number, the sample interval (above 0).
 * @param values - in any unit.
 * @returns the recording with its extremes; `unreadable` where rows are missing or do not match, `domain` where a number is
 * not finite or a time falls (the row is named, counted from 1).
 */
export function readSamples(times: ArrayLike<number>, values: ArrayLike<number>): Result<Samples> {
  if (times.length === 0)
    return fail('unreadable', 'times is blank: give the times, or one sample interval.');
  if (values.length === 0) return fail('unreadable', 'values is blank: give the recorded values.');
  const steady = times.length === 1;
  if (!steady && times.length !== values.length)
    return fail(
      'unreadable',
      `times and values must be as long as each other: ${times.length} times for ${values.length} values.`,
    );
  const step = steady ? at(times, 0) : 0;
  const wrong = steady ? outside('times (one cell is the sample interval)', step, ABOVE_ZERO) : undefined;
  if (wrong) return wrong;
  const given = steady ? undefined : times;
  const count = rowsThatCount(given, values);
  if (count < LEAST)
    return fail(
      'unreadable',
      `The trace has too few samples: ${count} that are not blank, where it takes ${LEAST} or more.`,
    );
  return measured(given, step, values, count);
}

/**
 * Samples in a tenth of a recording. So much at either end is dark in nearly every recording in which the flash is seen, and
 * is long enough to show what the recording shows without light.
 */
export const tenthOf = (count: number): number => Math.floor(count / 10);

/** Index of the first sample for which something is wrong, or −1. */
function firstWrong(count: number, wrong: (i: number) => boolean): number {
  for (let i = 0; i < count; i++) if (wrong(i)) return i;
  return -1;
}

/** What is wrong with times that are not finite, or fall. */
function wrongTimes(times: ArrayLike<number>, count: number): Fail | undefined {
  let before = -Infinity;
  let i = 0;
  for (; i < count; i++) {
    const time = times[i] as number;
    if (!(time >= before)) break;
    before = time;
  }
  if (i === count && before < Infinity && at(times, 0) > -Infinity) return undefined;
  const row = firstWrong(count, (k) => !Number.isFinite(times[k]));
  if (row >= 0) return fail('domain', `times must be numbers: row ${row + 1} is not a finite number.`);
  return fail(
    'domain',
    `times must not fall: row ${i + 1} is earlier than row ${i}. Sort the rows by time, or leave out the blank ones.`,
  );
}

function measured(
  times: ArrayLike<number> | undefined,
  step: number,
  values: ArrayLike<number>,
  count: number,
): Result<Samples> {
  const wrong = times && wrongTimes(times, count);
  if (wrong) return wrong;
  const blocks = blocksOf(values, count);
  const lowest = blocks.lows.reduce((a, b) => Math.min(a, b), Infinity);
  const highest = blocks.highs.reduce((a, b) => Math.max(a, b), -Infinity);
  const mean = blocks.sums.reduce((all, sum) => all + sum / count, 0);
  if (!Number.isFinite(mean)) {
    const row = firstWrong(count, (i) => !Number.isFinite(values[i]));
    if (row >= 0) return fail('domain', `values must be numbers: row ${row + 1} is not a finite number.`);
  }
  const samples = { values, times, step, count, lowest, highest, mean, blocks };
  const length = timeAt(samples, count - 1) - timeAt(samples, 0);
  if (!(length > 0))
    return fail('domain', 'times must rise: the first and the last row of the trace have the same time.');
  if (!Number.isFinite(length) || Math.max(highest, -lowest) > LARGEST)
    return fail('domain', 'The numbers of the trace are too large to be measured.');
  return samples;
}
