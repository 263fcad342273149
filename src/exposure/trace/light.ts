import { timeAt } from './samples';
import { lightAt, type Signal } from './signal';

/** An instant of a recording, and the sample at or before it. */
export interface Place {
  readonly time: number;
  readonly cell: number;
}

export const placeOf = (signal: Signal, i: number): Place => ({ time: timeAt(signal.samples, i), cell: i });

/** Light between a sample and an instant of the cell that follows it: a straight line joins the samples. */
function partOfCell(signal: Signal, { time, cell }: Place): number {
  const start = timeAt(signal.samples, cell);
  if (!(time > start)) return 0;
  const left = lightAt(signal, cell);
  const slope = (lightAt(signal, cell + 1) - left) / (timeAt(signal.samples, cell + 1) - start);
  return (time - start) * (left + (slope * (time - start)) / 2);
}

/** Light between two instants by the trapezoid rule; negative where the second comes first. */
export function lightBetween(signal: Signal, start: Place, end: Place): number {
  if (end.cell < start.cell) return -lightBetween(signal, end, start);
  let sum = 0;
  let before = lightAt(signal, start.cell);
  let time = timeAt(signal.samples, start.cell);
  for (let i = start.cell + 1; i <= end.cell; i++) {
    const here = lightAt(signal, i);
    const now = timeAt(signal.samples, i);
    sum += (now - time) * (before + here);
    before = here;
    time = now;
  }
  return sum / 2 + partOfCell(signal, end) - partOfCell(signal, start);
}
