import { answer, type Result } from '../core/result';

/** A tenth of a stop: what a meter just shows. */
export const CREEP_LIMIT = 0.1;

/**
 * Longest time the shutter may stand open before the ambient light adds more than the limit: t·(N/Nₐ)²·(2^limit − 1).
 *
 * @param flash - f-number of all the flash, at the meter (above 0).
 * @param ambient - f-number of the ambient light at `ambientTime` (above 0).
 * @param ambientTime - seconds at which the ambient was metered (above 0).
 * @param limit - stops that ambient may add (above 0).
 * @returns seconds.
 */
export function creepTime(
  flash: number,
  ambient: number,
  ambientTime: number,
  limit = CREEP_LIMIT,
): Result<number> {
  return answer(ambientTime * (flash / ambient) ** 2 * Math.expm1(limit * Math.LN2));
}
