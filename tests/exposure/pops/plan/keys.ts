import type { Plan } from '../../../../src/exposure/pops/plan/popsPlan';
import { type Job, toleranceOf } from './jobs';

/** What plans are ranked by, in this order. */
export interface Keys {
  /** Misses of the heads out of reach, the worst first. */
  readonly beyond: readonly number[];
  /** Heads that are switched off before the last pop. */
  readonly off: number;
  readonly pops: number;
  readonly worst: number;
  readonly sum: number;
  readonly seconds: number;
}

/** How one head is used: its energy in Ws and its pops. */
export interface Use {
  readonly power: number;
  readonly pops: number;
}

export const SLACK = 1e-9;

/** Stops over the target, from the light that falls: pops, energy and reading as they stand in the cells. */
export function missed(job: Job, head: number, { power, pops }: Use): number {
  const light = pops * (power / (job.powers[head] as number)) * (job.readings[head] as number) ** 2;
  return Math.log2(light / (job.targets[head] as number) ** 2) - job.loss;
}

/** Seconds to ready: in proportion to the energy, or between what it takes at least and at full power. */
export function recycle(job: Job, head: number, power: number): number {
  const [full, least] = [job.recycleFull[head] as number, job.recycleLeast[head]];
  const [low, high] = [job.least[head] as number, job.most[head] as number];
  if (least === undefined) return (full * power) / high;
  if (power <= low) return power === high ? full : least;
  return least + ((power - low) / (high - low)) * (full - least);
}

/** The keys of a plan, from what each head does (undefined where it is off), pop by pop. */
export function keysOf(job: Job, uses: readonly (Use | undefined)[]): Keys {
  let pops = 0;
  for (const use of uses) if (use) pops = Math.max(pops, use.pops);
  const misses: number[] = [];
  const out: number[] = [];
  let off = 0;
  for (const [i, use] of uses.entries()) {
    if (!use) continue;
    const miss = Math.abs(missed(job, i, use));
    misses.push(miss);
    if (miss > toleranceOf(job, i) + SLACK) out.push(miss);
    if (use.pops < pops) off++;
  }
  let seconds = 0;
  for (let pop = 1; pop <= pops; pop++) {
    let longest = job.pause;
    for (const [i, use] of uses.entries())
      if (use && use.pops >= pop) longest = Math.max(longest, recycle(job, i, use.power));
    seconds += longest;
  }
  return {
    beyond: out.sort((a, b) => b - a),
    off,
    pops,
    worst: misses.reduce((a, b) => Math.max(a, b), 0),
    sum: misses.reduce((a, b) => a + b, 0),
    seconds,
  };
}

export const usesOf = (plan: Plan): readonly (Use | undefined)[] =>
  plan.heads.map(({ power, pops }) => (power === undefined ? undefined : { power, pops }));

/** Below 0 where a ranks before b, above 0 where it ranks after, 0 where no key tells them apart by more than the slack. */
export function compareKeys(a: Keys, b: Keys): number {
  const differ = (x: number, y: number): number => (Math.abs(x - y) <= SLACK ? 0 : x - y);
  for (let i = 0; i < Math.max(a.beyond.length, b.beyond.length); i++) {
    const first = differ(a.beyond[i] ?? 0, b.beyond[i] ?? 0);
    if (first !== 0) return first;
  }
  return (
    a.off - b.off ||
    a.pops - b.pops ||
    differ(a.worst, b.worst) ||
    differ(a.sum, b.sum) ||
    differ(a.seconds, b.seconds)
  );
}
