import { lastKept } from '../../core/lastKept';
import { roundStops } from '../../core/numbers';
import type { Range } from '../../core/range';
import { answer, isFail, type Result } from '../../core/result';
import { DIAL_STEP } from '../../distance/dialChange';
import { rootSumOfSquares } from '../../light/lightSum';
import type { PopsTimeBasis } from '../popsTime';
import { bestFirings, type Firing, popsOf, secondsOf } from './firing';
import { missOf, powerAt } from './head';
import { type HeadValues, readHeads, type RecycleTimes } from './readHeads';
import { type HeadRemark, type PlanRemark, remarksOn, remarksOnAll } from './remarks';

/** What one head does in a plan; a head that is off has no power, no reading and no miss, and 0 pops. */
export interface PlannedHead {
  /** Ws. */
  readonly power?: number;
  /** It fires on the first that many pops of the plan. */
  readonly pops: number;
  /** F-number of the head alone in the end, after the loss. */
  readonly reading?: number;
  /** Stops over (+) or under (−) its target. */
  readonly miss?: number;
  readonly remarks: readonly HeadRemark[];
}

export interface Plan {
  /** In the order of the readings. */
  readonly heads: readonly PlannedHead[];
  /** Pops of the head that fires most often; 0 where all heads are off. */
  readonly pops: number;
  /** F-number of all heads together, after the loss; 0 where all heads are off. */
  readonly reading: number;
  /** The miss farthest from none; undefined where all heads are off. */
  readonly worst: number | undefined;
  readonly remarks: readonly PlanRemark[];
  /** From the first pop until the next frame can start, and to the last pop. */
  readonly seconds: { readonly ready: number; readonly open: number };
}

/** More pops than this nobody counts out. */
export const MOST_POPS = 99;
/** What may be asked for all the same. */
export const PLANNED_POPS: Range = { least: 1, most: 999, whole: true };
/** So many plans are kept: a table asks for one in each of its cells. */
const KEPT_PLANS = 8;

function plannedHead(firing: Firing, planPops: number, mostPops: number): Required<PlannedHead> {
  const { head, pops, down } = firing;
  const miss = missOf(head, pops, down);
  return {
    power: powerAt(head, down),
    pops,
    reading: head.target * 2 ** (miss / 2),
    miss: roundStops(miss),
    remarks: remarksOn(firing, planPops, mostPops),
  };
}

/** A head that is off, and which of its cells says so where only one does. */
const offHead = (reading: number | undefined, target: number | undefined): PlannedHead => ({
  pops: 0,
  remarks:
    reading === undefined && target === undefined
      ? []
      : [{ remark: 'off', lacks: target === undefined ? 'target' : 'reading' }],
});

function madePlan(
  readings: HeadValues,
  powers: HeadValues,
  targets: HeadValues,
  least: HeadValues,
  most: HeadValues,
  recycleFull: readonly RecycleTimes[],
  loss = 0,
  step: readonly number[] = readings.map(() => DIAL_STEP),
  mostPops = MOST_POPS,
  pause = 0,
  tolerance?: number,
  allowed: HeadValues = readings.map(() => undefined),
  switchable: readonly boolean[] = readings.map(() => true),
): Result<Plan> {
  const columns = { readings, powers, targets, least, most, recycleFull, step, allowed, switchable };
  const read = readHeads(columns, { loss, tolerance });
  if (isFail(read)) return read;

  const limit = Math.round(mostPops);
  const best = bestFirings(
    read.filter((head) => head !== undefined),
    limit,
  );
  let next = 0;
  const firings = read.map((head) => head && best[next++]);
  const pops = popsOf(best);
  const heads = firings.map((firing, i) =>
    firing ? plannedHead(firing, pops, limit) : offHead(readings[i], targets[i]),
  );
  const misses = heads.flatMap(({ miss }) => miss ?? []);
  const plan: Plan = {
    heads,
    pops,
    reading: rootSumOfSquares(heads.flatMap((head) => head.reading ?? [])),
    worst: misses.reduce<number | undefined>(
      (worst, miss) => (worst === undefined || Math.abs(miss) > Math.abs(worst) ? miss : worst),
      undefined,
    ),
    remarks: remarksOnAll(firings, pops),
    seconds: secondsOf(best, pause),
  };
  // numbers at the edge of what a computer holds end in NaN or Infinity
  const numbers = [
    plan.reading,
    plan.seconds.ready,
    ...heads.flatMap(({ power, miss }) => [power ?? 0, miss ?? 0]),
  ];
  return numbers.map(answer).find(isFail) ?? plan;
}

/**
 * Power and pops of each head, so that each ends at its target in the fewest pops.
 *
 * A head's settings are most·2^(−k·step), k = 0 … round(log2(most/least)/step), a tie to the lower setting, so that the
 * lowest may lie up to half a step below `least`. It is in reach where it ends within the tolerance (+1e-9) of its target. In
 * a plan of n pops it fires on all n; only where its least power is more than the tolerance too strong for n, and it may be
 * switched off, it fires on the first pops alone: the fewest that bring it in reach, or where none do the fewest of those
 * that come nearest.
 *
 * Out of all plans up to `mostPops` the answer is the one with, in this order: no head out of reach, or else the smallest worst
 * miss, then the smallest next worst among the heads out of reach, and so on; fewest heads to switch off; fewest pops;
 * smallest worst miss; smallest sum of misses; shortest time. Misses count alike over and under, and are equal within
 * 1e-9. Of two settings as near the faster is taken, and of two as fast the lower.
 *
 * Every number of pops is tried. For each of them no search is needed: the pops of each head are settled, and its nearest
 * setting is best for the worst miss and the sum at once.
 *
 * Time: pops follow each other, and a pop takes the longest of the pause and the recycling of the heads that fire on it. That
 * is recycleFull·power/most, or on the straight line to the time at least power. Unlike `popsTime`, the pause runs along with
 * the recycling.
 *
 * The last eight plans are kept by their arguments.
 *
 * @param readings - f-number of one pop of each head (above 0); undefined where the head is off.
 * @param powers - Ws at which each was read (above 0, within `least` to `most` or half a step outside).
 * @param targets - f-number that each must read alone in the end, after the loss (above 0); undefined where it is off.
 * @param least - Ws of each head at its least power (above 0).
 * @param most - Ws of each head at full power (from `least` up).
 * @param recycleFull - seconds of each head from a pop to ready (above 0), at full power and, if known, at least power.
 * @param loss - stops lost between meter and film; below 0 where there is a gain.
 * @param step - stops between two settings of each head (above 0).
 * @param mostPops - most pops of a plan (a whole number from 1 to 999).
 * @param pause - least seconds from a pop to the next (from 0).
 * @param tolerance - stops that a head may end from its target (from 0); half of its step where none is given.
 * @param allowed - pops in a row that the maker of each head allows (whole); a plan beyond it is kept, and says so.
 * @param switchable - whether each head may be switched off before the last pop.
 * @returns a plan for any heads, in reach or not: a remark on a head out of reach says by how much.
 */
export const popsPlan = lastKept(KEPT_PLANS, madePlan);

/**
 * Seconds of the plan that `popsPlan` makes of the same arguments.
 *
 * @param basis - `ready`: until the next frame can start. `open`: from the first pop to the last.
 */
export function popsPlanTime(
  ...[
    readings,
    powers,
    targets,
    least,
    most,
    recycleFull,
    loss,
    step,
    mostPops,
    pause,
    tolerance,
    allowed,
    switchable,
    basis,
  ]: [...Parameters<typeof popsPlan>, basis?: PopsTimeBasis]
): Result<number> {
  const plan = popsPlan(readings, powers, targets, least, most, recycleFull, loss, step, mostPops, pause, tolerance, allowed, switchable); // prettier-ignore
  return isFail(plan) ? plan : answer(plan.seconds[basis ?? 'ready']);
}
