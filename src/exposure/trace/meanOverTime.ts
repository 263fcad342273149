import { lightBetween, tracePointBefore } from './lightAtTime';
import { median } from './median';
import { lightAt, type Signal } from './signal';

/** More samples than this tell no more about a middle value: every second, third … is taken. */
export const ENOUGH = 1 << 13;

/** Median of what is read at the samples from `from` up to and without `to`. */
export function medianRead(from: number, to: number, read: (i: number) => number): number {
  const stride = Math.ceil((to - from) / ENOUGH);
  const buffer = new Float64Array(Math.ceil((to - from) / stride));
  for (let k = 0; k < buffer.length; k++) buffer[k] = read(from + k * stride);
  return median(buffer);
}

/** Median of the light of the samples from `from` up to and without `to`. */
export const medianOf = (signal: Signal, from: number, to: number): number =>
  medianRead(from, to, (i) => lightAt(signal, i));

/** Mean light over a span of time, the middle of the span, and how many samples tell it. */
export interface Mean {
  readonly level: number;
  readonly time: number;
  readonly count: number;
}

/**
 * Mean light between two times of the recording, by the trapezoid rule. It ends where the times say, and not with a sample
 * near them: one that lies on such a time would be in or out by the last digit of the clock.
 */
export function meanOver(signal: Signal, start: number, end: number): Mean {
  const from = tracePointBefore(signal, start);
  const to = tracePointBefore(signal, end);
  const span = end - start;
  return {
    level: span > 0 ? lightBetween(signal, from, to) / span : lightAt(signal, from.cell),
    time: start + span / 2,
    count: Math.max(1, to.cell - from.cell),
  };
}
