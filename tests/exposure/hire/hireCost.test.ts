import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { hireCost, WEEK_DAYS } from '../../../src/exposure/hire/hireCost';
import { expectNear, itKeepsItsRanges, value } from '../support';

const days = fc.integer({ min: 1, max: 120 });

describe('cost of hire', () => {
  it.each([
    [1, 1],
    [2, 2],
    [3, 3],
    [4, 3],
    [7, 3],
    [8, 4],
    [9, 5],
    [10, 6],
    [13, 6],
    [14, 6],
    [15, 7],
    [21, 9],
    [28, 12],
  ])('of %i days is %i day rates, worked by hand', (hired, rates) => {
    expect(hireCost(80, hired)).toBe(80 * rates);
  });

  it('caps the week at three days unless told otherwise, and not at all at seven', () => {
    expect(WEEK_DAYS).toBe(3);
    expect(hireCost(80, 7, 4)).toBe(320);
    expect(hireCost(80, 17, 7)).toBe(80 * 17);
  });

  it('counts half a day as half, and less than a day in the week as that', () => {
    expect(hireCost(80, 0.5)).toBe(40);
    expect(hireCost(80, 7.5)).toBe(280);
    expect(hireCost(80, 5, 0.5)).toBe(40);
  });

  it('takes exact weeks as such, rounding error included', () => {
    for (const weeks of [1, 2, 10, 52])
      for (const off of [1, 1 + 1e-13, 1 - 1e-13])
        expectNear(value(hireCost(80, 7 * weeks * off)), 240 * weeks, 1e-9);
  });

  it('of nothing a day is nothing', () => {
    expect(hireCost(0, 10)).toBe(0);
  });

  it('never falls with another day, never exceeds every day paid, and a week more costs a week', () => {
    fc.assert(
      fc.property(days, fc.double({ min: 0.5, max: 7, noNaN: true }), (n, week) => {
        const cost = value(hireCost(1, n, week));
        expect(value(hireCost(1, n + 1, week))).toBeGreaterThanOrEqual(cost - 1e-12);
        expect(cost).toBeLessThanOrEqual(n + 1e-12);
        expectNear(value(hireCost(1, n + 7, week)), cost + week);
        expectNear(value(hireCost(80, n, week)), 80 * cost);
      }),
      trials(291),
    );
  });

  itKeepsItsRanges('HIRECOST', {
    dayRate: [80, 'from 0'],
    days: [10, 'above 0'],
    daysPerWeek: [3, 'week'],
  });
});
