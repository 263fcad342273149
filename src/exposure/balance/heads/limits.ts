import { at } from '../../core/at';
import { ceilSteady } from '../../core/numbers';
import { isFail, type Result } from '../../core/result';
import { excessOf, lightOf, type Wanted } from './points';
import { leastExcess, relaxed } from './relaxed';
import { factorsAt, type Places, type Settings } from './search';
import type { Head } from './settings';

/** An end that a head stands at, and what would come of it if it could go on. */
export interface Limit {
  readonly head: number;
  readonly at: 'most' | 'least' | 'locked';
  /** Stops of light more (+) or less (−) that it would take. */
  readonly stops: number;
  /** Pops at its most power that would bring as much; undefined where less light is wanted. */
  readonly pops: number | undefined;
  /** Stops by which the worst point would come nearer. */
  readonly gains: number;
}

/** An end is told of from this gain on, in stops: less, no meter shows. */
const WORTH = 0.05;
/** How far a head is let go on: seven stops. */
const FAR = 2 ** 7;
/** What is given up of the gain, so that the head need not go to the very end of it. */
const SPARE = 0.01;

/** Which ends keep the points from coming nearer, each by itself, the one that keeps them most first. */
export function limitsOf(
  wanted: Wanted,
  settings: Settings,
  heads: readonly Head[],
  places: Places,
  excess: number,
): Result<Limit[]> {
  const found: Limit[] = [];
  if (excess <= WORTH) return found;
  const factors = factorsAt(settings, places);
  const low = settings.map((list) => at(list, 0).factor);
  const high = settings.map((list) => at(list, list.length - 1).factor);
  // what the heads could do between their settings is the measure: a step alone binds no head
  const bound = leastExcess(wanted, { low, high }, factors);
  if (isFail(bound)) return bound;
  for (const [h, head] of heads.entries()) {
    const now = at(factors, h);
    if (now <= 0) continue;
    const free = (list: readonly number[], to: number): number[] => list.map((x, i) => (i === h ? to : x));
    const isAtMost = now >= at(high, h) * (1 - 1e-9);
    const isAtLeast = now <= at(low, h) * (1 + 1e-9);
    for (const way of ['more', 'less'] as const) {
      if (way === 'more' ? !isAtMost : !isAtLeast) continue;
      const box = way === 'more' ? { low, high: free(high, now * FAR) } : { low: free(low, now / FAR), high };
      const least = leastExcess(wanted, box, factors);
      if (isFail(least)) return least;
      const gains = bound.bound - least.bound;
      if (gains < WORTH) continue;
      const price = heads.map((_, i) => (i === h ? (way === 'more' ? 1 : -1) : 0));
      const best = relaxed(wanted, box, least.bound + SPARE, price);
      if (isFail(best)) return best;
      const to = best ? at(best, h) : at(least.factors, h);
      const stops = Math.log2(to / now);
      const most = (head.most * head.mostPops) / head.metered;
      found.push({
        head: h,
        at: head.isLocked ? 'locked' : way === 'more' ? 'most' : 'least',
        stops,
        pops: way === 'more' ? ceilSteady((to / most) * head.mostPops) : undefined,
        gains: Math.min(gains, excess - excessOf(wanted, lightOf(wanted, least.factors))),
      });
    }
  }
  return found.filter(({ gains }) => gains >= WORTH).sort((a, b) => b.gains - a.gains);
}
