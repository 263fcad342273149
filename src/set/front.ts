import { along, axesAlong, type Axes, direction, minus, type Place3 } from './space';
import type { Light } from './setUp';

/** A light that has a place. */
export type PlacedLight = Light & { readonly at: Place3 };

/** Where a front is turned to; undefined where its aim is its own place, or not known. */
export function frontAxes({ at, aim }: PlacedLight, rightIfSteep: Place3): Axes | undefined {
  const forward = aim && direction(minus(aim, at));
  return forward && axesAlong(forward, rightIfSteep);
}

/**
 * The corners of a front around its centre, at right angles to its aim; the centre alone where its width or aim is not known. One
 * that has no height of its own is as high as wide.
 *
 * @param rightIfSteep - where its width lies if it is aimed straight down or up.
 */
export function frontCorners(light: PlacedLight, rightIfSteep: Place3): readonly Place3[] {
  const axes = frontAxes(light, rightIfSteep);
  const { at, width, height = width } = light;
  if (!axes || width === undefined || height === undefined || width <= 0 || height <= 0) return [at];
  const corner = (across: number, high: number): Place3 =>
    along(along(at, axes.right, (across * width) / 2), axes.up, (high * height) / 2);
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
}
