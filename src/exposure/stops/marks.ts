import { at } from '../core/at';
import { SLACK } from '../core/numbers';
import { type Fail, fail, type Result } from '../core/result';
import { type Scale, stopsPerDoubling } from './scales';

/** Scales whose rings and displays carry marked, rounded figures. */
export type MarkedScale = Extract<Scale, 'aperture' | 'time' | 'iso'>;
export type Division = 'third' | 'half' | 'full';
export const DIVISIONS: readonly Division[] = ['third', 'half', 'full'];
/** Which of the two marks beside a value is taken: the nearer, or the one with the higher or lower number behind it. */
export type Direction = 'nearest' | 'up' | 'down';
export const DIRECTIONS: readonly Direction[] = ['nearest', 'up', 'down'];

/** A figure as marked, and the number of divisions from the scale's origin that it stands for. */
export interface Mark {
  readonly marked: number;
  readonly step: number;
}

const STEPS: Readonly<Record<Division, number>> = { third: 3, half: 2, full: 1 };
const ORIGIN: Readonly<Record<MarkedScale, number>> = { aperture: 1, time: 1, iso: 100 };

/**
 * The exact value behind a step: 2^(step/2) f-numbers a stop, doublings a stop for times and speeds. Whole doublings are
 * taken apart, so that a full stop is exact and every other mark is the nearest double.
 */
function valueAt(scale: MarkedScale, step: number, perStop: number): number {
  const perDoubling = perStop * stopsPerDoubling(scale);
  const doublings = Math.floor(step / perDoubling);
  return ORIGIN[scale] * 2 ** doublings * 2 ** ((step - doublings * perDoubling) / perDoubling);
}

const run = (first: number, figures: readonly number[]): Mark[] =>
  figures.map((marked, i) => ({ marked, step: first + i }));
const fractions = (...below: readonly number[]): number[] => below.map((n) => 1 / n);

/* prettier-ignore */
const SERIES: Readonly<Record<MarkedScale, Readonly<Record<'third' | 'half', readonly Mark[]>>>> = {
  aperture: {
    third: [{ marked: 0.5, step: -6 }, ...run(-3, [0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10, 11, 13, 14,
      16, 18, 20, 22, 25, 29, 32, 36, 40, 45, 51, 57, 64, 72, 80, 90, 102, 114, 128])],
    half: [{ marked: 0.5, step: -4 }, ...run(-2, [0.7, 0.8, 1, 1.2, 1.4, 1.7, 2, 2.4, 2.8, 3.3, 4, 4.8, 5.6, 6.7, 8, 9.5, 11, 13, 16, 19, 22, 27, 32, 38, 45, 54, 64, 76, 90, 107, 128])],
  },
  time: {
    third: run(-45, [...fractions(32000, 25000, 20000, 16000, 12800, 10000, 8000, 6400, 5000, 4000, 3200, 2500, 2000, 1600, 1250, 1000, 800, 640, 500, 400, 320, 250, 200, 160, 125, 100, 80,
      60, 50, 40, 30, 25, 20, 15, 13, 10, 8, 6, 5, 4), 0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.3, 1.6, 2, 2.5, 3.2, 4, 5, 6, 8, 10, 13, 15, 20, 25, 30]),
    half: run(-26, [...fractions(8000, 6000, 4000, 3000, 2000, 1500, 1000, 750, 500, 350, 250, 180, 125, 90, 60, 45, 30, 20, 15, 10, 8, 6, 4, 3, 2), 0.7, 1, 1.5, 2, 3, 4, 6, 8, 10, 15, 20, 30]),
  },
  iso: {
    third: run(-15, [3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 64, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400, 8000,
      10000, 12800, 16000, 20000, 25600, 32000, 40000, 51200, 64000, 80000, 102400]),
    half: run(-2, [50, 70, 100, 140, 200, 280, 400, 560, 800, 1100, 1600, 2200, 3200, 4500, 6400, 9000, 12800]),
  },
};

/** Other figures that displays use for a third-stop mark; they are read, never written. */
/* prettier-ignore */
const ALIASES: Readonly<Record<MarkedScale, readonly Mark[]>> = {
  aperture: [],
  time: [{ marked: 1 / 3, step: -5 }, { marked: 1 / 2.5, step: -4 }, { marked: 1 / 1.6, step: -2 }, { marked: 1 / 1.3, step: -1 }],
  iso: [{ marked: 12500, step: 21 }, { marked: 25000, step: 24 }, { marked: 50000, step: 27 }, { marked: 100000, step: 30 }],
};

const fullStops = (scale: MarkedScale): readonly Mark[] =>
  SERIES[scale].third.filter((m) => m.step % 3 === 0).map((m) => ({ marked: m.marked, step: m.step / 3 }));

const FULL: Readonly<Record<MarkedScale, readonly Mark[]>> = {
  aperture: fullStops('aperture'),
  time: fullStops('time'),
  iso: fullStops('iso'),
};

/** The marks of a scale at a division, in rising order. Full stops are every third of the third-stop series. */
export const marks = (scale: MarkedScale, division: Division): readonly Mark[] =>
  division === 'full' ? FULL[scale] : SERIES[scale][division];

/**
 * Marked figures beside their exact values. The first bits of a number lead to the only mark that it can be, as marks lie
 * farther apart than numbers that share these bits.
 */
export interface Ladder {
  readonly marked: Float64Array;
  /** The figures that are written for these: their own, but where displays use another. */
  readonly written: Float64Array;
  readonly exact: Float64Array;
  /** Place of the mark for each key from `first` up; -1 where there is none. */
  readonly places: Int16Array;
  readonly first: number;
}

const single = new Float32Array(1);
const bits = new Int32Array(single.buffer);

/** Sign, exponent and the first seven bits of the fraction: numbers of one key differ by less than 1 %, marks by 2 % or more. */
function keyOf(value: number): number {
  single[0] = value;
  return (bits[0] as number) >> 16;
}

function ladder(scale: MarkedScale, entries: readonly (readonly [Mark, number])[]): Ladder {
  const rows = entries
    .map(([{ marked, step }, perStop]) => {
      // the series stands first, and figures that are only read behind it
      const written = entries.find(([mark, division]) => division === perStop && mark.step === step);
      return [marked, valueAt(scale, step, perStop), written?.[0].marked ?? marked] as const;
    })
    .sort((a, b) => a[0] - b[0]);
  const lowKey = (marked: number): number => keyOf(marked * (1 - 2 * SLACK));
  const highKey = (marked: number): number => keyOf(marked * (1 + 2 * SLACK));
  const marked = Float64Array.from(rows, (r) => r[0]);
  const first = lowKey(at(marked, 0));
  const places = new Int16Array(highKey(at(marked, marked.length - 1)) - first + 1).fill(-1);
  for (const [place, mark] of marked.entries())
    places.fill(place, lowKey(mark) - first, highKey(mark) - first + 1);
  return {
    marked,
    written: Float64Array.from(rows, (r) => r[2]),
    exact: Float64Array.from(rows, (r) => r[1]),
    places,
    first,
  };
}

function ladderFor(scale: MarkedScale): { both: Ladder; half: Ladder } {
  const third = [...SERIES[scale].third, ...ALIASES[scale]];
  const taken = (m: Mark): boolean => third.some((t) => Math.abs(t.marked / m.marked - 1) <= SLACK);
  const half = SERIES[scale].half.map((m) => [m, STEPS.half] as const);
  return {
    both: ladder(scale, [...third.map((m) => [m, STEPS.third] as const), ...half.filter(([m]) => !taken(m))]),
    half: ladder(scale, half),
  };
}

const LADDERS: Readonly<Record<MarkedScale, { both: Ladder; half: Ladder }>> = {
  aperture: ladderFor('aperture'),
  time: ladderFor('time'),
  iso: ladderFor('iso'),
};

/** All marks of a scale. A figure of the third-stop series goes before one of the half-stop series. */
export const ladderOf = (scale: MarkedScale): Ladder => LADDERS[scale].both;

/** The place of a marked figure; -1 where it is no mark. */
function placeOn({ marked, places, first }: Ladder, value: number): number {
  const key = keyOf(value) - first;
  const place = key >= 0 && key < places.length ? (places[key] ?? -1) : -1;
  if (place < 0) return -1;
  const mark = marked[place] as number;
  return Math.abs(value - mark) <= SLACK * mark ? place : -1;
}

/** The exact value behind a marked figure; NaN where it is no mark. */
export function exactOn(on: Ladder, value: number): number {
  const place = placeOn(on, value);
  return place < 0 ? NaN : (on.exact[place] ?? NaN);
}

/** A figure as it is written, and the exact value behind it. */
export interface WrittenMark {
  readonly scale: MarkedScale;
  readonly figure: number;
  readonly exact: number;
}

function markOn(scale: MarkedScale, on: Ladder, value: number): WrittenMark | undefined {
  const place = placeOn(on, value);
  return place < 0 ? undefined : { scale, figure: at(on.written, place), exact: at(on.exact, place) };
}

/** The mark that a figure names, as `exactMark` takes it: of ISO 12500 it is written ISO 12800. */
export const writtenMark = (scale: MarkedScale, value: number): WrittenMark | undefined =>
  markOn(scale, LADDERS[scale].both, value);

/** The same from the half-stop series alone. */
export const writtenHalfMark = (scale: MarkedScale, value: number): WrittenMark | undefined =>
  markOn(scale, LADDERS[scale].half, value);

function exactOrNone(on: Ladder, value: number): number | undefined {
  const exact = exactOn(on, value);
  return Number.isNaN(exact) ? undefined : exact;
}

/**
 * The exact value behind a marked figure: f/11 is 2^(7/2), 1/60 s is 1/64 s, ISO 125 is 100·2^(1/3).
 * A figure of the third-stop series goes first, then one of the half-stop series; undefined where it is no mark.
 */
export const exactMark = (scale: MarkedScale, value: number): number | undefined =>
  exactOrNone(LADDERS[scale].both, value);

/** The same from the half-stop series alone, for the figures that the two series share (f/13, f/1.2). */
export const exactHalfMark = (scale: MarkedScale, value: number): number | undefined =>
  exactOrNone(LADDERS[scale].half, value);

/** The marks on either side of a number of divisions; both are the same where one lies within the slack. */
function neighbours(
  all: readonly Mark[],
  steps: number,
  slack: number,
): { below: Mark | undefined; above: Mark | undefined } {
  const next = all.findIndex((mark) => mark.step >= steps - slack);
  const above = all[next];
  if (above && above.step <= steps + slack) return { below: above, above };
  return { below: next < 0 ? all[all.length - 1] : all[next - 1], above };
}

/** Beyond an end of the series its last mark counts, as long as one that came after it would not be the answer. */
function atEnd(steps: number, direction: Direction, end: Mark | undefined): Mark | undefined {
  const off = (end?.step ?? NaN) - steps;
  const far = direction === 'nearest' ? 0.5 : 1;
  return off > SLACK - far && off <= far + SLACK ? end : undefined;
}

function wanted(all: readonly Mark[], steps: number, slack: number, direction: Direction): Mark | undefined {
  const { below, above } = neighbours(all, steps, slack);
  if (below === undefined || above === undefined)
    return atEnd(
      steps,
      direction,
      direction === 'up' ? above : direction === 'down' ? below : (below ?? above),
    );
  if (direction !== 'nearest') return direction === 'up' ? above : below;
  return steps - below.step < above.step - steps - SLACK ? below : above;
}

/**
 * The mark of an exact value: the one nearest in stops and not in number, a tie going to the higher; or the next one up or
 * down. A value within 1e-9 of a mark is that mark whichever way.
 *
 * @param value - exact f-number, time in seconds or ISO speed (above 0).
 * @returns the mark, or a `no-answer` refusal beyond the ends of the series.
 */
export function nearestMark(
  scale: MarkedScale,
  value: number,
  division: Division,
  direction: Direction = 'nearest',
): Result<Mark> {
  const perDoubling = STEPS[division] * stopsPerDoubling(scale);
  const steps = Math.log2(value / ORIGIN[scale]) * perDoubling;
  // so much of a division is 1e-9 of the value
  const slack = (SLACK / Math.LN2) * perDoubling;
  return wanted(marks(scale, division), steps, slack, direction) ?? beyond(scale, division);
}

function beyond(scale: MarkedScale, division: Division): Fail {
  const all = marks(scale, division);
  const ends = [all[0], all[all.length - 1]].map((m) => markText(scale, (m as Mark).marked));
  return fail(
    'no-answer',
    `There is no ${division}-stop mark there: the marks run from ${ends[0]} to ${ends[1]}.`,
  );
}

/** A marked figure as it is written: f/11, 1/125 s, 2 s, ISO 400. */
export function markText(scale: MarkedScale, marked: number): string {
  if (scale === 'aperture') return `f/${marked}`;
  if (scale === 'iso') return `ISO ${marked}`;
  return marked < 0.3 || marked === 0.5 || Math.abs(marked - 1 / 3) < SLACK
    ? `1/${Math.round(1 / marked)} s`
    : `${marked} s`;
}
