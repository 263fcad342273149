import { lightAt, type Signal } from './signal';

/** Samples of the pulse that make an instant rise worth placing within its cell. */
const DENSE = 1000;
/** A step that is small in a pulse of so many samples, in heights and in standard deviations of the noise. */
const SMALL = 0.01;
const NOISE = 6;

/**
 * First lit sample of an instant rise: dark before it, more than half the height in one cell, and next to no step after it,
 * in a pulse of many samples.
 *
 * No straight line joins such two samples, and where in the cell the light came is not known. From the first lit sample on,
 * an exponential decay has its own duration and shares, wherever the samples fall; a straight line up to it would add up to
 * a whole cell.
 *
 * @param left - first sample of the pulse above its foot.
 * @param right - last sample of the pulse above its foot.
 */
export function instantRise(signal: Signal, left: number, right: number, noise: number): number | undefined {
  if (left < 1 || right - left < DENSE) return undefined;
  const dark = lightAt(signal, left - 1);
  const lit = lightAt(signal, left);
  const step = lightAt(signal, left + 1) - lit;
  const small = SMALL + NOISE * noise;
  return lit - dark > 0.5 && Math.abs(dark) <= small && Math.abs(step) <= small ? left : undefined;
}
