import { describe, expect, it } from 'vitest';
import { caseNumbers } from '../../../full';
import { besideBruteForce } from './agreement';
import { smallJob } from './jobs';
import { compareKeys, type Keys } from './keys';

const CASES = caseNumbers(12_000);

// every-plan, POPSPLAN: small jobs, each beside all that its heads may do
describe('of all plans, by trying every energy with every number of pops', () => {
  it('none is better than ours, on thousands of small jobs in reach and out of reach', () => {
    const wrong: string[] = [];
    let [inReach, outOfReach, switchedOff] = [0, 0, 0];
    for (const seed of CASES) {
      const found = besideBruteForce(smallJob(seed));
      if (found.wrong !== undefined) wrong.push(`job ${seed}: ${found.wrong}`);
      if (!found.keys) continue;
      if (found.keys.beyond.length > 0) outOfReach++;
      else inReach++;
      if (found.keys.off > 0) switchedOff++;
    }
    expect(wrong).toEqual([]);
    expect(Math.min(inReach, outOfReach, switchedOff)).toBeGreaterThan(CASES.length / 10);
  });
});

describe('plans are ranked', () => {
  const keys: Keys = { beyond: [0.5, 0.3], off: 1, pops: 4, worst: 0.5, sum: 0.8, seconds: 10 };
  it.each<[string, Partial<Keys>]>([
    ['by the worst head out of reach before all', { beyond: [0.4, 0.4], off: 2 }],
    ['by the next worst head out of reach before the heads switched off', { beyond: [0.5, 0.2], off: 2 }],
    ['by fewer heads out of reach', { beyond: [0.5], off: 2 }],
    ['by heads switched off before pops', { off: 0, pops: 5 }],
    ['by pops before the worst miss', { pops: 3, worst: 0.6 }],
    ['by the worst miss before the sum', { worst: 0.4, sum: 0.9 }],
    ['by the sum before the time', { sum: 0.7, seconds: 11 }],
    ['by the time in the end', { seconds: 9 }],
  ])('%s', (_, better) => {
    expect(compareKeys({ ...keys, ...better }, keys)).toBeLessThan(0);
    expect(compareKeys(keys, { ...keys, ...better })).toBeGreaterThan(0);
    expect(compareKeys(keys, keys)).toBe(0);
  });
});
