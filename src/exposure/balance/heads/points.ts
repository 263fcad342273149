import { at } from '../../core/at';
import type { Vector } from '../../core/vector';

/** What is wanted of a point: to read its target, that much or more, that much or less; or nothing. */
export type PointKind = 'equal' | 'at least' | 'at most' | 'ignore';
export const POINT_KINDS: readonly PointKind[] = ['equal', 'at least', 'at most', 'ignore'];

/** Stops by which a point is off what is wanted of it, with their sign; 0 where it may read what it reads. */
export function missOfKind(stops: number, kind: PointKind): number {
  if (kind === 'ignore' || (kind === 'at least' && stops > 0) || (kind === 'at most' && stops < 0)) return 0;
  return stops;
}

/** The points that count, in numbers of about 1: light as a share of what is wanted at each. */
export interface Wanted {
  /** Point × head: light of the head as it was metered. */
  readonly reach: readonly Vector[];
  /** Light at each point that no head brings. */
  readonly fixed: Vector;
  /** Stops that each point may read under and over its target; Infinity where that way anything goes. */
  readonly under: Vector;
  readonly over: Vector;
}

/** Stops by which a point lies beyond what it may. */
export function beyond({ under, over }: Wanted, point: number, light: number): number {
  const stops = Math.log2(light);
  const allowed = stops > 0 ? at(over, point) : at(under, point);
  // no light at all is infinitely far under, and infinitely far may be allowed
  return allowed === Infinity ? 0 : Math.max(0, Math.abs(stops) - allowed);
}

/** The most of it over the points. */
export const excessOf = (wanted: Wanted, light: Vector): number =>
  light.reduce((most, l, p) => Math.max(most, beyond(wanted, p, l)), 0);

/** Light at each point for the light of each head as a multiple of what it was metered at. */
export const lightOf = ({ reach, fixed }: Wanted, factors: Vector): number[] =>
  reach.map((row, p) => row.reduce((sum, a, h) => sum + a * at(factors, h), at(fixed, p)));
