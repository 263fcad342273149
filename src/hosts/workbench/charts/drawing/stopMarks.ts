import { marks } from '../../../../exposure/stops/marks';

/** Thirds of a stop in a doubling of the f-number, which is two stops. */
const THIRDS = 6;
const SLACK = 1e-9;
/** Full stops that are enough to read an axis by; where there are fewer, thirds are written too. */
const ENOUGH = 3;
/** Where not all of them have room: every second full stop, or fewer. */
const EVERY = [1, 2, 4, 8];

/** The number format of cells that hold f-numbers. */
export const isFNumber = (format: string): boolean => format.startsWith('"f/"');

/** What an axis of f-numbers reaches over: whole thirds of a stop, and at least one stop. */
export function stopRange(values: readonly number[]): [least: number, most: number] {
  const thirds = (f: number): number => Math.log2(f) * THIRDS;
  const least = values.reduce((a, b) => Math.min(a, b), Infinity);
  const most = values.reduce((a, b) => Math.max(a, b), 0);
  let [first, last] = [Math.floor(thirds(least) + SLACK), Math.ceil(thirds(most) - SLACK)];
  while (last - first < THIRDS / 2) [first, last] = [first - 1, last + 1];
  return [2 ** (first / THIRDS), 2 ** (last / THIRDS)];
}

/** The marks of a division from one f-number to another, every so many: f/11 at 11.31, the exact f-number behind it. */
const marksBetween = (least: number, most: number, division: 'full' | 'third', every = 1): StopMark[] =>
  marks('aperture', division)
    .filter(({ step }) => step % every === 0)
    .map(({ marked, step }) => ({
      at: 2 ** (step / (division === 'full' ? THIRDS / 3 : THIRDS)),
      text: `f/${marked}`,
    }))
    .filter(({ at }) => at >= least * (1 - SLACK) && at <= most * (1 + SLACK));

export interface StopMark {
  readonly at: number;
  readonly text: string;
}

/** The marks of an aperture ring from one f-number to another, as many of them as have room: f/8, f/11, f/16. */
export function stopMarks(least: number, most: number, room: number): readonly StopMark[] {
  const fulls = EVERY.map((every) => marksBetween(least, most, 'full', every));
  const found = fulls.find(({ length }) => length <= room) ?? fulls.at(-1) ?? [];
  if (found.length >= ENOUGH) return found;
  const thirds = marksBetween(least, most, 'third');
  return thirds.length <= room ? thirds : found;
}

/** Whether cells hold f-numbers that an aperture ring has marks for. */
export const areMarked = (format: string, values: readonly number[]): boolean =>
  isFNumber(format) &&
  values.length > 0 &&
  values.every((value) => value > 0) &&
  stopMarks(...stopRange(values), Infinity).length > 1;

/** What is written at a mark. */
export const stopText = (at: number): string => marksBetween(at, at, 'third')[0]?.text ?? '';
