import { answer, type Result } from '../core/result';

/**
 * A flash duration at another level, for a pulse that decays exponentially: t·ln(1/to)/ln(1/from).
 *
 * @param duration - seconds at the level `from` (above 0).
 * @param from - level at which it was measured, a fraction of the peak (between 0 and 1).
 * @param to - level wanted (between 0 and 1).
 * @returns seconds; from 0.5 to 0.1 is 3.3219 times as long. A real pulse with a rise is nearer to 2.6 times: between 2 times, where it
 *   rises as slowly as it falls, and the 3 times that makers print at most.
 */
export function flashLevel(duration: number, from: number, to: number): Result<number> {
  return answer(duration * (Math.log(to) / Math.log(from)));
}
