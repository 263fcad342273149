import { isFail } from '../core/result';
import type { Pulse } from './pulse';
import { durationOf, spanAt } from './spanAtLevel';

/** A level from which on durations are unsure, and by what share of it the one at the highest is. */
export interface Unsure {
  readonly from: number;
  readonly share: number;
}

/** The levels of the table that lie near the top, from the highest down. */
const HIGH = [0.9, 0.8, 0.7, 0.6, 0.5];
/** A duration that is known to a fiftieth is known as well as heads repeat theirs. */
const KNOWN = 0.02;
/** So far above and below a level its slope is read: beyond the noise of a crossing, and well below the top. */
const BESIDE = 0.02;
/**
 * A duration errs by twice what the doubt of the height alone would make of it, as crossings have noise of their own, and 95 in
 * 100 err by less than twice that: so it came out for the seven shapes of the accuracy table.
 */
const ERRS = 4;

/** What noise leaves unsure of the duration at a level, as a share of it; 0 where there is no such duration. */
function unsureAt(pulse: Pulse, level: number): number {
  const [low, here, high] = [level - BESIDE, level, level + BESIDE].map((at) => {
    const span = spanAt(pulse, at);
    return isFail(span) ? NaN : durationOf(span);
  }) as [number, number, number];
  const slope = (low - high) / (2 * BESIDE);
  const share = (ERRS * level * (pulse.top.doubt / pulse.top.height) * slope) / here;
  return share > 0 ? share : 0;
}

/**
 * From which level on noise leaves durations unsure. The height is known no better than the samples about the top tell it, and a
 * level is a part of the height: where the light changes slowly, a little of it is a long time.
 *
 * @returns undefined where all of them are known.
 */
export function unsureFrom(pulse: Pulse): Unsure | undefined {
  if (pulse.top.doubt === 0) return undefined;
  const shares = HIGH.map((level) => unsureAt(pulse, level));
  const known = shares.findIndex((share) => share <= KNOWN);
  const from = HIGH.at(known < 0 ? -1 : known - 1);
  return known === 0 ? undefined : { from: from as number, share: shares[0] as number };
}
