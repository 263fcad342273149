import { describe, expect, it } from 'vitest';
import { caseNumbers } from '../../../full';
import { besideIntegerProgramme } from './agreement';
import { loadSolver } from './integerProgramme';
import { type Job, largeJob } from './jobs';

const jobs = (count: number, make: (seed: number) => Job): Job[] =>
  caseNumbers(count).map((seed) => make(seed));

/** HiGHS, a solver of mixed-integer programmes: https://highs.dev */
describe('an integer programme, solved stage by stage', { timeout: 120_000 }, async () => {
  const solver = await loadSolver();
  const compared = (list: readonly Job[]): { wrong: string[]; inReach: number; switchedOff: number } => {
    const found = list.map((job) => besideIntegerProgramme(solver, job));
    return {
      wrong: found.flatMap(({ wrong }, i) => (wrong === undefined ? [] : [`job ${i + 1}: ${wrong}`])),
      inReach: found.filter(({ keys }) => keys?.beyond.length === 0).length,
      switchedOff: found.filter(({ keys }) => keys && keys.off > 0).length,
    };
  };

  it('agrees on heads off, pops, worst miss, sum of misses and time for six to twelve heads', () => {
    const list = jobs(24, largeJob);
    const { wrong, inReach, switchedOff } = compared(list);
    expect(wrong).toEqual([]);
    expect(inReach).toBe(list.length);
    expect(switchedOff).toBeGreaterThan(list.length / 2);
  });

  it('agrees for twelve heads and up to 99 pops', () => {
    const list = jobs(8, (seed) => largeJob(seed, { heads: 12, mostPops: 99 }));
    const { wrong, inReach } = compared(list);
    expect(wrong).toEqual([]);
    expect(inReach).toBe(list.length);
  });

  it('proves that there is no plan where we find none, and that the worst miss cannot be smaller', () => {
    const strays = jobs(32, (seed) => largeJob(seed + 100, { mostPops: 12, strays: 0.1 }));
    const { wrong, inReach } = compared(strays);
    expect(wrong).toEqual([]);
    // about half of them are in reach
    expect(inReach).toBeGreaterThan(strays.length / 8);
    expect(strays.length - inReach).toBeGreaterThan(strays.length / 8);
  });
});
