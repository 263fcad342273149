import type { Range } from '../core/range';
import { answer, type Result } from '../core/result';

export const EXPONENT: Range = { least: 1, most: 3 };

/**
 * Exposure time of film that lags in long exposures: t^P above the threshold, t below it.
 *
 * With a threshold t₀ other than one second the curve starts there: t₀·(t/t₀)^P.
 *
 * @param time - metered time in seconds (above 0).
 * @param exponent - P from the film's data sheet (1 to 3).
 * @param threshold - seconds up to which the film follows the meter (from 0).
 * @returns seconds.
 */
export function reciprocityTime(time: number, exponent: number, threshold = 1): Result<number> {
  if (time <= threshold) return answer(time);
  const start = threshold === 0 ? 1 : threshold;
  // film that lags never needs less than the metered time
  return answer(Math.max(time, start * (time / start) ** exponent));
}
