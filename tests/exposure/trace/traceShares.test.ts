import { describe, expect, it } from 'vitest';
import { traceInside, traceTail } from '../../../src/exposure/trace/traceShares';
import { expectNear, value } from '../support';

describe('the light inside a duration, and still to come after it', () => {
  it('are worked by hand on a triangle of 1 s up and 3 s down', () => {
    // level² of the light lies outside, three quarters of that after it
    for (const level of [0.1, 0.25, 0.5, 0.9]) {
      expectNear(value(traceInside([0, 1, 4], [0, 5, 0], level)), 1 - level ** 2);
      expectNear(value(traceTail([0, 1, 4], [0, 5, 0], level)), 0.75 * level ** 2);
    }
  });

  it('are those at half the height unless told otherwise', () => {
    expectNear(value(traceInside([0, 1, 4], [0, 5, 0])), 0.75);
    expectNear(value(traceTail([0, 1, 4], [0, 5, 0])), 3 / 16);
  });

  it('are those above the base that is given', () => {
    expectNear(value(traceInside([0, 1, 4], [3, 8, 3], 0.5, 3)), 0.75);
    // 5, 10, 5, 0 above −5: of 7.5 + 22.5 + 2.5 the last comes after it
    expectNear(value(traceTail([0, 1, 4, 5], [0, 5, 0, -5], 0.5, -5)), 2.5 / 32.5);
  });

  it('are refused where the recording ends above the level, though it has come down to a tenth', () => {
    const never = {
      fail: 'no-answer',
      message: 'The trace never falls through 0.05 of its height: the recording ends too early.',
    };
    for (const share of [traceInside, traceTail])
      expect(share([0, 1, 2, 3], [0, 100, 50, 7], 0.05, 0)).toEqual(never);
  });
});
