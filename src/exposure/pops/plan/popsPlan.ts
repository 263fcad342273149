import { roundStops } from '../../core/numbers';
import { answer, isFail, type Result } from '../../core/result';
import { rootSumOfSquares } from '../../light/lightSum';
import { fewestPops, fits, type Head, isTooStrong, missOf, nearestSetting, outOfReach } from './head';
import { type HeadValues, readHeads } from './readHeads';

/** What one head does in a plan; a head that is off has no power, no reading and no miss, and 0 pops. */
export interface PlannedHead {
  /** Ws. */
  readonly power?: number;
  /** It fires on the first that many pops of the plan. */
  readonly pops: number;
  /** F-number of the head alone in the end, after the loss. */
  readonly reading?: number;
  /** Stops over (+) or under (−) its target; a `no-answer` refusal where the head is out of reach. */
  readonly miss?: Result<number>;
}

export interface Plan {
  /** In the order of the readings. */
  readonly heads: readonly PlannedHead[];
  /** Pops of the head that fires most often; 0 where all heads are off. */
  readonly pops: number;
  /** F-number of all heads together, after the loss; 0 where all heads are off. */
  readonly reading: number;
  /** From the first pop until the next frame can start. */
  readonly seconds: number;
}

/** The step of a head's dial, in stops. */
export const PLAN_STEP = 0.1;
/** More pops than this nobody counts out. */
export const MOST_POPS = 99;

/** How a head fires: on how many pops, and how many steps below full power. */
interface Firing {
  readonly head: Head;
  readonly pops: number;
  readonly down: number;
}

/** A head in a plan of so many pops: it fires on all, but on its own fewest where its least power is too much for all. */
function firing(head: Head, planPops: number, mostPops: number): Firing {
  const pops = isTooStrong(head, planPops) ? fewestPops(head, mostPops) : planPops;
  return { head, pops, down: nearestSetting(head, pops) };
}

function planned({ head, pops, down }: Firing, mostPops: number): Required<PlannedHead> {
  const miss = missOf(head, pops, down);
  return {
    power: head.most * 2 ** (-down * head.step),
    pops,
    reading: head.target * 2 ** (miss / 2),
    miss: fits(head, pops) ? roundStops(miss) : outOfReach(head, pops, mostPops),
  };
}

/** Seconds of the pops: each takes the longest of the pause and the recycling of the heads that fire on it. */
function secondsOf(firings: readonly Firing[], pause: number): number {
  const byPops = [...firings].sort((a, b) => b.pops - a.pops);
  let slowest = pause;
  let seconds = 0;
  for (const [i, { head, pops, down }] of byPops.entries()) {
    slowest = Math.max(slowest, head.recycleFull * 2 ** (-down * head.step));
    seconds += (pops - (byPops[i + 1]?.pops ?? 0)) * slowest;
  }
  return seconds;
}

/**
 * Power and pops of each head, so that each ends at its target in the fewest pops.
 *
 * A head's settings are most·2^(−k·step), k = 0 … round(log2(most/least)/step), a tie to the lower setting, so that the
 * lowest may lie up to half a step below `least`. It fits where it ends within half a step (+1e-9) of its target. In a
 * plan of n pops it fires on all n where its least power is not more than that too strong for n; otherwise it is switched
 * off after the first pops: the fewest that fit, or where none fits the fewest of those that come nearest.
 *
 * Out of all plans up to `mostPops` the answer is the one with, in this order: no head out of reach, or else the smallest worst
 * miss, then the smallest next worst among the heads out of reach, and so on; fewest heads to switch off; fewest pops;
 * smallest worst miss; smallest sum of misses; shortest time. Misses count alike over and under, and are equal within
 * 1e-9. Of two settings as near the lower is taken, as it never takes longer, even where the time is the same.
 *
 * No search is needed. A head's settings cover its range without a gap, so it fits with all pops from its own fewest up to
 * some number, and with more it is switched off at its own fewest: what it can reach never gets worse with more pops, and
 * heads to switch off never get fewer. The plan's pops are therefore the largest of the heads' own fewest pops, and
 * the fewest heads to switch off and the fewest pops never pull apart. From there on each head's nearest setting is best
 * for the worst miss and the sum at once. A head that is too weak has `mostPops` as its own fewest; one too strong has one
 * pop; one that is too weak with m pops and too strong with m + 1 has the nearer of the two.
 *
 * Time: pops follow each other, and a pop takes the longest of the pause and recycleFull·power/most over the heads that
 * fire on it, the last pop too: until the next frame can start. Unlike `popsTime`, the pause runs along with the recycling.
 *
 * @param readings - f-number of one pop of each head (above 0); undefined where the head is off.
 * @param powers - Ws at which each was read (above 0, within `least` to `most` or half a step outside).
 * @param targets - f-number that each must read alone in the end, after the loss (above 0); undefined where it is off.
 * @param least - Ws of each head at its least power (above 0).
 * @param most - Ws of each head at full power (from `least` up).
 * @param recycleFull - seconds of each head from a pop at full power to ready (above 0); in proportion below it.
 * @param loss - stops lost between meter and film; below 0 where there is a gain.
 * @param step - stops between two settings (above 0).
 * @param mostPops - most pops of a plan (a whole number from 1 up).
 * @param pause - least seconds from a pop to the next (from 0).
 * @returns a plan for any heads, in reach or not: the miss of a head out of reach says by how much.
 */
export function popsPlan(
  readings: HeadValues,
  powers: HeadValues,
  targets: HeadValues,
  least: HeadValues,
  most: HeadValues,
  recycleFull: HeadValues,
  loss = 0,
  step = PLAN_STEP,
  mostPops = MOST_POPS,
  pause = 0,
): Result<Plan> {
  const read = readHeads({ readings, powers, targets, least, most, recycleFull }, loss, step);
  if (isFail(read)) return read;

  const limit = Math.round(mostPops);
  const on = read.filter((head) => head !== undefined);
  const pops = on.reduce((n, head) => Math.max(n, fewestPops(head, limit)), 0);
  const firings = read.map((head) => head && firing(head, pops, limit));
  const heads = firings.map((f): PlannedHead => (f ? planned(f, limit) : { pops: 0 }));
  const seconds = secondsOf(
    firings.filter((f) => f !== undefined),
    pause,
  );
  const reading = rootSumOfSquares(heads.flatMap((head) => head.reading ?? []));
  // numbers at the edge of what a computer holds end in NaN or Infinity
  const broken = [reading, seconds, ...heads.map(({ power = 0 }) => power)].map(answer).find(isFail);
  return broken ?? { heads, pops, reading, seconds };
}
