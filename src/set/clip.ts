import { at } from '../exposure/core/at';
import { along, dot, minus, type Place3 } from './space';
import type { HalfSpace } from './field';

/**
 * The part of a convex polygon that lies in a half of the room (Sutherland and Hodgman, Reentrant Polygon Clipping, CACM 17, 1974).
 * Its corners are in order; a single place is a polygon too.
 */
export function clipped(polygon: readonly Place3[], { normal, offset }: HalfSpace): Place3[] {
  const height = (place: Place3): number => dot(normal, place) - offset;
  return polygon.flatMap((here, i) => {
    const next = at(polygon, (i + 1) % polygon.length);
    const [from, to] = [height(here), height(next)];
    const kept = from >= 0 ? [here] : [];
    return from >= 0 === to >= 0 ? kept : [...kept, along(here, minus(next, here), from / (from - to))];
  });
}

/** The part that lies in all of them. */
export const clippedToAll = (polygon: readonly Place3[], halves: readonly HalfSpace[]): readonly Place3[] =>
  halves.reduce<readonly Place3[]>((rest, half) => clipped(rest, half), polygon);
