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
/** How many heights of a name it may stand straight away from its point, each tried on all sides before the next. */
const STEPS = 24;

const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

const lies = (inner: Box, outer: Box): boolean =>
  inner.x >= outer.x &&
  inner.y >= outer.y &&
  inner.x + inner.width <= outer.x + outer.width &&
  inner.y + inner.height <= outer.y + outer.height;

/** The places for a name that lie straight away from its point, from the nearest on. */
function placesBeside({ x, y, width, height }: NamedPoint, gap: number): Box[] {
  return Array.from({ length: STEPS }, (_, step) => gap + (step * height) / 2).flatMap((away) =>
    SIDES.map(([across, up]) => ({
      x: x + across * away + (across === 0 ? -width / 2 : across < 0 ? -width : 0),
      y: y + up * away + (up === 0 ? -height / 2 : up < 0 ? -height : 0),
      width,
      height,
    })),
  );
}

/** The point of a box that is nearest to another: where a line to it ends. */
export const nearestIn = (
  { x, y, width, height }: Box,
  to: { readonly x: number; readonly y: number },
): { x: number; y: number } => ({
  x: Math.min(Math.max(to.x, x), x + width),
  y: Math.min(Math.max(to.y, y), y + height),
});

/**
 * The places for a name that lie against others above and at the left, from the nearest on. Whatever place is free can be moved up
 * and to the left until it does, so that one of these is free wherever there is room.
 */
function placesBetween(point: NamedPoint, within: Box, others: readonly Box[]): Box[] {
  const { width, height } = point;
  const corners = [within.x, ...others.map((other) => other.x + other.width)].flatMap((x) =>
    [within.y, ...others.map((other) => other.y + other.height)].map((y) => ({ x, y, width, height })),
  );
  const distance = (place: Box): number => {
    const near = nearestIn(place, point);
    return Math.hypot(near.x - point.x, near.y - point.y);
  };
  return corners.sort((a, b) => distance(a) - distance(b));
}

/**
 * Where the names of points stand: beside them and inside the chart, and none over another name or over a point. Undefined
 * for one for which there is no room left in the whole chart.
 *
 * @param gap - pixels from the middle of a point to its name at least; points are as far from names that are not theirs.
 */
export function placeNames(points: readonly NamedPoint[], within: Box, gap: number): (Box | undefined)[] {
  const marks = points.map(({ x, y }) => ({ x: x - gap, y: y - gap, width: 2 * gap, height: 2 * gap }));
  const taken: Box[] = [];
  return points.map((point) => {
    const others = [...taken, ...marks];
    const isFree = (place: Box): boolean =>
      lies(place, within) && !others.some((other) => overlap(place, other));
    const place = placesBeside(point, gap).find(isFree) ?? placesBetween(point, within, others).find(isFree);
    if (place) taken.push(place);
    return place;
  });
}
