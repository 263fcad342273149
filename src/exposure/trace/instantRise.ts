import { NEVER_BY_CHANCE } from './noiseChance';
import { lightAt, type Signal } from './signal';

/** In a pulse of so many samples a whole cell of light is less than a hundredth of it: in fewer, the straight line stands. */
const DENSE = 1000;
/** A step that is small in a pulse of so many samples, in heights: twice what an exponential falls by in a cell. */
const SMALL = 0.01;
/** What has risen by more than half in one cell has no steeper cell beside it: that one is the rise. */
const MOST = 0.5;

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
  const small = SMALL + NEVER_BY_CHANCE * noise;
  return lit - dark > MOST && Math.abs(dark) <= small && Math.abs(step) <= small ? left : undefined;
}
