import { describe, expect, it } from 'vitest';
import { quiet } from '../../../src/exposure/trace/quietLevel';
import { expectNear } from '../support';
import { noiseFrom } from './shapes';
import { signalOf } from './signals';

/** The quiet level of a list that stands between two other samples. */
const within = (...values: readonly number[]) =>
  quiet(signalOf([4.01, ...values, 4.02]), 1, values.length + 1);

describe('a stretch without light', () => {
  it('has the mean of what lies within four standard deviations, told from the median deviation', () => {
    // median 5 and median deviation 2, so that 4 × 1.4826 × 2 = 11.86 are allowed
    const { level, spread, count } = within(3, 7, 5, 5, 3, 7, 5 + 11.8, 5 - 11.9, 3, 7);
    expect(count).toBe(9);
    expectNear(level, 5 + 11.8 / 9);
    expectNear(spread, Math.sqrt((6 * 4 + 11.8 ** 2) / 9 - (11.8 / 9) ** 2));
  });

  it('has as its spread the standard deviation of one sample', () => {
    const next = noiseFrom(5);
    const { level, spread, count } = quiet(
      signalOf(Float64Array.from({ length: 4000 }, () => 7 + 0.25 * next())),
      0,
      4000,
    );
    expectNear(level, 7, (3 * 0.25) / Math.sqrt(4000) / 7);
    expectNear(spread, 0.25, 0.03);
    expect(count).toBeGreaterThan(3980);
  });

  it('is not moved by a smaller flash in it', () => {
    const next = noiseFrom(6);
    const values = Float64Array.from({ length: 4000 }, () => 7 + 0.25 * next());
    const clean = quiet(signalOf(values), 0, 4000);
    const { level, spread } = quiet(
      signalOf(values.map((x, i) => (i > 900 && i < 1300 ? x + 20 : x))),
      0,
      4000,
    );
    expect(Math.abs(level - clean.level)).toBeLessThan(0.01);
    expectNear(spread, clean.spread, 0.02);
  });

  it('has the mean of the steps of a coarse recorder, where most samples lie on one of them', () => {
    // steps of 1/4 about 4: one below and two above it, and a flash that is none of them
    for (const values of [
      [4, 4, 9, 4.25, 4, 3.75, 4, 4.25, 4, 4.75, 4, 4],
      [4, 3.75, 4, 4.25, 4, 4.25, 4, 4.75, 9, 4, 4, 4],
    ]) {
      const { level, spread, count } = within(...values);
      expect(count).toBe(10);
      expectNear(level, 4 + 0.25 / 10);
      expectNear(spread, Math.sqrt((3 * 0.25 ** 2) / 10 - (0.25 / 10) ** 2));
    }
  });

  it('has no spread where all samples are alike', () => {
    expect(within(4, 4, 4, 4)).toEqual({ level: 4, spread: 0, count: 4 });
  });
});
