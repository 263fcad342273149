import { along, axesAlong, type Axes, direction, dot, minus, type Place3 } from './space';
import type { Camera, Optics } from './setUp';

const DATUM_RIGHT: Place3 = { x: 1, y: 0, z: 0 };

/** The axes of a camera; undefined where it looks at its own place. One that looks straight up or down has the datum's x to its right. */
export function cameraAxes({ at, aim }: Camera): Axes | undefined {
  const forward = direction(minus(aim, at));
  return forward && axesAlong(forward, DATUM_RIGHT);
}

/** How much of the room's width and height is seen at one metre before the lens, measured from its axis. */
export interface Slopes {
  readonly left: number;
  readonly right: number;
  readonly down: number;
  readonly up: number;
}

/**
 * The edges of the field of view, as slopes against the lens axis: (rise ± half the height)/v and (shift ± half the width)/v,
 * since each ray through the middle of the lens goes straight on. At the distance u the field is u·w/v wide, which is w/m with
 * the magnification m = v/u of a thin lens (S. F. Ray, Applied Photographic Optics, 3rd ed., ch. 4, from memory).
 */
export function fieldSlopes({ sensorWidth, sensorHeight, draw, rise, shift }: Optics): Slopes {
  return {
    left: (shift - sensorWidth / 2) / draw,
    right: (shift + sensorWidth / 2) / draw,
    down: (rise - sensorHeight / 2) / draw,
    up: (rise + sensorHeight / 2) / draw,
  };
}

/** The corners of the field at a distance along the lens axis: bottom left, bottom right, top right, top left. */
export function fieldCorners(
  at: Place3,
  { right, up, forward }: Axes,
  slopes: Slopes,
  distance: number,
): Place3[] {
  const corner = (across: number, high: number): Place3 =>
    along(along(along(at, forward, distance), right, across * distance), up, high * distance);
  return [
    corner(slopes.left, slopes.down),
    corner(slopes.right, slopes.down),
    corner(slopes.right, slopes.up),
    corner(slopes.left, slopes.up),
  ];
}

/** A half of the room: the places whose product with the normal, less the offset, is not below 0. */
export interface HalfSpace {
  readonly normal: Place3;
  readonly offset: number;
}

/** What lies in the picture: before the lens, and between the four edges of the field. */
export function inField(at: Place3, { right, up, forward }: Axes, slopes: Slopes): HalfSpace[] {
  const through = (normal: Place3): HalfSpace => ({ normal, offset: dot(normal, at) });
  const side = (way: Place3, sign: number, slope: number): HalfSpace =>
    through(along({ x: way.x * sign, y: way.y * sign, z: way.z * sign }, forward, -sign * slope));
  return [
    through(forward),
    side(right, 1, slopes.left),
    side(right, -1, slopes.right),
    side(up, 1, slopes.down),
    side(up, -1, slopes.up),
  ];
}
