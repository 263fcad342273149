import { timeAt } from './samples';
import { lightAt, type Signal } from './signal';

/** An instant of a recording, and the sample at or before it. */
export interface TracePoint {
  readonly time: number;
  readonly cell: number;
}

export const tracePointAt = (signal: Signal, i: number): TracePoint => ({
  time: timeAt(signal.samples, i),
  cell: i,
});

/** An instant with the last sample at or before it; before the first sample, that one. */
export function tracePointBefore(signal: Signal, time: number): TracePoint {
  let [cell, above] = [0, signal.samples.count];
  while (above - cell > 1) {
    const middle = (cell + above) >> 1;
    if (timeAt(signal.samples, middle) <= time) cell = middle;
    else above = middle;
  }
  return { time, cell };
}

/** What the light gains in a second between a sample and the next: a straight line joins them. */
const slopeAfter = (signal: Signal, cell: number): number =>
  (lightAt(signal, cell + 1) - lightAt(signal, cell)) /
  (timeAt(signal.samples, cell + 1) - timeAt(signal.samples, cell));

/** Light at an instant. */
export function lightAtTime(signal: Signal, { time, cell }: TracePoint): number {
  const start = timeAt(signal.samples, cell);
  const light = lightAt(signal, cell);
  return time > start ? light + slopeAfter(signal, cell) * (time - start) : light;
}

/** Light between a sample and an instant of the cell that follows it. */
function partOfCell(signal: Signal, { time, cell }: TracePoint): number {
  const start = timeAt(signal.samples, cell);
  if (!(time > start)) return 0;
  return (time - start) * (lightAt(signal, cell) + (slopeAfter(signal, cell) * (time - start)) / 2);
}

/**
 * Twice the light from one sample to another by the trapezoid rule. A recording has a million samples, most often a time for
 * each and a base that does not drift: there the light is reckoned in place, step for step as `lightAt` does.
 */
function twiceLight(signal: Signal, from: number, to: number): number {
  const { samples, sign, base, slope, scale } = signal;
  const { values, times } = samples;
  let sum = 0;
  let before = lightAt(signal, from);
  let time = timeAt(samples, from);
  const isPlain = slope === 0 && times !== undefined;
  for (let i = from + 1; i <= to; i++) {
    const here = isPlain ? (sign * (values[i] as number) - base) * scale : lightAt(signal, i);
    const now = isPlain ? (times[i] as number) : timeAt(samples, i);
    sum += (now - time) * (before + here);
    before = here;
    time = now;
  }
  return sum;
}

/** Light between two instants by the trapezoid rule; negative where the second comes first. */
export function lightBetween(signal: Signal, start: TracePoint, end: TracePoint): number {
  if (end.cell < start.cell) return -lightBetween(signal, end, start);
  return twiceLight(signal, start.cell, end.cell) / 2 + partOfCell(signal, end) - partOfCell(signal, start);
}
