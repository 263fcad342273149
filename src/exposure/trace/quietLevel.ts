import { SLACK } from '../core/numbers';
import { SURE_OF } from './noiseChance';
import { DEVIATION } from './noise';
import { lightAt, type Signal } from './signal';
import { medianOf, medianRead } from './meanOverTime';

/** Level of a stretch without light. */
export interface Quiet {
  readonly level: number;
  /** Standard deviation of one sample. */
  readonly spread: number;
  /** Samples that tell it. */
  readonly count: number;
}

/** How far the nearest other value lies off: where most samples are alike, that is the next step of the recorder. */
function nextStep(signal: Signal, from: number, to: number, middle: number): number {
  let near = Infinity;
  for (let i = from; i < to; i++) {
    const off = Math.abs(lightAt(signal, i) - middle);
    if (off > 0 && off < near) near = off;
  }
  return near * (1 + SLACK);
}

/**
 * Level of a quiet stretch: the median, then the mean of the samples that lie within four standard deviations of it, these
 * taken from the median deviation. A smaller flash in the stretch does not move it, and values that were recorded in coarse
 * steps still give their mean.
 */
export function quiet(signal: Signal, from: number, to: number): Quiet {
  const middle = medianOf(signal, from, to);
  const typical = medianRead(from, to, (i) => Math.abs(lightAt(signal, i) - middle));
  const near = typical > 0 ? SURE_OF * DEVIATION * typical : nextStep(signal, from, to, middle);
  let [count, sum, squares] = [0, 0, 0];
  for (let i = from; i < to; i++) {
    const off = lightAt(signal, i) - middle;
    if (Math.abs(off) > near) continue;
    count++;
    sum += off;
    squares += off * off;
  }
  const off = sum / count;
  return { level: middle + off, spread: Math.sqrt(Math.max(0, squares / count - off * off)), count };
}
