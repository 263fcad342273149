/** A rectangle, in pixels, from its left top corner. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
/** A point of a chart, and how large its name is. */
export interface NamedPoint {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Sides of a point on which its name may stand, the usual one first: where its middle lies from the point. */
const SIDES = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
] as const;
/** How many heights of a name it may stand away from its point, each tried on all sides before the next. */
const STEPS = 24;

const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

const lies = (inner: Box, outer: Box): boolean =>
  inner.x >= outer.x &&
  inner.y >= outer.y &&
  inner.x + inner.width <= outer.x + outer.width &&
  inner.y + inner.height <= outer.y + outer.height;

/** All places for a name, from the nearest on. */
function* placesFor({ x, y, width, height }: NamedPoint, gap: number): Generator<Box> {
  for (let step = 0; step < STEPS; step++) {
    const away = gap + (step * height) / 2;
    for (const [across, up] of SIDES)
      yield {
        x: x + across * away + (across === 0 ? -width / 2 : across < 0 ? -width : 0),
        y: y + up * away + (up === 0 ? -height / 2 : up < 0 ? -height : 0),
        width,
        height,
      };
  }
}

/**
 * Where the names of points stand: beside them and inside the chart, and none over another name or over a point. Undefined
 * for one that has no room anywhere near its point.
 *
 * @param gap - pixels from the middle of a point to its name at least; points are as far from names that are not theirs.
 */
export function placeNames(points: readonly NamedPoint[], within: Box, gap: number): (Box | undefined)[] {
  const marks = points.map(({ x, y }) => ({ x: x - gap, y: y - gap, width: 2 * gap, height: 2 * gap }));
  const taken: Box[] = [];
  return points.map((point) => {
    for (const place of placesFor(point, gap)) {
      const isFree = lies(place, within) && ![...taken, ...marks].some((other) => overlap(place, other));
      if (!isFree) continue;
      taken.push(place);
      return place;
    }
    return undefined;
  });
}

/** The point of a box that is nearest to another: where a line to it ends. */
export const nearestIn = (
  { x, y, width, height }: Box,
  to: { readonly x: number; readonly y: number },
): { x: number; y: number } => ({
  x: Math.min(Math.max(to.x, x), x + width),
  y: Math.min(Math.max(to.y, y), y + height),
});
