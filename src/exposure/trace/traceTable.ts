import { answer, isFail, type Result } from '../core/result';
import { readPulse } from './pulse';
import { durationOf, type Shares, sharesWithin, type Span, spanAt } from './spanAtLevel';
import { wholeLight, wholeWithShares } from './tail';

const LEVELS = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9] as const;

/**
 * Durations and shares of the light of a flash at the levels 0.1, 0.2 … 0.9.
 *
 * Arguments and definitions as in `traceTime` and `traceInside`.
 *
 * @returns a row a level: duration in seconds, share before, inside and after it. A level that the recording does not answer
 * has refusals in its row, the others stand.
 */
export function traceTable(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  base?: number,
): Result<readonly (readonly Result<number>[])[]> {
  const pulse = readPulse(times, values, base);
  if (isFail(pulse)) return pulse;
  const whole = wholeLight(pulse);
  const cursor = { rise: pulse.from, fall: pulse.to };
  let outer: Result<Span & Shares> = isFail(whole) ? whole : wholeWithShares(whole);
  return LEVELS.map((level): readonly Result<number>[] => {
    const span = spanAt(pulse, level, cursor);
    if (isFail(span)) return [span, span, span, span];
    const duration = answer(durationOf(span));
    if (isFail(outer)) return [duration, outer, outer, outer];
    outer = sharesWithin(pulse, outer, span);
    return [duration, answer(outer.before), answer(outer.inside), answer(outer.after)];
  });
}
