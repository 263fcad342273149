import { isFail, type Result } from '../core/result';
import { type Doubt, doubtsOf } from './doubts';
import { readPulse } from './pulse';

/**
 * What is doubtful about a recording: too few samples, a flat top, more than one flash, a tail cut off or hidden in noise, a base
 * that is unsure or drifts, ringing, noise, times that do not rise or jump, the ripple of a lamp, a flash too long for one.
 *
 * @param times - seconds, or the sample interval, as in `traceTime`.
 * @param values - in any unit, as in `traceTime`.
 * @param base - what the sensor shows without light, as in `traceTime`.
 * @returns the doubts, none where nothing is doubtful; refusals as in `traceTime`.
 */
export function traceDoubts(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  base?: number,
): Result<readonly Doubt[]> {
  const pulse = readPulse(times, values, base);
  return isFail(pulse) ? pulse : doubtsOf(pulse);
}
