import { SLACK } from '../../core/numbers';
import { fewestPops, type Head, isNear, isTooStrong, missOf, nearestSetting, recycleAt } from './head';

/** How a head fires: on how many pops, and how many steps below full power. */
export interface Firing {
  readonly head: Head;
  readonly pops: number;
  readonly down: number;
}

export const popsOf = (firings: readonly Firing[]): number =>
  firings.reduce((most, { pops }) => Math.max(most, pops), 0);

/** Misses of the heads out of reach, the worst first. */
const beyondOf = (firings: readonly Firing[]): readonly number[] =>
  firings
    .map(({ head, pops, down }) => ({ head, miss: Math.abs(missOf(head, pops, down)) }))
    .filter(({ head, miss }) => !isNear(head, miss))
    .map(({ miss }) => miss)
    .sort((a, b) => b - a);

/** Whether misses are smaller than others, the first of them that differ by more than the slack. */
function isLess(misses: readonly number[], others: readonly number[]): boolean {
  for (const [i, other] of others.entries()) {
    const less = other - (misses[i] ?? 0);
    if (Math.abs(less) > SLACK) return less > 0;
  }
  return false;
}

/**
 * How all heads fire in the best plan, in their order, by trying every number of pops. More pops never spare a head that has
 * to be switched off: of plans that miss alike the first is the best.
 */
export function bestFirings(heads: readonly Head[], mostPops: number): readonly Firing[] {
  const fewest = new Map<Head, number>();
  const own = (head: Head): number => {
    const known = fewest.get(head) ?? fewestPops(head, mostPops);
    fewest.set(head, known);
    return known;
  };
  let best: readonly Firing[] = [];
  let least: readonly number[] | undefined;
  for (let all = 1; all <= mostPops && least?.length !== 0; all++) {
    const firings = heads.map((head): Firing => {
      const pops = head.isSwitchable && isTooStrong(head, all) ? own(head) : all;
      return { head, pops, down: nearestSetting(head, pops) };
    });
    // where all heads are switched off before, it is a plan of fewer pops, to which other rules apply
    if (popsOf(firings) < all) continue;
    const beyond = beyondOf(firings);
    if (least === undefined || isLess(beyond, least)) [best, least] = [firings, beyond];
  }
  return best;
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
