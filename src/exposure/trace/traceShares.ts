import { answer, isFail, type Result } from '../core/result';
import { readPulse } from './pulse';
import { type Shares, sharesWithin, spanAt } from './spanAtLevel';
import { wholeLight, wholeWithShares } from './tail';
import { HALF } from './traceTime';

function sharesOf(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  level: number,
  base: number | undefined,
): Result<Shares> {
  const pulse = readPulse(times, values, base);
  if (isFail(pulse)) return pulse;
  const span = spanAt(pulse, level);
  if (isFail(span)) return span;
  const whole = wholeLight(pulse);
  return isFail(whole) ? whole : sharesWithin(pulse, wholeWithShares(whole), span);
}

/**
 * Share of the light of a flash that falls inside its duration at a level: t0.5 of an exponential decay holds half of it.
 *
 * Light is added up by the trapezoid rule over that pulse alone, the base taken off, negative noise kept. What lies below
 * 2 % of the height counts as long as it falls; what noise hides of the tail is carried on by the decay before it. Arguments and refusals as in `traceTime`.
 *
 * @returns share, 0 to 1; `no-answer` also where the recording ends above 0.1 of the height: too much light is missing.
 */
export function traceInside(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  level: number = HALF,
  base?: number,
): Result<number> {
  const shares = sharesOf(times, values, level, base);
  return isFail(shares) ? shares : answer(shares.inside);
}

/** Share of the light of a flash that is still to come when its duration at a level ends. All else as in `traceInside`. */
export function traceTail(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  level: number = HALF,
  base?: number,
): Result<number> {
  const shares = sharesOf(times, values, level, base);
  return isFail(shares) ? shares : answer(shares.after);
}
