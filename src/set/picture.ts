import { at } from '../exposure/core/at';
import type { Figure, Figures, Place2 } from './figures';
import { hatched } from './hatch';
import { type Label, nearestOf, placeLabels } from './labels';
import type { Box, DrawnView, Line, LineStyle, SetPicture, Shape, Spot } from './shapes';
import { textWidth, wrapped } from './textWidth';

/** What is written into a picture. */
export interface PictureWords {
  /** Beside each light in the plan, by its index: name first. */
  readonly beside: readonly (readonly string[])[];
  /** Below the picture, after the key of the numbers. */
  readonly notes: readonly string[];
}

export const SIZE = 12;
const LINE = 15;
const EDGE = 8;
const GAP = 14;
/** Narrower than this lights have numbers, and a wider picture has its two views side by side where that makes them larger. */
const NUMBERED_BELOW = 560;
/** More lights than this have numbers: so many names are looked for longer than numbers. */
const MOST_NAMED = 12;
/** Room around the figures of a view for labels: in words, and in numbers. */
const ROOM = { words: { x: 74, y: 30 }, numbers: { x: 26, y: 22 } } as const;
const LARGEST = { beside: 560, above: 400 } as const;
const LEAST_METRES = 0.3;
/** Pixels that each light is to have of a frame, so that its number always finds a place. */
const ROOM_A_LIGHT = 2800;
const ARROW = 14;
const HEAD = 4;
const DATUM = 26;
const NOT_MEASURED: ReadonlySet<Figure['kind']> = new Set(['facing', 'polish']);

interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

function boundsOf(figures: readonly Figure[], ...more: readonly Place2[]): Bounds {
  const all = [...more, ...figures.flatMap(({ kind, places }) => (NOT_MEASURED.has(kind) ? [] : places))];
  const [us, vs] = [all.map(({ u }) => u), all.map(({ v }) => v)];
  return { left: Math.min(...us), right: Math.max(...us), low: Math.min(...vs), high: Math.max(...vs) };
}
const wide = ({ left, right }: Bounds): number => Math.max(right - left, LEAST_METRES);
const tall = ({ low, high }: Bounds): number => Math.max(high - low, LEAST_METRES);

const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** Where the places of a view lie on paper: its figures in the middle of its frame, or so far above its lower edge. */
function ontoPaper(bounds: Bounds, frame: Box, scale: number, above?: number): (place: Place2) => Spot {
  const u = (bounds.left + bounds.right) / 2;
  const x = frame.x + frame.width / 2;
  const [v, y] =
    above === undefined
      ? [(bounds.low + bounds.high) / 2, frame.y + frame.height / 2]
      : [bounds.low, frame.y + frame.height - above];
  return (place) => [hundredth(x + (place.u - u) * scale), hundredth(y - (place.v - v) * scale)];
}

/** How large both views can be, and where their frames are below a height. */
interface Layout {
  readonly scale: number;
  readonly plan: Box;
  readonly side: Box;
}

function layOut(
  [plan, side]: readonly [Bounds, Bounds],
  width: number,
  room: { readonly x: number; readonly y: number },
  lights: number,
  titles: { readonly beside: number; readonly above: number },
): Layout {
  const inner = width - 2 * EDGE;
  const least = Math.max(170, (ROOM_A_LIGHT * lights) / inner);
  const beside = Math.min(
    (inner - GAP - 4 * room.x) / (wide(plan) + wide(side)),
    (LARGEST.beside - 2 * room.y) / Math.max(tall(plan), tall(side)),
  );
  const above = Math.min(
    (inner - 2 * room.x) / Math.max(wide(plan), wide(side)),
    (LARGEST.above - 2 * room.y) / Math.max(tall(plan), tall(side)),
  );
  if (width >= 2 * NUMBERED_BELOW - 200 && beside >= above * 0.75) {
    const height = Math.max(beside * Math.max(tall(plan), tall(side)) + 2 * room.y, 2 * least);
    const free = inner - GAP - 4 * room.x - beside * (wide(plan) + wide(side));
    const first = beside * wide(plan) + 2 * room.x + free / 2;
    const y = EDGE + titles.beside;
    return {
      scale: beside,
      plan: { x: EDGE, y, width: first, height },
      side: { x: EDGE + first + GAP, y, width: inner - GAP - first, height },
    };
  }
  const [first, second] = [plan, side].map((bounds) => Math.max(above * tall(bounds) + 2 * room.y, least));
  const y = EDGE + titles.above;
  return {
    scale: above,
    plan: { x: EDGE, y, width: inner, height: first ?? least },
    side: { x: EDGE, y: y + (first ?? least) + titles.above + GAP, width: inner, height: second ?? least },
  };
}

const STYLES: Readonly<Partial<Record<Figure['kind'], LineStyle>>> = {
  front: 'front',
  aim: 'aim',
  field: 'field',
  fieldWidth: 'fieldWidth',
  axis: 'axis',
  sensor: 'sensor',
  surface: 'surface',
  image: 'image',
  highlight: 'highlight',
  ray: 'ray',
};

const line = (style: LineStyle, spots: readonly Spot[], isClosed = false): Line => ({ kind: 'line', style, spots, isClosed }); // prettier-ignore

/** A line with a head, so long on paper as the direction is seen. */
function arrow([x, y]: Spot, [toX, toY]: Spot, pixelsAMetre: number, long: number): Line[] {
  const [dx, dy] = [toX - x, toY - y];
  const seen = Math.hypot(dx, dy);
  if (seen < 1e-6) return [];
  const full = (long * seen) / pixelsAMetre;
  const [ux, uy] = [dx / seen, dy / seen];
  const tip: Spot = [hundredth(x + ux * full), hundredth(y + uy * full)];
  const wing = (sign: number): Spot => [
    hundredth(tip[0] - HEAD * (ux + sign * uy * 0.6)),
    hundredth(tip[1] - HEAD * (uy - sign * ux * 0.6)),
  ];
  return [line('arrow', [[x, y], tip]), line('arrow', [wing(1), tip, wing(-1)])];
}

const FACING = 0.15;

function shapesOf(figure: Figure, toPaper: (place: Place2) => Spot, scale: number): Shape[] {
  const spots = figure.places.map(toPaper);
  const [first] = spots;
  if (!first) return [];
  const style = STYLES[figure.kind];
  if (figure.kind === 'facing' || figure.kind === 'polish')
    return arrow(first, at(spots, 1), FACING * scale, ARROW);
  if (figure.kind === 'lens') return [{ kind: 'dot', at: first, radius: 4, isFilled: false }];
  if (figure.kind === 'subject')
    return [
      line('mark', [[first[0] - 5, first[1] - 5], [first[0] + 5, first[1] + 5]]),
      line('mark', [[first[0] - 5, first[1] + 5], [first[0] + 5, first[1] - 5]]),
    ]; // prettier-ignore
  const hatch = figure.kind === 'highlight' ? hatched(spots).map((pair) => line('hatch', pair)) : [];
  const dots: Shape[] =
    figure.kind === 'front' || (figure.kind !== 'image' && spots.length === 1)
      ? [{ kind: 'dot', at: middle(spots), radius: 2.2, isFilled: true }]
      : spots.length === 1
        ? [{ kind: 'dot', at: first, radius: 2.2, isFilled: false }]
        : [];
  return [...hatch, ...(style && spots.length > 1 ? [line(style, spots, figure.isClosed)] : []), ...dots];
}

const middle = (spots: readonly Spot[]): Spot => [
  hundredth(spots.reduce((sum, [x]) => sum + x, 0) / spots.length),
  hundredth(spots.reduce((sum, [, y]) => sum + y, 0) / spots.length),
];

const PAD = 2;
/** Where the words of a key begin, right of its numbers. */
const BESIDE_NUMBER = 20;
/** A text whose words stay on one line. */
const unbroken = (text: string): string => text.replaceAll(' ', '\u00a0');

function labelOf(anchor: Spot, lines: readonly string[], light: number | undefined): Label {
  const width = Math.max(...lines.map((one, i) => textWidth(one, SIZE, i === 0))) + 2 * PAD;
  return { anchor, lines, width: hundredth(width), height: lines.length * LINE + PAD, light };
}

/** What of a view labels keep off, and what they keep off most of all. */
const LIGHT_LINES: ReadonlySet<LineStyle> = new Set(['aim', 'arrow', 'sensor']);
const FIRM_LINES: ReadonlySet<LineStyle> = new Set(['front', 'field', 'fieldWidth', 'surface', 'highlight']);

const segments = (shapes: readonly Shape[], of: ReadonlySet<LineStyle>): (readonly [Spot, Spot])[] =>
  shapes.flatMap((shape) => {
    if (shape.kind !== 'line' || !of.has(shape.style)) return [];
    const ends = shape.isClosed ? [...shape.spots, at(shape.spots, 0)] : shape.spots;
    return ends.slice(1).map((spot, i) => [at(ends, i), spot] as const);
  });

/** What a word of the datum takes up. */
const boxOf = (shape: Shape): Box[] =>
  shape.kind === 'words'
    ? [{ x: shape.at[0], y: shape.at[1] - SIZE, width: textWidth(shape.text, SIZE), height: LINE }]
    : [];

/** A mirror image: in the plan of a level surface it lies under its light. */
const isImage = ({ kind }: Figure): boolean => kind === 'image';

interface Drawn {
  readonly view: DrawnView;
  readonly shapes: readonly Shape[];
}

/** Draws one view into its frame; undefined where a label finds no place. */
function drawView(
  figures: readonly Figure[],
  toPaper: (place: Place2) => Spot,
  {
    frame,
    scale,
    more,
    names,
  }: {
    readonly frame: Box;
    readonly scale: number;
    readonly more: readonly Shape[];
    readonly names: (kind: Figure['kind'], light: number | undefined) => readonly string[] | undefined;
  },
): Drawn | undefined {
  const named = more.filter(({ kind }) => kind === 'words');
  const body = [
    ...more.filter(({ kind }) => kind !== 'words'),
    ...[...figures.filter(isImage), ...figures.filter((figure) => !isImage(figure))].flatMap((figure) =>
      shapesOf(figure, toPaper, scale),
    ),
  ];
  const labels = figures.flatMap((figure): Label[] => {
    const lines = names(figure.kind, figure.light);
    return lines ? [labelOf(middle(figure.places.map(toPaper)), lines, figure.light)] : [];
  });
  // the lights first: what cannot be placed then is named below the picture
  const ordered = [...labels].sort((a, b) => Number(a.light === undefined) - Number(b.light === undefined));
  const around = {
    frame: inset(frame, 2),
    lines: segments(body, LIGHT_LINES),
    firm: segments(body, FIRM_LINES),
    taken: named.flatMap(boxOf),
  };
  const lights = ordered.filter(({ light }) => light !== undefined);
  const placed = placeLabels(ordered, around) ?? placeLabels(lights, around);
  if (!placed) return undefined;
  const shapes: Shape[] = [
    ...body,
    ...placed.flatMap((label): Shape[] => {
      const [x, y] = nearestOf(label.box, label.anchor);
      return label.isApart ? [line('leader', [label.anchor, [hundredth(x), hundredth(y)]])] : [];
    }),
    ...placed.flatMap(({ box, lines }): Shape[] => [
      { kind: 'blank', box },
      ...lines.map((one, i): Shape => ({
        kind: 'words',
        at: [hundredth(box.x + PAD), hundredth(box.y + LINE * (i + 1) - 3)],
        text: one,
        size: SIZE,
        isBold: i === 0,
      })),
    ]),
    ...named.flatMap(boxOf).map((box): Shape => ({ kind: 'blank', box })),
    ...named,
    frameLine(frame),
  ];
  return { view: { frame, labels: placed }, shapes };
}

const inset = ({ x, y, width, height }: Box, by: number): Box => ({
  x: x + by,
  y: y + by,
  width: width - 2 * by,
  height: height - 2 * by,
});
const frameLine = ({ x, y, width, height }: Box): Line =>
  line('frame', [[x, y], [x + width, y], [x + width, y + height], [x, y + height]], true); // prettier-ignore

function paragraph(lines: readonly string[], x: number, y: number): Shape[] {
  return lines.map((one, i): Shape => ({
    kind: 'words',
    at: [x, y + LINE * (i + 1) - 3],
    text: one,
    size: SIZE,
    isBold: false,
  }));
}

/** A round length that is about a quarter of a width: 1, 2 or 5 and noughts. */
export function roundLength(metres: number): number {
  const ten = 10 ** Math.floor(Math.log10(metres));
  return [5, 2, 1].map((step) => step * ten).find((long) => long <= metres) ?? ten;
}

const inWords = (metres: number): string =>
  metres >= 1 ? `${Math.round(metres)} m` : `${Math.round(metres * 100)} cm`;

function scaleBar(x: number, y: number, scale: number, width: number): Shape[] {
  const metres = roundLength(width / 4 / scale);
  const long = hundredth(metres * scale);
  return [
    line('scale', [[x, y - 4], [x, y + 4], [x, y], [x + long, y], [x + long, y - 4], [x + long, y + 4]]),
    { kind: 'words', at: [x + long + 6, y + 4], text: `${inWords(metres)}, in both drawings`, size: SIZE, isBold: false },
  ]; // prettier-ignore
}

const PLAN = 'From above. The camera looks up the page: left and right are as seen from the camera.';
const SIDE = 'From the side, from the camera’s right: the camera looks to the right.';
const PLAN_ALONE = 'From above. Nothing is known of where a camera looks: y of the datum is up the page.';
const PLAN_STEEP = 'From above. The camera looks straight up or down: y of the datum is up the page.';
const SIDE_ALONE = 'From the side: y of the datum is to the right.';

/** Draws a set for a width of paper in pixels. Lights are called by name where all names find a place, else by number. */
export function pictureOf(figures: Figures, words: PictureWords, width: number): SetPicture {
  const isForWords = width >= NUMBERED_BELOW && figures.lights.length <= MOST_NAMED;
  const named = isForWords ? attempt(figures, words, width, false, 1) : undefined;
  if (named) return named;
  for (let larger = 1; ; larger *= 1.5) {
    const picture = attempt(figures, words, width, true, larger);
    if (picture) return picture;
  }
}

function attempt(
  figures: Figures,
  words: PictureWords,
  width: number,
  isNumbered: boolean,
  larger: number,
): SetPicture | undefined {
  const hasCamera = figures.plan.some(({ kind }) => kind === 'lens');
  const inner = width - 2 * EDGE;
  const titleText = !hasCamera
    ? [PLAN_ALONE, SIDE_ALONE]
    : figures.isSteep
      ? [PLAN_STEEP, SIDE_ALONE]
      : [PLAN, SIDE];
  const heightIn = (of: number): number =>
    Math.max(...titleText.map((one) => wrapped(one, of, SIZE).length)) * LINE + 4;
  const room = isNumbered ? ROOM.numbers : ROOM.words;
  const bounds = [
    boundsOf(figures.plan, figures.datum.at),
    boundsOf(figures.side, figures.datumBeside, { ...figures.datumBeside, v: 0 }),
  ] as const;
  const { scale, plan, side } = layOut(bounds, width, room, figures.lights.length * larger, {
    beside: heightIn((inner - GAP) / 3),
    above: heightIn(inner),
  });
  const names =
    (isSide: boolean) =>
    (kind: Figure['kind'], light: number | undefined): readonly string[] | undefined => {
      if (kind === 'front' && light !== undefined) {
        if (isNumbered) return [String(light + 1)];
        const lines = at(words.beside, light);
        return isSide ? lines.slice(0, 1) : lines;
      }
      if (kind === 'lens') return ['Camera'];
      if (kind === 'subject') return ['Subject'];
      return kind === 'surface' ? ['Surface'] : undefined;
    };
  const planOn = ontoPaper(bounds[0], plan, scale);
  // the floor is at the foot of the drawing, as it is in the room
  const sideOn = ontoPaper(bounds[1], side, scale, room.y);
  const above = drawView(figures.plan, planOn, { frame: plan, scale, more: datumInPlan(figures, planOn, plan), names: names(false) }); // prettier-ignore
  const beside = above && drawView(figures.side, sideOn, { frame: side, scale, more: datumBeside(figures, sideOn, side), names: names(true) }); // prettier-ignore
  if (!above || !beside) return undefined;
  const shapes: Shape[] = [...above.shapes, ...beside.shapes];
  for (const [i, frame] of [plan, side].entries()) {
    const lines = wrapped(at(titleText, i), frame.width, SIZE);
    shapes.push(...paragraph(lines, frame.x, frame.y - 4 - LINE * lines.length));
  }
  let y = Math.max(plan.y + plan.height, side.y + side.height) + 16;
  shapes.push(...scaleBar(EDGE, y, scale, inner / (plan.y === side.y ? 2 : 1)));
  y += 12;
  const write = (text: string, x: number): void => {
    const lines = wrapped(text, EDGE + inner - x, SIZE);
    shapes.push(...paragraph(lines, x, y));
    y += lines.length * LINE;
  };
  for (const { index } of isNumbered ? figures.lights : []) {
    shapes.push(...paragraph([String(index + 1)], EDGE, y));
    write(at(words.beside, index).map(unbroken).join(' · '), EDGE + BESIDE_NUMBER);
  }
  for (const note of words.notes) write(note, EDGE);
  return {
    width,
    height: hundredth(y + EDGE),
    shapes,
    plan: above.view,
    side: beside.view,
    scale,
    isNumbered,
  };
}

/** A cross with the axes of the datum, as long whatever the scale, and their names. */
function datumInPlan({ datum }: Figures, onPaper: (place: Place2) => Spot, frame: Box): Shape[] {
  const [x, y] = onPaper(datum.at);
  /** The name of an axis that ends at the edge of the drawing stands over its tip, not outside. */
  const within = (left: number, name: string): number =>
    Math.max(frame.x, Math.min(left, frame.x + frame.width - textWidth(name, SIZE)));
  const axis = (name: string, { u, v }: Place2): Shape[] => [
    ...arrow([x, y], [x + u, y - v], 1, DATUM),
    { kind: 'words', at: [hundredth(within(x + u * (DATUM + 8) - 4, name)), hundredth(y - v * (DATUM + 8) + 4)], text: name, size: SIZE, isBold: false }, // prettier-ignore
  ];
  return [
    { kind: 'dot', at: [x, y], radius: 3, isFilled: false },
    ...axis('x', datum.x),
    ...axis('y', datum.y),
  ];
}

/** The datum from the side, the way up, and the floor, from which heights count. */
function datumBeside(figures: Figures, onPaper: (place: Place2) => Spot, frame: Box): Shape[] {
  const [x, y] = onPaper(figures.datumBeside);
  const floor = onPaper({ u: 0, v: 0 })[1];
  return [
    line('level', [[frame.x, floor], [frame.x + frame.width, floor]]),
    { kind: 'dot', at: [x, y], radius: 3, isFilled: false },
    ...arrow([x, y], [x, y - 1], 1, DATUM),
  ]; // prettier-ignore
}
