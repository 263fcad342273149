import { answer, fail, type Result } from '../core/result';

/** √ΣN², scaled by the largest so that no square overflows. */
export function rootSumOfSquares(readings: readonly number[]): number {
  const largest = readings.reduce((a, b) => Math.max(a, b), 0);
  return largest * Math.sqrt(readings.reduce((sum, n) => sum + (n / largest) ** 2, 0));
}

/**
 * The reading of all lights together, from readings taken one light at a time.
 *
 * Light adds, and the exposure that a reading stands for goes with the square of its f-number: √ΣN².
 *
 * @param lists - exact f-numbers at one film speed (each above 0), in one list or several.
 * @returns f-number; a refusal where there is no reading. f/8 with f/8 is f/11 (11.3137).
 */
export function lightSum(...lists: readonly (readonly number[])[]): Result<number> {
  const readings = lists.flat();
  if (readings.length === 0) return fail('unreadable', 'readings is blank: give at least one.');
  return answer(rootSumOfSquares(readings));
}
