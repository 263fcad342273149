import { describe, expect, it } from 'vitest';
import {
  highestOfNoise,
  NEVER_BY_CHANCE,
  SURE_OF,
  WITHIN_CHANCE,
} from '../../../src/exposure/trace/noiseChance';

/** Share of Gaussian samples farther off than so many standard deviations, either way: its density, summed by Simpson's rule. */
function beyond(deviations: number): number {
  const steps = 10_000;
  const width = 12 / steps;
  const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  let sum = 0;
  for (let k = 0; k <= steps; k++)
    sum += (k === 0 || k === steps ? 1 : k % 2 === 1 ? 4 : 2) * density(deviations + k * width);
  return (2 * sum * width) / 3;
}

describe('how far noise goes by chance', () => {
  it.each([
    [WITHIN_CHANCE, 370],
    [SURE_OF, 16_000],
    [NEVER_BY_CHANCE, 500e6],
  ])('farther than %d standard deviations goes one sample in %d', (deviations, samples) =>
    expect(1 / beyond(deviations) / samples).toBeCloseTo(1, 1),
  );

  it('is √(2·ln n) at most, as a rule: of n samples less than one is expected beyond', () => {
    // ln 1,000,000 = 13.8155, and √27.631 = 5.2565
    expect(highestOfNoise(1e6)).toBeCloseTo(5.2565, 4);
    for (const count of [20, 1000, 1e6]) expect(count * beyond(highestOfNoise(count))).toBeLessThan(1);
  });
});
