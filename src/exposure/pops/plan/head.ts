import { SLACK } from '../../core/numbers';

/** A head that is on, in the terms in which a plan is made. */
export interface Head {
  /** Stops over (+) or under (−) its target with one pop at full power, after the loss. */
  readonly over: number;
  /** Stops between two settings. */
  readonly step: number;
  /** Settings below full power: each a step down. */
  readonly steps: number;
  /** Stops that it may end from its target. */
  readonly tolerance: number;
  /** Energy at full and at least power, in Ws. */
  readonly most: number;
  readonly least: number;
  /** Seconds from a pop to ready at full power, and at least power where that is known. */
  readonly recycleFull: number;
  readonly recycleLeast: number | undefined;
  /** Pops in a row that its maker allows. */
  readonly allowed: number | undefined;
  /** Whether it may be switched off before the last pop. */
  readonly isSwitchable: boolean;
  /** F-number that it must read alone in the end. */
  readonly target: number;
}

/** Stops over (+) or under (−) the target after some pops, that many steps below full power. */
export const missOf = (head: Head, pops: number, stepsDown: number): number =>
  head.over + Math.log2(pops) - stepsDown * head.step;

export const isNear = (head: Head, miss: number): boolean => Math.abs(miss) <= head.tolerance + SLACK;

export const isTooWeak = (head: Head, pops: number): boolean =>
  missOf(head, pops, 0) < -head.tolerance - SLACK;
export const isTooStrong = (head: Head, pops: number): boolean =>
  missOf(head, pops, head.steps) > head.tolerance + SLACK;

/** Ws at a number of steps below full power. */
export const powerAt = (head: Head, stepsDown: number): number => head.most * 2 ** (-stepsDown * head.step);

/**
 * Seconds from a pop to ready: in proportion to the energy, or on the straight line between full and least power. The lowest
 * mark of a head may lie below its least energy, and is then as fast as that.
 */
export function recycleAt(head: Head, stepsDown: number): number {
  const { most, least, recycleFull, recycleLeast } = head;
  const power = powerAt(head, stepsDown);
  if (recycleLeast === undefined) return (recycleFull * power) / most;
  if (power >= most) return recycleFull;
  const part = Math.max(0, (power - least) / (most - least));
  return recycleLeast + part * (recycleFull - recycleLeast);
}

/** Steps below full power that come nearest to the target; of two as near the faster, and the lower of two as fast. */
export function nearestSetting(head: Head, pops: number): number {
  const within = (k: number): number => Math.min(Math.max(k, 0), head.steps);
  const higher = within(Math.floor(missOf(head, pops, 0) / head.step));
  const lower = within(higher + 1);
  const nearer = Math.abs(missOf(head, pops, lower)) - Math.abs(missOf(head, pops, higher));
  if (Math.abs(nearer) > SLACK) return nearer < 0 ? lower : higher;
  return recycleAt(head, lower) <= recycleAt(head, higher) ? lower : higher;
}

/** Stops by which the nearest setting misses. */
const nearestMiss = (head: Head, pops: number): number =>
  Math.abs(missOf(head, pops, nearestSetting(head, pops)));

/** Fewest pops that bring a head near enough, alone; where none do, the fewest of those that come nearest. */
export function fewestPops(head: Head, mostPops: number): number {
  let best = Infinity;
  for (let pops = 1; pops <= mostPops; pops++) {
    const miss = nearestMiss(head, pops);
    if (isNear(head, miss)) return pops;
    best = Math.min(best, miss);
  }
  let pops = 1;
  while (nearestMiss(head, pops) > best + SLACK) pops++;
  return pops;
}
