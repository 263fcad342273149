import { SLACK } from '../core/numbers';
import type { Vector } from '../core/vector';

/** Powers that are looked at before the search ends, of all heads together. */
const MOST_LOOKS = 20_000;

/** What a head may be set to, as shares of its most, the highest first; and its light at each point at its most. */
export interface Choices {
  readonly shares: Vector;
  readonly light: Vector;
}

const at = (list: Vector, i: number): number => list[i] as number;
const vectorAt = (list: readonly Vector[], i: number): Vector => list[i] as Vector;
const plus = (light: Vector, { light: more }: Choices, share: number): number[] =>
  light.map((l, p) => l + share * at(more, p));

/** For each head, the light that those after it bring when each is set to a share. */
function restOf(heads: readonly Choices[], share: (head: Choices) => number): Vector[] {
  let sum: Vector = heads[0]?.light.map(() => 0) ?? [];
  const rest: Vector[] = [];
  for (const head of [...heads].reverse()) {
    rest.unshift(sum);
    sum = plus(sum, head, share(head));
  }
  return rest;
}

/**
 * The setting of all heads with the smallest worst miss, if it is smaller than one that is known.
 *
 * Branch and bound: heads are set one after the other, and a power is looked at only where the heads still to be set can
 * bring every point closer than the best found so far. All settings are so accounted for, unless there are more than 20,000
 * such powers.
 *
 * @param known - worst miss in stops that must be bettered.
 * @returns the place of each head's power in its choices; undefined where nothing better was found.
 */
export function searchSteps(heads: readonly Choices[], known: number): readonly number[] | undefined {
  const least = restOf(heads, ({ shares }) => at(shares, shares.length - 1));
  const most = restOf(heads, ({ shares }) => at(shares, 0));
  const chosen: number[] = [];
  let worst = known;
  let found: readonly number[] | undefined;
  let looks = 0;

  /** Shares of a head between which every point can still come closer than the best. */
  function bounds(h: number, head: Choices, light: Vector): readonly [low: number, high: number] {
    const top = 2 ** (worst - SLACK);
    const [lowest, highest] = [vectorAt(least, h), vectorAt(most, h)];
    let low = 0;
    let high = Infinity;
    for (let p = 0; p < light.length; p++) {
      const room = top - at(light, p) - at(lowest, p);
      const need = 1 / top - at(light, p) - at(highest, p);
      const each = at(head.light, p);
      if (each === 0 && (room < 0 || need > 0)) return [Infinity, 0];
      if (each === 0) continue;
      high = Math.min(high, room / each);
      low = Math.max(low, need / each);
    }
    return [low, high];
  }

  function settle(h: number, light: Vector): void {
    const head = heads[h];
    if (!head) {
      worst = light.reduce((far, l) => Math.max(far, Math.abs(Math.log2(l))), 0);
      found = [...chosen];
      return;
    }
    let [low, high] = bounds(h, head, light);
    for (const [k, share] of head.shares.entries()) {
      if (share > high) continue;
      if (share < low || looks === MOST_LOOKS) return;
      looks++;
      chosen[h] = k;
      settle(h + 1, plus(light, head, share));
      [low, high] = bounds(h, head, light);
    }
  }
  settle(0, heads[0]?.light.map(() => 0) ?? []);
  return found;
}
