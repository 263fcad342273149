import { at } from '../../core/at';
import { SLACK } from '../../core/numbers';
import type { MeteredPoint } from './bands';

/** Two readings that are rounded by half a tenth each, at two points: so much may part lights that are alike. */
const ALIKE = 0.2;

/**
 * Heads whose light falls alike on all points, as far as readings can tell: turning one is as good as turning the other.
 * With one point all heads are alike, which says nothing.
 *
 * @returns pairs of places of heads, the lower first.
 */
export function alikeHeads(points: readonly MeteredPoint[]): (readonly [one: number, other: number])[] {
  const counted = points.filter(({ kind }) => kind !== 'ignore');
  const count = counted[0]?.heads.length ?? 0;
  const pairs: (readonly [number, number])[] = [];
  if (counted.length < 2) return pairs;
  for (let one = 0; one < count; one++)
    for (let other = one + 1; other < count; other++) {
      // where neither brings light nothing parts them
      const lit = counted.filter(({ heads }) => at(heads, one).likely > 0 || at(heads, other).likely > 0);
      const apart = lit.map(({ heads }) => Math.log2(at(heads, one).likely / at(heads, other).likely));
      if (Math.max(...apart) - Math.min(...apart) <= ALIKE + SLACK) pairs.push([one, other]);
    }
  return pairs;
}
