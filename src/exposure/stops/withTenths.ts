import type { Range } from '../core/range';
import { answer, type Result } from '../core/result';

/** The small figure beside a meter's full stop. */
export const TENTHS: Range = {
  least: 0,
  most: 9,
  whole: true,
  hint: 'Ten tenths are the next full stop.',
};

/**
 * The exact f-number of a reading given as a meter shows it: an aperture and tenths of a stop above it.
 *
 * @param text - exact f-number of the aperture (above 0).
 * @param tenths - tenths of a stop (a whole number, 0 to 9).
 * @returns text·2^(tenths/20).
 */
export function withTenths(text: number, tenths = 0): Result<number> {
  return answer(text * 2 ** (tenths / 20));
}
