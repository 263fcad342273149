import { at } from '../exposure/core/at';
import { clipped, clippedToAll } from './clip';
import { type HalfSpace, inField, type Slopes } from './field';
import { frontAxes, frontCorners, type PlacedLight } from './front';
import { along, type Axes, cross, dot, minus, NO_LENGTH, type Place3 } from './space';
import type { Surface } from './setUp';

/** A surface where it is: its width and height as directions, and the side that is polished. */
export interface Mirror {
  readonly at: Place3;
  readonly across: Place3;
  readonly down: Place3;
  readonly normal: Place3;
  readonly width: number;
  readonly height: number;
}

const RADIANS = Math.PI / 180;

function turned({ x, y, z }: Place3, tilt: Place3): Place3 {
  const spin = (a: number, b: number, degrees: number): [number, number] => {
    const [cos, sin] = [Math.cos(degrees * RADIANS), Math.sin(degrees * RADIANS)];
    return [a * cos - b * sin, a * sin + b * cos];
  };
  const [y1, z1] = spin(y, z, tilt.x);
  const [z2, x2] = spin(z1, x, tilt.y);
  const [x3, y3] = spin(x2, y1, tilt.z);
  return { x: x3, y: y3, z: z2 };
}

export function mirrorOf({ at: middle, width, height, tilt }: Surface): Mirror {
  const across = turned({ x: 1, y: 0, z: 0 }, tilt);
  const down = turned({ x: 0, y: 1, z: 0 }, tilt);
  return { at: middle, across, down, normal: cross(across, down), width, height };
}

/** How far a place stands before the polished side; below 0 behind it. */
export const before = ({ at: middle, normal }: Pick<Mirror, 'at' | 'normal'>, place: Place3): number =>
  dot(minus(place, middle), normal);

/** The mirror image of a place: as far behind the plane as it stands before it. */
export const mirrored = (mirror: Pick<Mirror, 'at' | 'normal'>, place: Place3): Place3 =>
  along(place, mirror.normal, -2 * before(mirror, place));

export function outline({ at: middle, across, down, width, height }: Mirror): Place3[] {
  const corner = (a: number, b: number): Place3 =>
    along(along(middle, across, (a * width) / 2), down, (b * height) / 2);
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
}

/** What lies above the outline: four planes that stand on its edges. */
function within({ at: middle, across, down, width, height }: Mirror): HalfSpace[] {
  const edge = (way: Place3, sign: number, half: number): HalfSpace => {
    const normal = { x: way.x * sign, y: way.y * sign, z: way.z * sign };
    return { normal, offset: dot(normal, middle) - half };
  };
  return [
    edge(across, 1, width / 2),
    edge(across, -1, width / 2),
    edge(down, 1, height / 2),
    edge(down, -1, height / 2),
  ];
}

/** What a lens sees of a light in a surface. */
export type Seen =
  /** Where its front is reflected: a polygon on the surface, within its outline and the picture. */
  | { readonly highlight: readonly Place3[] }
  /** Why there is none. */
  | { readonly none: 'light behind' | 'lens behind' | 'lens in the plane' | 'shows its back' | 'misses' };

/** The lens that looks at a surface. Without a field, all that is before it counts as in the picture. */
export interface Looking {
  readonly at: Place3;
  readonly axes: Axes;
  readonly slopes: Slopes | undefined;
}

const behindField = ({ at: lens, axes: { forward } }: Looking): HalfSpace[] => [
  { normal: forward, offset: dot(forward, lens) },
];

/**
 * Where the lines from a lens to the mirrored front of a light cross the surface. In this place an ideal mirror shows the front: the
 * angles of the two rays against the surface are alike (law of reflection; Hecht, Optics, 5th ed., ch. 4, from memory). What
 * stands between them is not known.
 */
export function seenIn(mirror: Mirror, light: PlacedLight, lens: Looking, rightIfSteep: Place3): Seen {
  const lensBefore = before(mirror, lens.at);
  if (Math.abs(lensBefore) < NO_LENGTH) return { none: 'lens in the plane' };
  if (lensBefore < 0) return { none: 'lens behind' };
  const half: HalfSpace = { normal: mirror.normal, offset: dot(mirror.normal, mirror.at) + NO_LENGTH };
  const shown = clipped(frontCorners(light, rightIfSteep), half);
  if (shown.length === 0) return { none: 'light behind' };
  const facing = frontAxes(light, rightIfSteep);
  if (facing && dot(minus(mirrored(mirror, lens.at), light.at), facing.forward) <= 0)
    return { none: 'shows its back' };
  const crossing = shown.map((corner): Place3 => {
    const image = mirrored(mirror, corner);
    return along(lens.at, minus(image, lens.at), lensBefore / (lensBefore + before(mirror, corner)));
  });
  const field = lens.slopes ? inField(lens.at, lens.axes, lens.slopes) : behindField(lens);
  const highlight = clippedToAll(crossing, [...within(mirror), ...field]);
  return highlight.length === 0 ? { none: 'misses' } : { highlight };
}

/** The middle of a polygon's corners. */
export function middleOf(polygon: readonly Place3[]): Place3 {
  const sum = polygon.reduce((total, corner) => along(total, corner, 1));
  const first = at(polygon, 0);
  return polygon.length === 1
    ? first
    : { x: sum.x / polygon.length, y: sum.y / polygon.length, z: sum.z / polygon.length };
}
