import { answer, isFail, type Result } from '../core/result';
import { readPulse } from './pulse';
import { durationOf, spanAt } from './spanAtLevel';

/** Level of a duration where none is given: t0.5. */
export const HALF = 0.5;

/**
 * Duration of a flash at a level, from a recorded trace.
 *
 * The pulse is the one with the highest peak. A level is that fraction of its height above the base; the duration runs from
 * the first rise to the last fall through it. Between samples a straight line is drawn, or where they are fine a parabola;
 * noise is kept out by hysteresis and local fits (`crossingOf`, `topOf`), never by smoothing the trace. The base is that of
 * 40 or more samples before the flash, taken off as a straight line where it drifts along one; else the lower of the first
 * sample and what the tail comes down to (`baseOf`). A recording that starts above the level counts from its first sample.
 *
 * Definitions of t0.5 and t0.1: ISO 2827, as quoted in the trade.
 *
 * @param times - seconds, one for each value, never falling; or a single number, the sample interval (above 0). Rows at the
 * end that are 0 in both columns are blank and left off (with an interval: values of 0 at the end).
 * @param values - what the sensor recorded, in any unit, either way up.
 * @param level - fraction of the height (between 0 and 1).
 * @param base - what the sensor shows without light, in the unit of the values; measured where it is left out.
 * @returns seconds; `no-answer` where nothing rises above the base, the recording ends above the level, or the level is lost
 * in the noise or lies above the highest sample.
 */
export function traceTime(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  level: number = HALF,
  base?: number,
): Result<number> {
  const pulse = readPulse(times, values, base);
  if (isFail(pulse)) return pulse;
  const span = spanAt(pulse, level);
  return isFail(span) ? span : answer(durationOf(span));
}
