import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { reciprocityTime } from '../../../src/exposure/duration/reciprocity';
import { expectNear, itKeepsItsRanges, value } from '../support';

const seconds = fc.double({ min: -3, max: 4, noNaN: true }).map((x) => 10 ** x);
const exponent = fc.double({ min: 1, max: 3, noNaN: true });

describe('exposure time of film that lags', () => {
  it('of 4 s with the exponent 1.5 is 8 s, worked by hand', () => {
    expectNear(value(reciprocityTime(4, 1.5)), 8);
  });

  it('starts at its threshold: 8 s from 2 s on is 2·4^1.5 = 16 s, worked by hand', () => {
    expectNear(value(reciprocityTime(8, 1.5, 2)), 16);
  });

  it('is the metered time up to and at the threshold, and with the exponent 1', () => {
    expect(reciprocityTime(0.5, 1.3)).toBe(0.5);
    expect(reciprocityTime(1, 1.3)).toBe(1);
    expect(reciprocityTime(10, 1.3, 10)).toBe(10);
    expectNear(value(reciprocityTime(30, 1)), 30);
  });

  it('is the metered time to the last digit below the threshold', () => {
    // 100·(0.9 / 100) is 0.9 and a rounding error
    expect(reciprocityTime(0.9, 1, 100)).toBe(0.9);
    expect(reciprocityTime(0.9, 1, 7)).toBe(0.9);
  });

  it('makes no jump at the threshold', () => {
    fc.assert(
      fc.property(seconds, exponent, (threshold, p) => {
        expectNear(value(reciprocityTime(threshold * (1 + 1e-9), p, threshold)), threshold, 4e-9);
      }),
      trials(211),
    );
  });

  it('is never shorter than the metered time, and the longer the higher the exponent', () => {
    fc.assert(
      fc.property(seconds, exponent, seconds, (t, p, threshold) => {
        const corrected = value(reciprocityTime(t, p, threshold));
        expect(corrected).toBeGreaterThanOrEqual(t * (1 - 1e-12));
        fc.pre(t > threshold * 1.01 && p < 2.9);
        expect(value(reciprocityTime(t, p + 0.1, threshold))).toBeGreaterThan(corrected);
        expect(value(reciprocityTime(t * 1.01, p, threshold))).toBeGreaterThan(corrected);
      }),
      trials(212),
    );
  });

  it('is never shorter than the metered time without a threshold either', () => {
    for (const t of [0.01, 0.1, 0.5, 1, 2, 30])
      expect(value(reciprocityTime(t, 1.31, 0)), `${t} s`).toBeGreaterThanOrEqual(t);
  });

  it('is k times as long when time and threshold are', () => {
    fc.assert(
      fc.property(seconds, exponent, seconds, seconds, (t, p, threshold, k) => {
        expectNear(
          value(reciprocityTime(t * k, p, threshold * k)),
          k * value(reciprocityTime(t, p, threshold)),
          1e-11,
        );
      }),
      trials(213),
    );
  });

  itKeepsItsRanges('RECIPROCITYTIME', {
    time: [10, 'above 0'],
    exponent: [1.3, 'exponent'],
    threshold: [1, 'from 0'],
  });
});
