import { isFail, type Result } from '../core/result';
import { doubtsOf } from './doubts';
import { readPulse } from './pulse';

/** What a recording gets in which nothing is doubtful. */
export const NOTHING_DOUBTFUL = 'Nothing doubtful was found in this recording.';

/**
 * What is doubtful about a recording, in plain sentences: too few samples, a flat top, more than one flash, a tail cut off, a
 * base that is unsure or drifts, ringing, noise, times that do not rise.
 *
 * @param times - seconds, or the sample interval, as in `traceTime`.
 * @param values - in any unit, as in `traceTime`.
 * @param base - what the sensor shows without light, as in `traceTime`.
 * @returns the sentences, or a fixed one where nothing is doubtful. A recording that the other functions refuse for what is
 * in it has their reason as its note; only missing rows are refused (`unreadable`).
 */
export function traceNote(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  base?: number,
): Result<string> {
  const pulse = readPulse(times, values, base);
  if (isFail(pulse)) return pulse.fail === 'unreadable' ? pulse : pulse.message;
  const doubts = doubtsOf(pulse);
  return doubts.length > 0 ? doubts.join(' ') : NOTHING_DOUBTFUL;
}
