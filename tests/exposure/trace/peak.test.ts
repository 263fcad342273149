import { describe, expect, it } from 'vitest';
import { topOf } from '../../../src/exposure/trace/peak';
import { signalOf } from './signals';

const row = (count: number, light: number): number[] => Array.from({ length: count }, () => light);
/** Light that falls from 1 at a sample with the square of the distance. */
const arch = (count: number, top: number, fall: number): number[] =>
  Array.from({ length: count }, (_, i) => 1 - fall * (i - top) ** 2);
/** What is found where nothing is fitted: the sample alone. */
const alone = (peak: number, height: number, doubt = 0) => ({
  height,
  doubt,
  at: peak,
  from: peak,
  to: peak,
  falls: 0,
});

describe('the top of a clean recording', () => {
  it('is that of the parabola through the highest sample and its neighbours, where samples are fine', () => {
    for (const [count, peak] of [
      [5, 2],
      [9, 2],
      [9, 6],
      [9, 4],
    ] as const)
      for (const off of [0.25, -0.25]) {
        const { height, ...rest } = topOf(signalOf(arch(count, peak + off, 1e-4)), peak, 0);
        expect(height).toBeCloseTo(1, 12);
        expect(rest).toMatchObject({ at: peak, from: peak, to: peak, falls: 0 });
      }
  });

  it('is the highest sample where fewer than two lie on one side of it', () => {
    for (const peak of [0, 1, 7, 8]) {
      const values = arch(9, peak + 0.25, 1e-4);
      expect(topOf(signalOf(values), peak, 0)).toEqual(alone(peak, values[peak] as number));
    }
  });

  it('is the highest sample where there is a corner on one side of it, or samples are coarse', () => {
    for (const corner of [2, 6]) {
      const values = arch(9, 4.25, 1e-4);
      values[corner] = (values[corner] as number) - 0.001;
      expect(topOf(signalOf(values), 4, 0)).toEqual(alone(4, values[4] as number));
    }
    const coarse = arch(9, 4.25, 1e-2);
    expect(topOf(signalOf(coarse), 4, 0)).toEqual(alone(4, coarse[4] as number));
  });

  it('is all of a flat one', () => {
    const top = topOf(signalOf([...row(9, -1), ...row(20, 0), ...row(9, -1)]), 9, 0);
    expect(top).toMatchObject({ height: 0, from: 9, to: 28 });
    expect(Math.abs(top.falls)).toBe(0);
  });
});

describe('the top of a noisy recording', () => {
  const NOISE = 2 ** -10;
  /** An arch with its highest sample a little higher, and what is found down to 23 times a noise of 0.001. */
  const archTop = (count: number, at: number) => {
    const values = arch(count, at, 1e-5);
    values[at] = 1 + 1e-6;
    return topOf(signalOf(values), at, 0.001);
  };

  it('is fitted to the samples down to 23 times the noise below the highest', () => {
    // 0.023 lies 1e-5 × 47.96² below the top
    const { height, doubt, falls, ...rest } = archTop(201, 100);
    expect(rest).toEqual({ at: 100, from: 53, to: 147 });
    // the middle of a quartic through n samples: (1 + 5/4 + 81/64) / n of their variance, by Legendre's polynomials
    expect(doubt).toBeCloseTo(0.001 * Math.sqrt((1 + 5 / 4 + 81 / 64) / 95), 6);
    expect(height).toBeCloseTo(1, 6);
    expect(falls).toBeCloseTo(1e-5 * 47 ** 2, 6);
  });

  it('falls by as much as to the lower end, where the recording begins or ends on it', () => {
    const early = archTop(201, 20);
    expect(early).toMatchObject({ at: 20, from: 0, to: 67 });
    const late = archTop(201, 180);
    expect(late).toMatchObject({ at: 180, from: 133, to: 200 });
    for (const { height, falls } of [early, late]) {
      expect(height).toBeCloseTo(1, 6);
      expect(falls).toBeCloseTo(1e-5 * 47 ** 2, 6);
    }
  });

  it('is not where the highest sample is, if that stands out by noise', () => {
    const values = arch(201, 100, 1e-5);
    values[110] = 1.004;
    const { at, height, from, to } = topOf(signalOf(values), 110, 0.001);
    // 0.019 lies 1e-5 × 43.6² below the top
    expect([from, to]).toEqual([57, 143]);
    expect(Math.abs(at - 100)).toBeLessThan(6);
    expect(Math.abs(height - 1)).toBeLessThan(3e-4);
  });

  it('takes in samples just 23 times the noise below, and none beyond', () => {
    const values = (by: number) => [...row(5, 0), ...row(20, 1 - by), 1, ...row(30, 1 - by), ...row(5, 0)];
    expect(topOf(signalOf(values(23 * NOISE)), 25, NOISE)).toMatchObject({ from: 5, to: 55 });
    const beyond = topOf(signalOf(values(23.1 * NOISE)), 25, NOISE);
    expect(beyond).toEqual(alone(25, 1, NOISE));
    const left = [...row(5, 0), ...row(20, 1 - 23 * NOISE), 1, ...row(30, 0.5)];
    expect(topOf(signalOf(left), 25, NOISE)).toMatchObject({ from: 5, to: 25 });
  });

  it('is fitted to fifteen samples or more', () => {
    const plateau = (before: number, after: number) =>
      topOf(
        signalOf([...row(40 - before, 0), ...row(before, 0.99), 1, ...row(after, 0.99), ...row(9, 0)]),
        40,
        0.001,
      );
    expect(plateau(7, 7)).toMatchObject({ from: 33, to: 47 });
    expect(plateau(14, 0)).toMatchObject({ from: 26, to: 40 });
    expect(plateau(7, 6)).toEqual(alone(40, 1, 0.001));
    expect(plateau(0, 13)).toEqual(alone(40, 1, 0.001));
  });

  it('is fitted farther down only where that tells the same height, within two standard deviations of each', () => {
    // A quartic through a step down by six times the noise, at a third or a fifth of the way from the middle to the ends, stands
    // 1.9 % or 34 % of the step below its top there (Legendre). Two standard deviations are 0.67, 0.39 and 0.30 times the noise.
    const stepped = (outer: number) =>
      topOf(
        signalOf([
          ...row(9, 0),
          ...row(outer, 0.99),
          ...row(15, 0.996),
          1,
          ...row(15, 0.996),
          ...row(outer, 0.99),
          ...row(9, 0),
        ]),
        9 + outer + 15,
        0.001,
      );
    expect(stepped(31)).toMatchObject({ from: 9, to: 9 + 92, at: 9 + 46 });
    expect(stepped(31).height).toBeCloseTo(0.996, 4);
    expect(stepped(62)).toMatchObject({ from: 9 + 62, to: 9 + 92, at: 9 + 77 });
  });

  it('is the highest sample where the fit lies above it', () => {
    const values = arch(201, 100.25, 1e-4);
    const { height, ...rest } = topOf(signalOf(values), 100, 0.001);
    expect(height).toBeCloseTo(1, 12);
    expect(rest).toEqual({ doubt: 0.001, at: 100, from: 100, to: 100, falls: 0 });
  });

  it('is the highest sample where all samples about it have the same time', () => {
    const values = [...row(10, 0), ...row(10, 0.999), 1, ...row(10, 0.999), ...row(10, 0)];
    const times = values.map((_, i) => Math.min(10, i) + Math.max(0, i - 30));
    expect(topOf(signalOf(values, { times }), 20, 0.001)).toEqual(alone(20, 1, 0.001));
  });

  it('ends with the last row that is not blank', () => {
    // Light lowers the values from 1, so that blank rows would be the brightest.
    const values = arch(100, 99, 1e-5).map((light) => 1.01 - light);
    values[99] = 0.01 - 1e-6;
    const signal = signalOf([...values, ...row(30, 0)], { sign: -1, base: -1 });
    expect(topOf(signal, 99, 0.001)).toMatchObject({ from: 52, to: 99, at: 99 });
  });
});
