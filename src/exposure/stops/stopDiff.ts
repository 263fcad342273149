import { log2Ratio, roundStops } from '../core/numbers';
import { answer, type Result } from '../core/result';
import { type Scale, stopsPerDoubling } from './scales';

/**
 * Stops from one value up to another.
 *
 * Twice the exposure time, the sensitivity, the energy or the factor is one stop; an f-number that is √2 times as
 * large is one stop, as light goes with its square: 2·log2(to/from) for apertures, log2(to/from) otherwise.
 *
 * @param from - where to count from, exact value in the scale's unit (above 0).
 * @param to - where to count to (above 0); below `from` the stops are negative.
 * @returns stops, to 1e-12; a `domain` refusal where a value is not above 0.
 */
export function stopDiff(from: number, to: number, scale: Scale = 'aperture'): Result<number> {
  return answer(roundStops(stopsPerDoubling(scale) * log2Ratio(to, from)));
}
