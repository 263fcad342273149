import { timeAt } from './samples';
import { lightAt, type Signal } from './signal';

/** Samples are fine where the light bends between them by less than this share of the height: what a parabola leaves out is less again. */
const FINE = 5e-4;
/** A curve bends much alike at two neighbours; at a corner one end bends and the other hardly does. */
const ALIKE = 2;

/** What the light bends by at a sample, scaled to a cell of a given width: half its second derivative × width². */
function bendAt(signal: Signal, i: number, width: number): number {
  const { samples } = signal;
  if (i < 1 || i + 1 >= samples.count) return NaN;
  const before = timeAt(samples, i) - timeAt(samples, i - 1);
  const after = timeAt(samples, i + 1) - timeAt(samples, i);
  const left = (lightAt(signal, i) - lightAt(signal, i - 1)) / before;
  const right = (lightAt(signal, i + 1) - lightAt(signal, i)) / after;
  return ((right - left) / (before + after)) * width * width;
}

/**
 * What the light bends by between sample i and the next: 0 where the samples are coarse, or the bend changes from one end to
 * the other as it does at a corner. There the straight line stands.
 */
export function bendIn(signal: Signal, i: number): number {
  const width = timeAt(signal.samples, i + 1) - timeAt(signal.samples, i);
  const left = bendAt(signal, i, width);
  const right = bendAt(signal, i + 1, width);
  const alike = Math.abs(left) <= ALIKE * Math.abs(right) && Math.abs(right) <= ALIKE * Math.abs(left);
  return alike && Math.abs(left) + Math.abs(right) < 2 * FINE ? (left + right) / 2 : 0;
}
