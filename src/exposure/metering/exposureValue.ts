import { log2Ratio, roundStops } from '../core/numbers';
import { answer, type Result } from '../core/result';

/**
 * Exposure value at ISO 100: log2(N²/t) − log2(S/100).
 *
 * @param aperture - exact f-number (above 0).
 * @param time - exact exposure time in seconds (above 0).
 * @param iso - exact ISO speed (above 0), 100 where none is given.
 * @returns EV, to 1e-12.
 */
export function exposureValue(aperture: number, time: number, iso = 100): Result<number> {
  return answer(roundStops(2 * Math.log2(aperture) - Math.log2(time) - log2Ratio(iso, 100)));
}
