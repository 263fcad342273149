import { answer, type Result } from '../core/result';

/** Incident-light calibration constants of a receptor, in lux seconds: ISO 2720 names both kinds. */
export const RECEPTORS = { flat: 250, dome: 340 } as const;

/**
 * Luminous exposure at the subject that gives a reading: H = C·N²/S.
 *
 * @param aperture - exact f-number (above 0).
 * @param iso - exact ISO speed (above 0).
 * @param constant - C in lux seconds (above 0): 250 for a flat receptor, 340 for a domed one.
 * @returns lux seconds.
 */
export function luxSeconds(aperture: number, iso = 100, constant: number = RECEPTORS.flat): Result<number> {
  return answer(((constant * aperture) / iso) * aperture);
}

/**
 * The reading that a luminous exposure at the subject gives: N = √(H·S/C), the inverse of `luxSeconds`.
 *
 * @param luxseconds - lux seconds (above 0).
 * @returns f-number.
 */
export function apertureForLuxSeconds(
  luxseconds: number,
  iso = 100,
  constant: number = RECEPTORS.flat,
): Result<number> {
  return answer(Math.sqrt(luxseconds / constant) * Math.sqrt(iso));
}
