import { answer, answerAboveZero, type Fail, fail, isFail, type Result } from '../core/result';
import { flashLevel } from '../duration/flashLevel';

/** The level at which a flash is counted as over: t0.1, the time above a tenth of the peak. */
export const FREEZE_LEVEL = 0.1;
const MM_PER_M = 1000;
const UM_PER_MM = 1000;

/** Image of one metre on the subject, in the unit of the smear: mm on the subject, mm on the sensor, or pixels. */
function scaleOf(magnification: number | undefined, pixelPitch: number | undefined): number | Fail {
  if (pixelPitch === undefined) return MM_PER_M * (magnification ?? 1);
  if (magnification === undefined)
    return fail('unreadable', 'magnification is missing: pixels can be counted only with it.');
  return (MM_PER_M * magnification * UM_PER_MM) / pixelPitch;
}

/**
 * Length of the smear that a moving subject leaves: v·t·m.
 *
 * @param speed - m/s across the line of sight (above 0).
 * @param duration - flash duration in seconds at `level` (above 0).
 * @param magnification - image size over object size (above 0); none: the smear is measured on the subject.
 * @param pixelPitch - pixel pitch in µm (above 0): the smear is counted in pixels.
 * @param level - level of the duration; turned into t0.1 for an exponential decay, which errs on the long side for heads
 *   that cut the pulse.
 * @returns mm, or pixels where a pitch is given.
 */
export function freezeBlur(
  speed: number,
  duration: number,
  magnification?: number,
  pixelPitch?: number,
  level = FREEZE_LEVEL,
): Result<number> {
  const scale = scaleOf(magnification, pixelPitch);
  if (isFail(scale)) return scale;
  const whole = flashLevel(duration, level, FREEZE_LEVEL);
  return isFail(whole) ? whole : answer(speed * whole * scale);
}

/**
 * Longest flash duration that keeps the smear within a length: the inverse of `freezeBlur`.
 *
 * @param speed - m/s across the line of sight (above 0).
 * @param blur - allowed smear in mm, in pixels where a pitch is given (above 0).
 * @param magnification - image size over object size (above 0).
 * @param pixelPitch - pixel pitch in µm (above 0).
 * @param level - level at which the duration is wanted.
 * @returns seconds at that level.
 */
export function freezeTime(
  speed: number,
  blur: number,
  magnification?: number,
  pixelPitch?: number,
  level = FREEZE_LEVEL,
): Result<number> {
  const scale = scaleOf(magnification, pixelPitch);
  if (isFail(scale)) return scale;
  const whole = answerAboveZero(blur / scale / speed);
  return isFail(whole) ? whole : flashLevel(whole, FREEZE_LEVEL, level);
}
