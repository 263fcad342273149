import { timeAt } from './samples';
import { lightAt, type Signal } from './signal';
import { medianRead } from './meanOverTime';

/** Middle of the absolute values of a Gaussian, in standard deviations. */
export const MIDDLE = 0.6745;
/** The other way round, as Hampel (1974) gives it: standard deviation of a Gaussian whose median deviation is 1. */
export const DEVIATION = 1.4826;
/** The median of so many steps tells the noise to about a third, near enough to set a threshold by. */
export const SHOWS_NOISE = 20;

/** Standard deviation of noise without memory, from the median step between neighbours: 1.05 × it, 1 / (0.6745·√2). */
export const stepNoise = (signal: Signal, from: number, to: number): number =>
  medianRead(from + 1, to, (i) => Math.abs(lightAt(signal, i) - lightAt(signal, i - 1))) /
  (MIDDLE * Math.SQRT2);

/** What a sample lies off the straight line through its neighbours. */
function offLine(signal: Signal, i: number): number {
  const before = timeAt(signal.samples, i - 1);
  const span = timeAt(signal.samples, i + 1) - before;
  const part = span > 0 ? (timeAt(signal.samples, i) - before) / span : 0.5;
  return lightAt(signal, i) - (1 - part) * lightAt(signal, i - 1) - part * lightAt(signal, i + 1);
}

/** The same from what samples lie off the line through their neighbours, which a slope does not raise: 1 / (0.6745·√1.5). */
export const bendNoise = (signal: Signal, from: number, to: number): number =>
  medianRead(from + 1, to - 1, (i) => Math.abs(offLine(signal, i))) / (MIDDLE * Math.sqrt(1.5));
