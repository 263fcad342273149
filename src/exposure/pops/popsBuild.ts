import { at } from '../core/at';
import { answer, fail, type Result } from '../core/result';
import { rootSumOfSquares } from '../light/lightSum';

/**
 * Reading of several heads with their own numbers of pops, and of the ambient light that creeps in meanwhile:
 * √(Σ nᵢNᵢ² + Nₐ²·T/t)·2^(−loss/2).
 *
 * @param readings - f-number of one pop of each head (each above 0).
 * @param pops - whole pops of each head (from 0 up, 0 where it does not fire), as many as there are readings; one at least
 *   must fire.
 * @param ambient - f-number that the ambient light reads at `ambientTime` (above 0).
 * @param ambientTime - seconds at which the ambient was metered (above 0).
 * @param openTime - seconds that the shutter stands open (above 0).
 * @param loss - stops lost between meter and film.
 * @returns f-number.
 */
export function popsBuild(
  readings: readonly number[],
  pops: readonly number[],
  ambient?: number,
  ambientTime?: number,
  openTime?: number,
  loss = 0,
): Result<number> {
  if (pops.length !== readings.length)
    return fail(
      'unreadable',
      `pops must be as many as the readings: ${pops.length} for ${readings.length} readings.`,
    );
  if (pops.every((n) => n === 0))
    return fail(
      'unreadable',
      'pops is blank: write 1 where a head fires once. A head without pops does not fire.',
    );
  const light = readings.map((n, i) => n * Math.sqrt(at(pops, i)));
  if (ambient !== undefined) {
    if (ambientTime === undefined || openTime === undefined) {
      const missing = ambientTime === undefined ? 'ambientTime' : 'openTime';
      return fail(
        'unreadable',
        `${missing} is missing: ambient light needs the time it was metered at and the time the shutter is open.`,
      );
    }
    light.push(ambient * Math.sqrt(openTime / ambientTime));
  }
  return answer(rootSumOfSquares(light) * 2 ** (-loss / 2));
}
