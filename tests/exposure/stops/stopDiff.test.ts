import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { SCALES } from '../../../src/exposure/stops/scales';
import { stopDiff } from '../../../src/exposure/stops/stopDiff';
import { stopShift } from '../../../src/exposure/stops/stopShift';
import { expectNear, itKeepsItsRanges, refusal, value } from '../support';

const decades = fc.double({ min: -9, max: 9, noNaN: true }).map((x) => 10 ** x);
const scale = fc.constantFrom(...SCALES);

describe('stops from one value up to another', () => {
  it('are one for twice the time, speed, energy or factor, and two for twice the f-number', () => {
    for (const s of SCALES) expect(stopDiff(3, 6, s)).toBe(s === 'aperture' ? 2 : 1);
  });

  it('are none from a value to itself, and change sign when they are counted the other way', () => {
    fc.assert(
      fc.property(decades, decades, scale, (a, b, s) => {
        expect(stopDiff(a, a, s)).toBe(0);
        expect(value(stopDiff(a, b, s)) + value(stopDiff(b, a, s))).toBeCloseTo(0, 11);
      }),
      trials(11),
    );
  });

  it('add up along the way', () => {
    fc.assert(
      fc.property(decades, decades, decades, scale, (a, b, c, s) => {
        const whole = value(stopDiff(a, c, s));
        expect(value(stopDiff(a, b, s)) + value(stopDiff(b, c, s)) - whole).toBeCloseTo(0, 11);
      }),
      trials(12),
    );
  });

  it('do not depend on the unit', () => {
    fc.assert(
      fc.property(decades, decades, fc.integer({ min: -20, max: 20 }), scale, (a, b, k, s) => {
        expect(stopDiff(a * 2 ** k, b * 2 ** k, s)).toBe(stopDiff(a, b, s));
      }),
      trials(13),
    );
  });

  it('are undone by shifting the value', () => {
    fc.assert(
      fc.property(decades, decades, scale, (a, b, s) => {
        expectNear(value(stopShift(a, value(stopDiff(a, b, s)), s)), b);
      }),
      trials(14),
    );
  });

  it('keep their digits where the values are nearly equal: worked by hand, 2·x/ln 2 for f-numbers x apart', () => {
    expect(stopDiff(8, 8 + 2 ** -20)).toBeCloseTo((2 * 2 ** -23) / Math.LN2, 12);
    expect(value(stopDiff(8, 8 + 2 ** -20))).toBeGreaterThan(0);
  });

  itKeepsItsRanges('STOPDIFF', { from: [8, 'above 0'], to: [11, 'above 0'] });
});

describe('a value shifted by stops', () => {
  it('doubles in one stop, the f-number in two', () => {
    for (const s of SCALES) expect(stopShift(3, s === 'aperture' ? 2 : 1, s)).toBe(6);
  });

  it('comes back when the stops are taken away again', () => {
    const stops = fc.double({ min: -30, max: 30, noNaN: true });
    fc.assert(
      fc.property(decades, stops, scale, (a, n, s) => {
        expectNear(value(stopShift(value(stopShift(a, n, s)), -n, s)), a);
      }),
      trials(15),
    );
  });

  it('is refused where nothing, or more than a cell holds, would be left', () => {
    const { fail, message } = refusal(stopShift(1, -5000, 'time'));
    expect(fail).toBe('domain');
    expect(message).toContain('stops must leave something over: -5000 stops');
    expect(stopShift(1, 5000, 'time')).toMatchObject({ fail: 'domain' });
  });

  it('is found where it fits a cell, though the factor alone does not', () => {
    expect(stopShift(2 ** -600, 1200, 'time')).toBe(2 ** 600);
    expect(stopShift(2 ** 600, -1200, 'time')).toBe(2 ** -600);
  });

  itKeepsItsRanges('STOPSHIFT', { value: [8, 'above 0'], stops: [1, 'any'] });
});
