import { ceilSteady } from '../core/numbers';
import type { Range } from '../core/range';
import { answer, isFail, type Result } from '../core/result';
import { depth } from './depth';

/** A fifth of each slice is shot twice. */
export const OVERLAP = 0.2;
export const OVERLAPS: Range = { least: 0, below: 1 };

/**
 * Step between two frames of a focus stack: depth of field · (1 − overlap).
 *
 * @param overlap - share of each slice that the next one covers again (0 up to, not including, 1).
 * @returns mm on the subject's side.
 */
export function stackStep(
  aperture: number,
  magnification: number,
  blurCircle: number,
  overlap = OVERLAP,
  pupil = 1,
): Result<number> {
  const slice = depth(aperture, magnification, blurCircle, pupil);
  return isFail(slice) ? slice : answer(slice * (1 - overlap));
}

/**
 * Frames of a focus stack with both ends in focus: ⌈depth/step⌉ + 1.
 *
 * @param wanted - depth of the subject in mm (above 0).
 * @returns whole frames.
 */
export function stackFrames(
  wanted: number,
  aperture: number,
  magnification: number,
  blurCircle: number,
  overlap = OVERLAP,
  pupil = 1,
): Result<number> {
  const step = stackStep(aperture, magnification, blurCircle, overlap, pupil);
  return isFail(step) ? step : answer(ceilSteady(wanted / step) + 1);
}
