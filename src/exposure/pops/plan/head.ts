import { SLACK, spokenStops } from '../../core/numbers';
import { fail, type Fail } from '../../core/result';

/** A head that is on, in the terms in which a plan is made. */
export interface Head {
  /** Stops over (+) or under (−) its target with one pop at full power, after the loss. */
  readonly over: number;
  /** Stops between two settings. */
  readonly step: number;
  /** Settings below full power: each a step down. */
  readonly steps: number;
  /** Energy at full power, in Ws. */
  readonly most: number;
  /** Seconds from a pop at full power to ready. */
  readonly recycleFull: number;
  /** F-number that it must read alone in the end. */
  readonly target: number;
}

/** How far from its target a head may end: half a step. */
const allowed = (head: Head): number => head.step / 2 + SLACK;

/** Stops over (+) or under (−) the target after some pops, that many steps below full power. */
export const missOf = (head: Head, pops: number, stepsDown: number): number =>
  head.over + Math.log2(pops) - stepsDown * head.step;

const isTooWeak = (head: Head, pops: number): boolean => missOf(head, pops, 0) < -allowed(head);
export const isTooStrong = (head: Head, pops: number): boolean =>
  missOf(head, pops, head.steps) > allowed(head);

/** Settings lie a step apart and each covers half a step either way: what is neither too weak nor too strong fits. */
export const fits = (head: Head, pops: number): boolean => !isTooWeak(head, pops) && !isTooStrong(head, pops);

/** Steps below full power that come nearest to the target; of two as near the lower power, which is never slower. */
export function nearestSetting(head: Head, pops: number): number {
  const within = (k: number): number => Math.min(Math.max(k, 0), head.steps);
  const higher = within(Math.floor(missOf(head, pops, 0) / head.step));
  const lower = within(higher + 1);
  const off = (k: number): number => Math.abs(missOf(head, pops, k));
  return off(lower) <= off(higher) + SLACK ? lower : higher;
}

/** Fewest pops that are not too weak at full power; the head must have some. */
function fewestStrongEnough(head: Head): number {
  const near = Math.max(1, Math.ceil(2 ** -(head.over + allowed(head))));
  // the power of two may be off by a rounding error: the misses decide; no pop at all is always too weak
  if (!isTooWeak(head, near - 1)) return near - 1;
  return isTooWeak(head, near) ? near + 1 : near;
}

/** Fewest pops with which the head comes as near as it can, alone: the fewest that fit, where any fit. */
export function fewestPops(head: Head, mostPops: number): number {
  if (isTooWeak(head, mostPops)) return mostPops;
  const enough = fewestStrongEnough(head);
  if (!isTooStrong(head, enough)) return enough;
  // infinite for no pop at all
  const short = -missOf(head, enough - 1, 0);
  return short <= missOf(head, enough, head.steps) + SLACK ? enough - 1 : enough;
}

const stopsOf = (miss: number): string => spokenStops(Math.abs(miss));
const counted = (pops: number): string => (pops === 1 ? 'one pop' : `${pops} pops`);

/** The refusal of a head that does not fit with these pops, and why one pop more or less does not help. */
export function outOfReach(head: Head, pops: number, mostPops: number): Fail {
  const weak = (n: number): string => `${stopsOf(missOf(head, n, 0))} too weak at ${counted(n)}`;
  const strong = (n: number): string =>
    `${stopsOf(missOf(head, n, head.steps))} too strong at least power, ${counted(n)}`;
  const said = isTooWeak(head, pops)
    ? [weak(pops), ...(pops < mostPops ? [strong(pops + 1)] : [])]
    : [strong(pops), ...(pops > 1 ? [weak(pops - 1)] : [])];
  return fail('no-answer', `This head is ${said.join(', and ')}.`);
}
