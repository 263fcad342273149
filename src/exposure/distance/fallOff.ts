import { log2Ratio, roundStops } from '../core/numbers';
import { answer, fail, type Result } from '../core/result';

/** Share of the half-space above a surface element that a rectangle fills, the element facing one of its corners. */
function corner(a: number, b: number): number {
  const p = Math.hypot(1, a);
  const q = Math.hypot(1, b);
  return ((a / p) * Math.atan(b / p) + (b / q) * Math.atan(a / q)) / (2 * Math.PI);
}

/**
 * Light of a source of some size on its axis, up to a factor that does not depend on the distance.
 *
 * Round, evenly bright and diffuse: 1/(d² + r²). Rectangular, likewise: the configuration factor of four
 * corners of half the sides (configuration factor of an element to a rectangle, B-3 of the published catalogue).
 */
export function onAxis(distance: number, width: number, height: number | undefined): number {
  if (height === undefined) return 1 / (distance ** 2 + (width / 2) ** 2);
  return corner(width / 2 / distance, height / 2 / distance);
}

/**
 * Stops lost on the way from a near to a far distance, measured from the front of the light.
 *
 * No size: a point, 2·log2(far/near). Width alone: a round, evenly lit diffuser. Width and height: a rectangle seen from
 * its centre. A diffuser with a hot centre falls faster than an even one: nearer to the point.
 *
 * @param near - metres (above 0).
 * @param far - metres (above 0); less than `near` gains light, so that the stops are negative.
 * @param width - metres (above 0): diameter, or one side.
 * @param height - metres (above 0): the other side.
 * @returns stops.
 */
export function fallOff(near: number, far: number, width?: number, height?: number): Result<number> {
  if (width === undefined && height !== undefined)
    return fail('unreadable', 'width is missing: a height says nothing without it.');
  if (width === undefined) return answer(roundStops(2 * log2Ratio(far, near)));
  return answer(roundStops(log2Ratio(onAxis(near, width, height), onAxis(far, width, height))));
}
