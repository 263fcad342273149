import { type Job, toleranceOf } from './jobs';
import { compareKeys, type Keys, keysOf, missed, SLACK, type Use } from './keys';

/** All energies that a head can be set to, counted down from full power. */
export function settings(job: Job, head: number): number[] {
  const most = job.most[head] as number;
  const step = job.step[head] as number;
  const span = Math.log2(most / (job.least[head] as number)) / step;
  const count = Math.floor(span + 0.5 + SLACK);
  return Array.from({ length: count + 1 }, (_, k) => most * 2 ** (-k * step));
}

/**
 * All that one head may do in a plan of so many pops, found by trying every energy with every number of pops.
 * It fires on all pops; only where its least power is too much for all, and it may be switched off, on the fewest that fit
 * with any energy, or, where none does, on the fewest of those that come nearest.
 */
export function allowedUses(job: Job, head: number, planPops: number): Use[] {
  const powers = settings(job, head);
  const all = Array.from({ length: planPops }, (_, m) =>
    powers.map((power) => ({ power, pops: m + 1 })),
  ).flat();
  const off = (use: Use): number => Math.abs(missed(job, head, use));
  const fit = (use: Use): boolean => off(use) <= toleranceOf(job, head) + SLACK;
  const throughout = all.filter((use) => use.pops === planPops);
  if (throughout.some(fit)) return throughout.filter(fit);
  const least = missed(job, head, throughout.at(-1) as Use);
  if (least <= toleranceOf(job, head) + SLACK || !job.switchable[head]) return throughout;
  const fitting = all.filter(fit);
  if (fitting.length > 0) {
    const fewest = Math.min(...fitting.map((use) => use.pops));
    return fitting.filter((use) => use.pops === fewest);
  }
  const best = Math.min(...all.map(off));
  const fewest = Math.min(...all.filter((use) => off(use) <= best + SLACK).map((use) => use.pops));
  return all.filter((use) => use.pops === fewest);
}

const isOn = (job: Job, head: number): boolean =>
  job.readings[head] !== undefined && job.targets[head] !== undefined;

/** Whether each head does what it may in a plan of so many pops. */
export const isAllowed = (job: Job, uses: readonly (Use | undefined)[], planPops: number): boolean =>
  uses.every((use, i) =>
    use && isOn(job, i)
      ? allowedUses(job, i, planPops).some(
          ({ power, pops }) => pops === use.pops && Math.abs(Math.log2(power / use.power)) <= SLACK,
        )
      : !use && !isOn(job, i),
  );

/** The keys of the best plan: every number of pops, and for each of them every mixture of what the heads may do. */
export function bruteForce(job: Job): Keys {
  let best: Keys | undefined;
  for (let planPops = 1; planPops <= job.mostPops; planPops++) {
    const choices = job.readings.map((_, i) => (isOn(job, i) ? allowedUses(job, i, planPops) : [undefined]));
    const place = choices.map(() => 0);
    for (;;) {
      const uses = choices.map((of, i) => of[place[i] as number]);
      // some head fires on every pop; a job without heads has a plan of none
      const isWhole = uses.some((use) => use?.pops === planPops) || uses.every((use) => !use);
      const keys = keysOf(job, uses);
      if (isWhole && (!best || compareKeys(keys, best) < 0)) best = keys;
      let turn = 0;
      while (turn < place.length && place[turn] === (choices[turn] as unknown[]).length - 1)
        place[turn++] = 0;
      if (turn === place.length) break;
      place[turn] = (place[turn] as number) + 1;
    }
  }
  return best as Keys;
}
