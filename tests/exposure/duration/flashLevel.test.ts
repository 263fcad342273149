import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { flashLevel } from '../../../src/exposure/duration/flashLevel';
import { expectNear, itKeepsItsRanges, value } from '../support';

const positive = fc.double({ min: -2, max: 2, noNaN: true }).map((x) => 10 ** x);
const level = fc.double({ min: 0.05, max: 0.95, noNaN: true });

describe('a duration at another level', () => {
  it('of an exponential decay at a quarter of the peak is twice that at half, worked by hand', () => {
    expectNear(value(flashLevel(0.001, 0.5, 0.25)), 0.002);
    expectNear(value(flashLevel(0.001, 0.1, 0.01)), 0.002);
  });

  it('is the same at the same level, and comes back', () => {
    expect(flashLevel(0.001, 0.3, 0.3)).toBe(0.001);
    fc.assert(
      fc.property(positive, level, level, (t, a, b) => {
        expectNear(value(flashLevel(value(flashLevel(t, a, b)), b, a)), t);
      }),
      trials(92),
    );
  });

  it('is longer the lower the level', () => {
    fc.assert(
      fc.property(level, level, (a, b) => {
        fc.pre(a < b - 1e-6);
        expect(value(flashLevel(1, 0.5, a))).toBeGreaterThan(value(flashLevel(1, 0.5, b)));
      }),
      trials(93),
    );
  });

  itKeepsItsRanges('FLASHLEVEL', { duration: [0.001, 'above 0'], from: [0.5, 'level'], to: [0.1, 'level'] });
});
