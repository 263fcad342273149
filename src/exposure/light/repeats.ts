import { at } from '../core/at';
import { log2Ratio, roundStops } from '../core/numbers';
import { answer, fail, type Result } from '../core/result';

/**
 * Range of several readings of one light, in stops: from the lowest to the highest.
 *
 * @param readings - exact f-numbers (each above 0, at least one).
 */
export function lightSpread(readings: readonly number[]): Result<number> {
  const lowest = readings.reduce((a, b) => Math.min(a, b), Infinity);
  const highest = readings.reduce((a, b) => Math.max(a, b), 0);
  return answer(roundStops(2 * log2Ratio(highest, lowest)));
}

/** Stops of each reading from the first: small numbers, so that means and deviations keep their digits. */
const stopsFromFirst = (readings: readonly number[]): number[] =>
  readings.map((n) => 2 * log2Ratio(n, at(readings, 0)));
const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

/**
 * Mean of several readings, taken in stops (a geometric mean), as a reading.
 *
 * @param readings - exact f-numbers (each above 0, at least one).
 */
export function lightMean(readings: readonly number[]): Result<number> {
  return answer(at(readings, 0) * 2 ** (mean(stopsFromFirst(readings)) / 2));
}

/**
 * Repeatability: sample standard deviation (n − 1) of several readings of one light, in stops.
 *
 * @param readings - exact f-numbers (each above 0).
 * @returns stops; a `no-answer` refusal for fewer than two readings.
 */
export function lightRepeat(readings: readonly number[]): Result<number> {
  if (readings.length < 2)
    return fail('no-answer', 'readings holds one reading: a deviation needs at least two.');
  const stops = stopsFromFirst(readings);
  const middle = mean(stops);
  const squares = stops.reduce((sum, s) => sum + (s - middle) ** 2, 0);
  return answer(roundStops(Math.sqrt(squares / (stops.length - 1))));
}
