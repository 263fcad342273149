import { SLACK, spoken } from '../core/numbers';
import type { Range } from '../core/range';
import { answer, fail, type Result } from '../core/result';

export const TILT: Range = { above: 0, most: 90 };
const DEGREES = 180 / Math.PI;

/**
 * Lens tilt for a hinge distance: asin(f/J). J runs from the lens, parallel to the film, to the line about which the
 * plane of sharpness turns.
 *
 * @param focal - focal length in mm (above 0).
 * @param hinge - J in mm (not less than the focal length).
 * @returns degrees.
 */
export function tiltForHinge(focal: number, hinge: number): Result<number> {
  if (hinge < focal * (1 - SLACK))
    return fail(
      'domain',
      `hinge must be at least the focal length, ${spoken(focal)} mm, not ${spoken(hinge)} mm.`,
    );
  return answer(Math.asin(Math.min(1, focal / hinge)) * DEGREES);
}

/**
 * Hinge distance for a lens tilt: f/sin(tilt), the inverse of `tiltForHinge`.
 *
 * @param tilt - degrees (above 0, up to 90).
 * @returns mm.
 */
export function hingeForTilt(focal: number, tilt: number): Result<number> {
  return answer(focal / Math.sin(tilt / DEGREES));
}
