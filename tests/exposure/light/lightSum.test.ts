import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { lightMinus } from '../../../src/exposure/light/lightMinus';
import { lightSum } from '../../../src/exposure/light/lightSum';
import { lightMinusRange } from '../../../src/exposure/light/lightMinusRange';
import { answerOf, expectNear, itKeepsItsRanges, refusal, value } from '../support';

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

  it('may come in several lists, some of them empty: 3, 4 and 12 make 13', () => {
    expectNear(value(lightSum([3], [], [4, 12])), 13);
    expect(refusal(lightSum([], [])).message).toContain('readings is blank');
  });

  it('are missing where there is none', () => {
    expect(refusal(lightSum([]))).toEqual({
      fail: 'unreadable',
      message: 'readings is blank: give at least one.',
    });
  });

  it('are told in up to ten cells or ranges of any length, and blank ones are left out', () => {
    const cells = ['3 exact', '4 exact', null, '', [['12 exact'], [null]], 0, [['84 exact', '13 exact']], 'none', undefined, '5 exact']; // prettier-ignore
    // 9 + 16 + 144 + 7056 + 169 + 25
    expect(answerOf('LIGHTSUM', ...cells)).toBeCloseTo(Math.sqrt(7419), 11);
    expect(answerOf('LIGHTSUM', ...Array.from({ length: 10 }, () => '1 exact'))).toBeCloseTo(
      Math.sqrt(10),
      12,
    );
    expect(answerOf('LIGHTSUM', ...Array.from({ length: 11 }, () => 8))).toMatchObject({
      error: '#VALUE!',
      message: 'LIGHTSUM takes 1 to 10 values, not 11.',
    });
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

describe('what a meter leaves open of a part taken away', () => {
  const three = (...given: Parameters<typeof lightMinusRange>): number[] =>
    lightMinusRange(...given).map((x) => value(x));

  it('is anything from nothing to f/6.5 where f/16 and two tenths go from f/16 and three: worked by hand', () => {
    // 2^8.3 − 2^8.2 = 315.17 − 294.07 = 21.11; with the readings half a tenth off, 326.29 − 284.05 = 42.24, or 2^8.25 − 2^8.25
    expect(answerOf('LIGHTMINUSRANGE', 'f/16+0.3', 'f/16+0.2')).toEqual([
      [0, expect.closeTo(4.594, 3), expect.closeTo(6.499, 3)],
    ]);
  });

  it('turns on the step: a whole stop turns 25 − 1 into 12.5 − 2 and 50 − 0.5 with two stops of it, worked by hand', () => {
    expect(three(5, 1, 2)).toEqual(
      [12.5 - 2, 24, 50 - 0.5].map((light) => expect.closeTo(Math.sqrt(light), 12)),
    );
    for (const exact of three(5, 3, 0)) expectNear(exact, 4);
    expect(three(5, 3)).toEqual(three(5, 3, 0.1));
  });

  it('holds what is left between the least and the most, whichever way the readings were rounded', () => {
    const stops = fc.double({ min: 0.2, max: 8, noNaN: true });
    const off = fc.double({ min: -0.05, max: 0.05, noNaN: true });
    fc.assert(
      fc.property(reading, stops, off, off, (part, over, a, b) => {
        const total = part * 2 ** (over / 2);
        const [least, likely, most] = three(total, part);
        const truly = value(lightMinus(total * 2 ** (a / 2), part * 2 ** (b / 2)));
        expect(truly).toBeGreaterThanOrEqual((least as number) * (1 - 1e-9));
        expect(truly).toBeLessThanOrEqual((most as number) * (1 + 1e-9));
        expectNear(likely as number, value(lightMinus(total, part)));
      }),
      trials(28),
    );
  });

  it('is no light where the part is as much as the total, and refused only where even the most is none', () => {
    const [least, likely, most] = lightMinusRange(8, 8);
    expect([least, likely]).toEqual([0, 0]);
    // 64·(2^0.05 − 2^−0.05), worked by hand: 64 · 0.069329
    expect(value(most)).toBeCloseTo(Math.sqrt(64 * 0.0693286), 5);
    const nothing = lightMinusRange(8, 8 * 2 ** 0.05);
    expect(nothing.slice(0, 2)).toEqual([0, 0]);
    expect(refusal(nothing[2]).fail).toBe('no-answer');
    expect(answerOf('LIGHTMINUSRANGE', 8, 16)).toEqual([
      [0, 0, { error: '#N/A', message: expect.stringContaining('nothing is left') }],
    ]);
  });

  it('spills a row a reading', () =>
    expect(answerOf('LIGHTMINUSRANGE', [[8], [null]], '4 exact', 'none')).toEqual([
      [Math.sqrt(48), Math.sqrt(48), Math.sqrt(48)].map((n) => expect.closeTo(n, 12)),
      ['', '', ''],
    ]));

  itKeepsItsRanges('LIGHTMINUSRANGE', {
    total: [11, 'above 0'],
    part: [8, 'above 0'],
    step: [0.1, 'from 0'],
  });
});
