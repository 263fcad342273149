/** A place or a direction in the room: along x and y as measured from the datum, and its height; metres. */
export interface Place3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Less than this is no length: a hair's breadth. Metres. */
export const NO_LENGTH = 1e-4;

export const minus = (a: Place3, b: Place3): Place3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
export const dot = (a: Place3, b: Place3): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const length = (a: Place3): number => Math.hypot(a.x, a.y, a.z);

/** From a place so many lengths along a direction. */
export const along = (from: Place3, way: Place3, by: number): Place3 => ({
  x: from.x + way.x * by,
  y: from.y + way.y * by,
  z: from.z + way.z * by,
});

export const cross = (a: Place3, b: Place3): Place3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});

/** The direction of a vector, one long; undefined where it has none. */
export function direction(a: Place3): Place3 | undefined {
  const long = length(a);
  return long < NO_LENGTH ? undefined : { x: a.x / long, y: a.y / long, z: a.z / long };
}

export const UP: Place3 = { x: 0, y: 0, z: 1 };

/** Directions at right angles: to the right, upwards and forwards of something that looks forwards. */
export interface Axes {
  readonly right: Place3;
  readonly up: Place3;
  readonly forward: Place3;
}

/** Less than this of a direction is level: it looks straight up or down. About a twentieth of a degree. */
const LEVEL = 1e-3;

/**
 * The axes of what looks along a direction and is not rolled: its right is level. Where it looks straight up or down, its right
 * is the one that is told.
 */
export function axesAlong(forward: Place3, rightIfSteep: Place3): Axes {
  const level = Math.hypot(forward.x, forward.y);
  const right = level < LEVEL ? rightIfSteep : { x: forward.y / level, y: -forward.x / level, z: 0 };
  return { right, up: cross(right, forward), forward };
}
