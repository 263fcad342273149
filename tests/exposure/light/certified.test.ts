import { describe, expect, it } from 'vitest';
import { lightMean, lightRepeat } from '../../../src/exposure/light/repeats';
import { value } from '../support';

/**
 * Data whose mean and deviation are certified. A reading is an f-number and its stops are 2·log2 N, so the readings
 * 2^(x/2) have the data x as their stops. No f-number holds a million stops: what is certified at 1000000.2 and at
 * 10000000.2 is shifted down to 2000.2, as high as numbers reach, which changes the mean by the shift and leaves the deviation.
 */
const readings = (middle: number): number[] =>
  Array.from({ length: 1001 }, (_, i) => 2 ** ((middle + (i === 0 ? 0 : i % 2 === 1 ? -0.1 : 0.1)) / 2));
const meanInStops = (list: readonly number[]): number => 2 * Math.log2(value(lightMean(list)));

describe('certified statistics of 1001 readings', () => {
  // certified-statistics, LIGHTMEAN: NumAcc2, mean 1.2
  it('NumAcc2 has the mean 1.2', () => {
    expect(meanInStops(readings(1.2))).toBeCloseTo(1.2, 12);
  });

  // certified-statistics, LIGHTREPEAT: NumAcc2, standard deviation 0.1
  it('NumAcc2 has the standard deviation 0.1', () => {
    expect(value(lightRepeat(readings(1.2)))).toBeCloseTo(0.1, 12);
  });

  // certified-statistics, LIGHTMEAN: NumAcc3, mean 1000000.2, shifted
  it('NumAcc3, shifted to 2000.2, has that mean', () => {
    expect(meanInStops(readings(2000.2))).toBeCloseTo(2000.2, 9);
  });

  // certified-statistics, LIGHTREPEAT: NumAcc3, standard deviation 0.1
  it('NumAcc3, shifted to 2000.2, has the standard deviation 0.1', () => {
    expect(value(lightRepeat(readings(2000.2)))).toBeCloseTo(0.1, 11);
  });
});
