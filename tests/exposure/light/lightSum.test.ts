import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { lightMinus } from '../../../src/exposure/light/lightMinus';
import { lightSum } from '../../../src/exposure/light/lightSum';
import { expectNear, itKeepsItsRanges, refusal, value } from '../support';

const reading = fc.double({ min: -3, max: 3, noNaN: true }).map((x) => 10 ** x);

describe('lights together', () => {
  it('read the longest side of a right angle: 3 and 4 make 5, 5 and 12 make 13', () => {
    expectNear(value(lightSum([3, 4])), 5);
    expectNear(value(lightSum([5, 12])), 13);
  });

  it('read one stop more for each doubling of equal lights', () => {
    for (let n = 0; n < 8; n++)
      expectNear(value(lightSum(Array.from({ length: 2 ** n }, () => 8))), 8 * 2 ** (n / 2));
  });

  it('read as the one light where there is but one', () => {
    expect(lightSum([8])).toBe(8);
  });

  it('read more than the strongest of them, and k times as much where each reads k times as much', () => {
    fc.assert(
      fc.property(fc.array(reading, { minLength: 2, maxLength: 9 }), reading, (list, k) => {
        expect(value(lightSum(list))).toBeGreaterThanOrEqual(Math.max(...list));
        expectNear(value(lightSum(list.map((n) => n * k))), k * value(lightSum(list)));
      }),
      trials(21),
    );
  });

  it('add up where the squares would be too large or too small for a number', () => {
    expectNear(value(lightSum([3e200, 4e200])), 5e200);
    expectNear(value(lightSum([3e-200, 4e-200])), 5e-200);
  });

  it('do not change the list they are given', () => {
    const list = Object.freeze([16, 11, 8]);
    expect(() => lightSum(list)).not.toThrow();
  });

  itKeepsItsRanges('LIGHTSUM', { readings: [[16, 11, 8], 'above 0'] });
});

describe('light with a part taken away', () => {
  it('is what the part was added to', () => {
    fc.assert(
      fc.property(reading, reading, (a, b) => {
        const both = value(lightSum([a, b]));
        fc.pre(a / both > 1e-3 && b / both < 1 - 1e-7);
        // The difference of nearly equal squares magnifies the rounding of the sum by (both / a)².
        expectNear(value(lightMinus(both, b)), a, 1e-15 * (both / a) ** 2 * 8);
      }),
      trials(22),
    );
  });

  it('is 4 where 3 are taken from 5', () => {
    expectNear(value(lightMinus(5, 3)), 4);
  });

  it('keeps its digits where the part is nearly the whole: worked by hand, √((a − b)(a + b))', () => {
    const part = 8 - 2 ** -24;
    expectNear(value(lightMinus(8, part)), 2 ** -12 * Math.sqrt(16 - 2 ** -24), 1e-15);
  });

  it('is refused where the part is as much as the total, and where it is more by so many stops', () => {
    const same = refusal(lightMinus(8, 8));
    expect(same.fail).toBe('no-answer');
    expect(same.message).toContain('as much as');
    expect(refusal(lightMinus(8, 8 * Math.SQRT2)).message).toContain('1 stop more than');
    const more = refusal(lightMinus(8, 16));
    expect(more.fail).toBe('no-answer');
    expect(more.message).toContain('2 stop');
  });

  it('is refused where the total is above the part by rounding error alone', () => {
    expect(refusal(lightMinus(8 * (1 + 1e-12), 8)).message).toContain('as much as');
  });

  itKeepsItsRanges('LIGHTMINUS', { total: [11, 'above 0'], part: [8, 'above 0'] });
});
