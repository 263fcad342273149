import { describe, expect, it } from 'vitest';
import { caseNumbers } from '../../full';
import { type Choices, searchSteps } from '../../../src/exposure/balance/searchSteps';
import { random } from '../random';

const tenths = (count: number): number[] => Array.from({ length: count }, (_, k) => 2 ** (-k / 10));
const missOf = (heads: readonly Choices[], places: readonly number[]): number => {
  const points = heads[0]?.light.length ?? 0;
  const light = Array.from({ length: points }, (_, p) =>
    heads.reduce(
      (sum, head, h) => sum + (head.light[p] as number) * (head.shares[places[h] as number] as number),
      0,
    ),
  );
  return Math.max(...light.map((l) => Math.abs(Math.log2(l))));
};
const everySetting = (heads: readonly Choices[]): number[][] =>
  heads.reduce<number[][]>(
    (all, { shares }) => all.flatMap((places) => shares.map((_, k) => [...places, k])),
    [[]],
  );

describe('the search over all settings', () => {
  it('finds the best of all settings, tried one by one, from three heads to five', () => {
    for (const seed of caseNumbers(40)) {
      const draw = random(seed);
      const heads = Array.from({ length: 3 + (seed % 3) }, () => ({
        shares: tenths([20, 10, 6][seed % 3] as number),
        light: Array.from({ length: 1 + (seed % 5) }, () => draw() ** 2),
      }));
      const best = Math.min(...everySetting(heads).map((places) => missOf(heads, places)));
      const found = searchSteps(heads, best + 0.3);
      expect(found && missOf(heads, found), `case ${seed}`).toBeCloseTo(best, 8);
    }
  });

  it('finds nothing where nothing is better than what is known', () => {
    const heads = [{ shares: tenths(30), light: [0.9, 0.4] }];
    const best = Math.min(...everySetting(heads).map((places) => missOf(heads, places)));
    expect(searchSteps(heads, best)).toBeUndefined();
    expect(searchSteps(heads, best + 1e-6)).toHaveLength(1);
  });

  it('looks past no point that a head does not reach', () => {
    // the first head lights the first point alone: by two, one and no stops
    const heads = [
      { shares: [1, 0.5, 0.25], light: [4, 0] },
      { shares: [1, 0.5], light: [0, 1] },
    ];
    expect(searchSteps(heads, 0.9)).toEqual([2, 0]);
    expect(searchSteps([{ shares: [1], light: [1, 0] }], 5)).toBeUndefined();
  });

  it('ends where there are more settings than it looks at', () => {
    const heads = Array.from({ length: 12 }, (__, h) => ({
      shares: tenths(60),
      light: Array.from({ length: 25 }, (_, p) => (1 + ((h * 7 + p * 3) % 11)) / 60),
    }));
    const found = searchSteps(heads, 3);
    expect(found === undefined || missOf(heads, found) < 3).toBe(true);
  });
});
