import { at } from '../../core/at';
import { SLACK } from '../../core/numbers';
import { fewestPops, type Head, isNear, isTooStrong, missOf, nearestSetting, recycleAt } from './head';

/** How a head fires: on how many pops, and how many steps below full power. */
export interface Firing {
  readonly head: Head;
  readonly pops: number;
  readonly down: number;
}

/** What plans are ranked by, in this order. */
interface Rank {
  /** Misses of the heads out of reach, the worst first. */
  readonly beyond: readonly number[];
  /** Heads that are switched off before the last pop. */
  readonly off: number;
  readonly pops: number;
  readonly worst: number;
  readonly sum: number;
}

export const popsOf = (firings: readonly Firing[]): number =>
  firings.reduce((most, { pops }) => Math.max(most, pops), 0);

function rankOf(firings: readonly Firing[]): Rank {
  const pops = popsOf(firings);
  const misses = firings.map(({ head, pops: own, down }) => Math.abs(missOf(head, own, down)));
  return {
    beyond: misses.filter((miss, i) => !isNear(at(firings, i).head, miss)).sort((a, b) => b - a),
    off: firings.filter((firing) => firing.pops < pops).length,
    pops,
    worst: misses.reduce((a, b) => Math.max(a, b), 0),
    sum: misses.reduce((a, b) => a + b, 0),
  };
}

/** Below 0 where a ranks before b. Misses are equal within the slack. */
function compare(a: Rank, b: Rank): number {
  const differ = (x: number, y: number): number => (Math.abs(x - y) <= SLACK ? 0 : x - y);
  for (let i = 0; i < Math.max(a.beyond.length, b.beyond.length); i++) {
    const first = differ(a.beyond[i] ?? 0, b.beyond[i] ?? 0);
    if (first !== 0) return first;
  }
  return a.off - b.off || a.pops - b.pops || differ(a.worst, b.worst) || differ(a.sum, b.sum);
}

/** How all heads fire in the best plan, in their order, by trying every number of pops. */
export function bestFirings(heads: readonly Head[], mostPops: number): readonly Firing[] {
  const fewest = new Map<Head, number>();
  const own = (head: Head): number => {
    const known = fewest.get(head) ?? fewestPops(head, mostPops);
    fewest.set(head, known);
    return known;
  };
  let best: { readonly firings: readonly Firing[]; readonly rank: Rank } | undefined;
  for (let all = 1; all <= mostPops; all++) {
    const firings = heads.map((head): Firing => {
      const pops = head.isSwitchable && isTooStrong(head, all) ? own(head) : all;
      return { head, pops, down: nearestSetting(head, pops) };
    });
    // where all heads are switched off before, it is a plan of fewer pops, to which other rules apply
    if (popsOf(firings) < all) continue;
    const rank = rankOf(firings);
    if (best === undefined || compare(rank, best.rank) < 0) best = { firings, rank };
    // nothing ranks before a plan in reach without heads to switch off but one with fewer pops
    if (best.rank.beyond.length === 0 && best.rank.off === 0) break;
  }
  return best?.firings ?? [];
}

/**
 * Seconds that the pops take: each takes the longest of the pause and the recycling of the heads that fire on it.
 *
 * @returns until the next frame can start, and from the first pop to the last.
 */
export function secondsOf(
  firings: readonly Firing[],
  pause: number,
): { readonly ready: number; readonly open: number } {
  const byPops = [...firings].sort((a, b) => b.pops - a.pops);
  let slowest = pause;
  let ready = 0;
  let last = 0;
  for (const [i, { head, pops, down }] of byPops.entries()) {
    slowest = Math.max(slowest, recycleAt(head, down));
    const next = byPops[i + 1]?.pops ?? 0;
    if (last === 0 && next < pops) last = slowest;
    ready += (pops - next) * slowest;
  }
  return { ready, open: Math.max(0, ready - last) };
}
