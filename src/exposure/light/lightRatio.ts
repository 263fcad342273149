import { answer, type Result } from '../core/result';

/** `sum`: key and fill together against the fill. `each`: one reading against the other. */
export type RatioBasis = 'sum' | 'each';
export const RATIO_BASES: readonly RatioBasis[] = ['sum', 'each'];

/**
 * The x of an x:1 lighting ratio, from key and fill metered each alone.
 *
 * `sum` (common practice): the fill reaches both sides of the subject, so the lit side gets both: (K²+F²)/F².
 * `each`: K²/F², also for readings of the lit and the shadow side taken with all lights on.
 *
 * @param key - f-number of the key light alone (above 0).
 * @param fill - f-number of the fill light alone (above 0).
 * @returns x; f/11 and f/8 give 3 by `sum`, 2 by `each`.
 */
export function lightRatio(key: number, fill: number, basis: RatioBasis = 'sum'): Result<number> {
  return answer((key / fill) ** 2 + (basis === 'sum' ? 1 : 0));
}
