import { SLACK, spoken } from '../core/numbers';
import { answer, fail, type Fail, isFail, type Result } from '../core/result';

/** Handbooks drop the focal length that the exact distance adds. */
export type HyperfocalForm = 'exact' | 'handbook';
export const HYPERFOCAL_FORMS: readonly HyperfocalForm[] = ['exact', 'handbook'];

const noFarLimit = (): Fail =>
  fail('no-answer', 'There is no far limit: everything beyond the near limit is sharp.');

/**
 * Total depth of field from the magnification: 2·N·c·(1 + m/p)/m².
 *
 * With the focal length f the exact total of a thin lens, 2·N·c·(1 + m/p)/(m² − (N·c/f)²), which matters at small m.
 *
 * @param aperture - marked f-number of the lens (above 0).
 * @param magnification - image size over object size (above 0).
 * @param blurCircle - diameter of the blur circle that still counts as a point, in mm (above 0).
 * @param pupil - pupil magnification (above 0).
 * @param focal - focal length in mm (above 0).
 * @returns mm; a `no-answer` refusal where the far limit lies at infinity.
 */
export function depth(
  aperture: number,
  magnification: number,
  blurCircle: number,
  pupil = 1,
  focal?: number,
): Result<number> {
  const blur = aperture * blurCircle;
  const small = focal === undefined ? 0 : blur / focal;
  if (small >= magnification * (1 - SLACK)) return noFarLimit();
  return answer(
    (2 * blur * (1 + magnification / pupil)) / ((magnification - small) * (magnification + small)),
  );
}

/**
 * F-number for a depth of field: the inverse of `depth` without a focal length, depth·m²/(2·c·(1 + m/p)).
 *
 * @param wanted - depth in mm (above 0).
 */
export function apertureForDepth(
  wanted: number,
  magnification: number,
  blurCircle: number,
  pupil = 1,
): Result<number> {
  return answer((wanted * magnification ** 2) / (2 * blurCircle * (1 + magnification / pupil)));
}

/**
 * Distance from which on everything is sharp to infinity: f²/(N·c) + f; handbooks print f²/(N·c).
 *
 * @param focal - focal length in mm (above 0).
 * @returns mm.
 */
export function hyperfocal(
  focal: number,
  aperture: number,
  blurCircle: number,
  form: HyperfocalForm = 'exact',
): Result<number> {
  return answer(((focal / aperture) * focal) / blurCircle + (form === 'exact' ? focal : 0));
}

/** Hyperfocal distance without the focal length, and the subject's distance beyond the focal point. */
function focus(
  focal: number,
  aperture: number,
  distance: number,
  blurCircle: number,
): { far: number; beyond: number } | Fail {
  const far = hyperfocal(focal, aperture, blurCircle, 'handbook');
  if (isFail(far)) return far;
  if (distance > focal * (1 + SLACK)) return { far, beyond: distance - focal };
  return fail(
    'domain',
    `distance must be more than the focal length, ${spoken(focal)} mm, not ${spoken(distance)} mm.`,
  );
}

/**
 * Near limit of sharpness, thin lens: u·h/(h + u − f) with h = f²/(N·c).
 *
 * @param focal - focal length in mm (above 0).
 * @param distance - u, subject to lens in mm (more than the focal length).
 * @returns mm from the lens.
 */
export function depthNear(
  focal: number,
  aperture: number,
  distance: number,
  blurCircle: number,
): Result<number> {
  const at = focus(focal, aperture, distance, blurCircle);
  return isFail(at) ? at : answer(distance * (at.far / (at.far + at.beyond)));
}

/**
 * Far limit of sharpness, thin lens: u·h/(h − (u − f)) with h = f²/(N·c).
 *
 * @returns mm from the lens; a `no-answer` refusal from the hyperfocal distance on.
 */
export function depthFar(
  focal: number,
  aperture: number,
  distance: number,
  blurCircle: number,
): Result<number> {
  const at = focus(focal, aperture, distance, blurCircle);
  if (isFail(at)) return at;
  return at.beyond >= at.far * (1 - SLACK)
    ? noFarLimit()
    : answer(distance * (at.far / (at.far - at.beyond)));
}
