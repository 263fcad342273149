import { median } from './median';
import { timeAt } from './samples';
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

/** Index of the first sample at or after a time. */
function firstAt(signal: Signal, time: number): number {
  let low = 0;
  let high = signal.samples.count - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (timeAt(signal.samples, middle) < time) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Mean light over a span of time, the middle of the span, and how many samples tell it. */
export interface Mean {
  readonly level: number;
  readonly time: number;
  readonly count: number;
}

/** Mean light between two times, by the trapezoid rule. */
export function meanOver(signal: Signal, start: number, end: number): Mean {
  const { samples } = signal;
  const from = firstAt(signal, start);
  const to = Math.max(from, firstAt(signal, end));
  const stride = Math.max(1, Math.ceil((to - from) / ENOUGH));
  let area = 0;
  let i = from;
  for (; i + stride <= to; i += stride) {
    const width = timeAt(samples, i + stride) - timeAt(samples, i);
    area += (width * (lightAt(signal, i) + lightAt(signal, i + stride))) / 2;
  }
  const span = timeAt(samples, i) - timeAt(samples, from);
  const level = span > 0 ? area / span : lightAt(signal, from);
  return { level, time: timeAt(samples, from) + span / 2, count: (i - from) / stride + 1 };
}
