import { at } from '../exposure/core/at';
import type { Box, PlacedLabel, Spot } from './shapes';

/** A label that looks for a place. */
export interface Label {
  readonly anchor: Spot;
  readonly lines: readonly string[];
  readonly width: number;
  readonly height: number;
  readonly light: number | undefined;
}

type Segment = readonly [Spot, Spot];

/** Farther from its anchor than this a label has a leader. */
const APART = 10;
const RINGS = [5, 12, 22, 36, 45, 54, 66, 78, 110, 150] as const;
const WAYS = 16;
/** Steps of the last search, over the whole frame. */
const STEP = 4;
/** What it costs to lie on a line, in pixels of distance; on a firm one; and on another leader, or to lead across another label. */
const ON_LINE = 12;
const ON_FIRM = 64;
const ON_LEADER = 60;
const ON_ANCHOR = 45;
/** Within so many pixels of another mark, and nearer to it than to its own, a label would be read as the name of that one. */
const BESIDE = 26;
const BESIDE_ANOTHER = 50;

export const overlaps = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

export const isInside = (box: Box, frame: Box): boolean =>
  box.x >= frame.x &&
  box.y >= frame.y &&
  box.x + box.width <= frame.x + frame.width &&
  box.y + box.height <= frame.y + frame.height;

/** The spot of a box that is nearest to another spot. */
export function nearestOf({ x, y, width, height }: Box, [toX, toY]: Spot): Spot {
  return [Math.max(x, Math.min(toX, x + width)), Math.max(y, Math.min(toY, y + height))];
}

const gapOf = (box: Box, anchor: Spot): number => {
  const [x, y] = nearestOf(box, anchor);
  return Math.hypot(x - anchor[0], y - anchor[1]);
};

/** Whether a line goes through a box: cut to the box edge by edge, something of it is left (Liang and Barsky, 1984, from memory). */
export function crosses(box: Box, [[x1, y1], [x2, y2]]: Segment): boolean {
  let [from, to] = [0, 1];
  for (const [start, way, least, most] of [
    [x1, x2 - x1, box.x, box.x + box.width],
    [y1, y2 - y1, box.y, box.y + box.height],
  ] as const) {
    if (way === 0) {
      if (start <= least || start >= most) return false;
      continue;
    }
    const [a, b] = [(least - start) / way, (most - start) / way];
    from = Math.max(from, Math.min(a, b));
    to = Math.min(to, Math.max(a, b));
  }
  return from < to;
}

const hundredth = (value: number): number => Math.round(value * 100) / 100;

function around({ anchor: [x, y], width, height }: Label): Box[] {
  return RINGS.flatMap((ring) =>
    Array.from({ length: WAYS }, (_, i): Box => {
      const angle = (2 * Math.PI * i) / WAYS;
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      return {
        x: hundredth(x + cos * (ring + width / 2) - width / 2),
        y: hundredth(y + sin * (ring + height / 2) - height / 2),
        width,
        height,
      };
    }),
  );
}

function everywhere({ width, height }: Label, frame: Box): Box[] {
  const boxes: Box[] = [];
  for (let y = frame.y; y + height <= frame.y + frame.height; y += STEP)
    for (let x = frame.x; x + width <= frame.x + frame.width; x += STEP) boxes.push({ x, y, width, height });
  return boxes;
}

/** What is to be kept clear, where that can be. */
export interface Around {
  readonly frame: Box;
  readonly lines: readonly Segment[];
  /** The outlines that a picture is looked at for: a label over one cuts it in two. */
  readonly firm: readonly Segment[];
  /** What no label may lie over. */
  readonly taken: readonly Box[];
}

/**
 * Gives each label a place inside the frame where it lies over no other, near what it names and off the lines where that can be;
 * undefined where one finds no place. The earlier ones choose first.
 */
export function placeLabels(
  labels: readonly Label[],
  { frame, lines, firm, taken }: Around,
): PlacedLabel[] | undefined {
  const placed: PlacedLabel[] = [];
  const leaders: Segment[] = [];
  const anchors = labels.map(({ anchor }) => anchor);
  for (const label of labels) {
    const isFree = (box: Box): boolean =>
      isInside(box, frame) &&
      !taken.some((other) => overlaps(box, other)) &&
      !placed.some((other) => overlaps(box, other.box));
    const cost = (box: Box): number => {
      const gap = gapOf(box, label.anchor);
      const leader: Segment = [label.anchor, nearestOf(box, label.anchor)];
      const isBeside = (other: Spot): boolean => gapOf(box, other) < Math.min(BESIDE, gap - 1);
      const isOn = ([x, y]: Spot): boolean => overlaps(box, { x: x - 3, y: y - 3, width: 6, height: 6 });
      return (
        gap +
        ON_LINE * lines.filter((line) => crosses(box, line)).length +
        ON_FIRM * firm.filter((line) => crosses(box, line)).length +
        ON_ANCHOR * anchors.filter(isOn).length +
        BESIDE_ANOTHER * anchors.filter(isBeside).length +
        ON_LEADER * leaders.filter((line) => crosses(box, line)).length +
        (gap > APART ? ON_LEADER * placed.filter((other) => crosses(other.box, leader)).length : 0)
      );
    };
    const near = around(label).filter(isFree);
    const free = near.length > 0 ? near : everywhere(label, frame).filter(isFree);
    if (free.length === 0) return undefined;
    const costs = free.map(cost);
    const best = at(free, costs.indexOf(Math.min(...costs)));
    const isApart = gapOf(best, label.anchor) > APART;
    if (isApart) leaders.push([label.anchor, nearestOf(best, label.anchor)]);
    placed.push({ box: best, lines: label.lines, light: label.light, anchor: label.anchor, isApart });
  }
  return placed;
}
