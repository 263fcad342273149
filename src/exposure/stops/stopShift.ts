import { answer, fail, type Result } from '../core/result';
import { type Scale, stopsPerDoubling } from './scales';

/**
 * The value that lies a number of stops above another: the inverse of `stopDiff`.
 *
 * @param value - exact value in the scale's unit (above 0).
 * @param stops - stops up (a larger number); negative stops go down.
 * @returns value·2^(stops/2) for apertures, value·2^stops otherwise; a `domain` refusal beyond what a cell holds.
 */
export function stopShift(value: number, stops: number, scale: Scale = 'aperture'): Result<number> {
  const doublings = stops / stopsPerDoubling(scale);
  // what is out of reach in one step may still fit in two
  const half = 2 ** (doublings / 2);
  const shifted = Math.abs(doublings) < 1000 ? value * 2 ** doublings : value * half * half;
  if (shifted === 0)
    return fail(
      'domain',
      `stops must leave something over: ${stops} stops from there is nothing a cell can hold.`,
    );
  return answer(shifted);
}
