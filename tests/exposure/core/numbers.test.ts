import { describe, expect, it } from 'vitest';
import {
  ceilSteady,
  floorSteady,
  isWhole,
  log2Ratio,
  roundSteady,
  roundStops,
  spoken,
  spokenStops,
} from '../../../src/exposure/core/numbers';

describe('rounding with slack', () => {
  it('takes what rounding error leaves above a whole number for that number', () => {
    expect(ceilSteady(Math.SQRT2 ** 2)).toBe(2);
    expect(ceilSteady(2 + 1e-10)).toBe(2);
    expect(floorSteady(2 - 1e-10)).toBe(2);
  });

  it('takes a real excess for what it is', () => {
    expect(ceilSteady(2 + 1e-6)).toBe(3);
    expect(floorSteady(2 - 1e-6)).toBe(1);
  });

  it('sends a tie to the higher, below 0 as well', () => {
    expect(roundSteady(2.5)).toBe(3);
    expect(roundSteady(-2.5)).toBe(-2);
    expect(roundSteady(2.5 - 1e-10)).toBe(3);
    expect(roundSteady(2.5 - 1e-6)).toBe(2);
  });

  it('never gives a negative nought', () => {
    for (const x of [ceilSteady(-0.4), floorSteady(-0), roundSteady(-0.2), roundStops(-1e-15)])
      expect(Object.is(x, 0)).toBe(true);
  });

  it('gives a large number as much slack as it has digits', () => {
    expect([ceilSteady(1e6 + 1e-4), ceilSteady(1e6 + 1e-2)]).toEqual([1e6, 1e6 + 1]);
    expect([floorSteady(1e6 - 1e-4), floorSteady(1e6 - 1e-2)]).toEqual([1e6, 1e6 - 1]);
    expect([isWhole(1e6 + 1e-4), isWhole(1e6 + 1e-2), isWhole(1e-10)]).toEqual([true, false, true]);
  });

  it('knows a whole number within the slack', () => {
    expect(isWhole(3 + 1e-10)).toBe(true);
    expect(isWhole(3.001)).toBe(false);
  });
});

describe('stops', () => {
  it('are kept to 1e-12', () => {
    expect(roundStops(1 / 3)).toBe(0.333333333333);
    expect(roundStops(0.9999999999999)).toBe(1);
  });

  it('keep their digits where a quotient would lose them: worked by hand, ln(1 + x) = x for a small x', () => {
    const x = 2 ** -38 / 3;
    expect(log2Ratio(3 + 2 ** -38, 3) / (x / Math.LN2)).toBeCloseTo(1, 10);
    expect(log2Ratio(3, 3 + 2 ** -38) / (-x / Math.LN2)).toBeCloseTo(1, 10);
  });

  it('span numbers whose quotient no cell can hold', () => {
    expect(log2Ratio(2 ** 1000, 2 ** -1000)).toBe(2000);
    expect(log2Ratio(2 ** -1000, 2 ** 1000)).toBe(-2000);
    // to the last digit, where the logarithms of both would lose three
    expect(log2Ratio(3 * 2 ** 900, 2 ** 900)).toBe(Math.log2(3));
  });
});

describe('a number in a sentence', () => {
  it('of stops is one stop up to what is said as 1', () => {
    expect([0.4, 1, 1 + 1e-15, 1.04, 1.06, 2, -1.004, -1.6].map(spokenStops)).toEqual([
      '0.4 stop',
      '1 stop',
      '1 stop',
      '1 stop',
      '1.1 stops',
      '2 stops',
      '-1 stop',
      '-1.6 stops',
    ]);
  });

  it('has four digits or as many as are asked for, and no trailing noughts', () => {
    expect(spoken(11.313708)).toBe('11.31');
    expect(spoken(0.5)).toBe('0.5');
    expect(spoken(1.4999, 2)).toBe('1.5');
  });
});
