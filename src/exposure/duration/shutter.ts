import { SLACK } from '../core/numbers';
import { answer, fail, type Result } from '../core/result';

/** A tenth of a stop: what a meter just shows. */
export const CLIP_LOSS = 0.1;

/** Decay time of a pulse that falls exponentially from its peak: the time to 1/e. */
const decayTime = (duration: number, level: number): number => duration / -Math.log(level);

/** ln(1 − e^(−x)): each form keeps its digits on its own side of ln 2. */
const logOfRest = (x: number): number =>
  x > Math.LN2 ? Math.log1p(-Math.exp(-x)) : Math.log(-Math.expm1(-x));

/** Open time after the delay, in decay times; 0 where the shutter closes before the flash. */
const decays = (duration: number, level: number, open: number, delay: number): number =>
  Math.max(0, open - delay) / decayTime(duration, level);

/**
 * Share of a flash that falls while the shutter is open, for a pulse that decays exponentially: 1 − e^(−(open − delay)/τ).
 *
 * @param duration - seconds at `level` (above 0).
 * @param level - fraction of the peak (between 0 and 1).
 * @param open - seconds that the shutter is fully open (above 0).
 * @param delay - seconds from open to the flash (from 0).
 * @returns share, 0 to 1. At t0.1 it is 0.9, at t0.5 it is 0.5: half the light is still to come.
 */
export function flashShare(duration: number, level: number, open: number, delay = 0): Result<number> {
  return answer(-Math.expm1(-decays(duration, level, open, delay)));
}

/**
 * Stops lost to a shutter that closes before the flash is over: −log2 of the share.
 *
 * @returns stops; a `no-answer` refusal where the shutter closes before the flash begins.
 */
export function flashClip(duration: number, level: number, open: number, delay = 0): Result<number> {
  if (open - delay <= SLACK * open)
    return fail(
      'no-answer',
      'The shutter closes before the flash begins: open is not longer than the delay.',
    );
  return answer(-logOfRest(decays(duration, level, open, delay)) / Math.LN2);
}

/**
 * Shortest opening that loses no more of the flash than a number of stops: the inverse of `flashClip`.
 *
 * @param loss - stops that may be lost (above 0).
 * @returns seconds.
 */
export function shutterForFlash(
  duration: number,
  level: number,
  loss = CLIP_LOSS,
  delay = 0,
): Result<number> {
  return answer(delay - decayTime(duration, level) * logOfRest(loss * Math.LN2));
}
