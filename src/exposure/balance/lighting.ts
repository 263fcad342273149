import type { Vector } from '../core/vector';

/**
 * Heads and points in numbers of about 1: powers as shares of each head's most, light as shares of what is wanted at each
 * point.
 */
export interface Lighting {
  /** Point × head: light that the head brings at its most, as a share of the light wanted at the point. */
  readonly reach: readonly Vector[];
  /** Powers now, and the least, as shares of the most. */
  readonly now: Vector;
  readonly least: Vector;
  readonly mayGoOff: readonly boolean[];
}

/** How far a solution may be from the best and count as good as it, in stops: far below what a meter shows. */
export const AS_GOOD = 0.005;

const at = (list: Vector, i: number): number => list[i] as number;

/** Share of the light wanted that each point gets. */
export const lightAtPoints = (reach: readonly Vector[], shares: Vector): number[] =>
  reach.map((row) => row.reduce((sum, a, h) => sum + a * at(shares, h), 0));

/** Worst miss over the points, in stops. */
export const worstMiss = (reach: readonly Vector[], shares: Vector): number =>
  lightAtPoints(reach, shares).reduce((worst, light) => Math.max(worst, Math.abs(Math.log2(light))), 0);

/** Largest change of a head from the present, in stops, and the sum of all. Heads that went off do not count. */
export function changes(now: Vector, shares: Vector): { largest: number; sum: number } {
  let largest = 0;
  let sum = 0;
  for (const [h, share] of shares.entries()) {
    if (share === 0) continue;
    const stops = Math.abs(Math.log2(share / at(now, h)));
    largest = Math.max(largest, stops);
    sum += stops;
  }
  return { largest, sum };
}
