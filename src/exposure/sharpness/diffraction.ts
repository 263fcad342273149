import { answer, answerAboveZero, isFail, type Result } from '../core/result';

/** Diameter of the first dark ring in wavelengths and f-numbers: twice the first zero of J₁ over π. */
const AIRY = 2.44;
/** Green, where the eye sees best; and the mercury line of the published rule for the best aperture. */
export const GREEN_NM = 550;
export const MERCURY_NM = 546;
const UM_PER_NM = 1e-3;
const MM_PER_NM = 1e-6;

/**
 * Effective f-number at a magnification: N·(1 + m/p).
 *
 * @param aperture - marked f-number of the lens (above 0).
 * @param magnification - image size over object size (from 0).
 * @param pupil - pupil magnification (above 0).
 */
export function workingAperture(aperture: number, magnification: number, pupil = 1): Result<number> {
  return answer(aperture * (1 + magnification / pupil));
}

/**
 * Diameter of the Airy disc on the sensor: 2.44·λ·N·(1 + m/p).
 *
 * @param wavelength - nm (above 0).
 * @returns µm.
 */
export function airyDisc(
  aperture: number,
  magnification: number,
  wavelength = GREEN_NM,
  pupil = 1,
): Result<number> {
  return answer(AIRY * wavelength * UM_PER_NM * aperture * (1 + magnification / pupil));
}

/**
 * Lens setting at which defocus at the ends of the focus spread and diffraction balance: √(Δv/(2·2.44·λ))/(1 + m/p).
 *
 * @param spread - Δv, travel between near and far focus read off the rail, in mm (above 0).
 * @param magnification - image size over object size (from 0); 0 gives the published √(375·Δv).
 * @param wavelength - nm (above 0).
 * @returns f-number.
 */
export function spreadAperture(
  spread: number,
  magnification = 0,
  wavelength = MERCURY_NM,
  pupil = 1,
): Result<number> {
  return answer(Math.sqrt(spread / (2 * AIRY * wavelength * MM_PER_NM)) / (1 + magnification / pupil));
}

/**
 * The same from the depth of the subject: its image is depth·m² deep.
 *
 * @param depth - depth of the subject in mm (above 0).
 * @param magnification - image size over object size (above 0).
 */
export function bestAperture(
  depth: number,
  magnification: number,
  wavelength = MERCURY_NM,
  pupil = 1,
): Result<number> {
  const spread = answerAboveZero(depth * magnification ** 2);
  return isFail(spread) ? spread : spreadAperture(spread, magnification, wavelength, pupil);
}
