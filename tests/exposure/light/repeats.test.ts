import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { lightEvenness } from '../../../src/exposure/light/lightEvenness';
import { lightMean, lightRepeat, lightSpread } from '../../../src/exposure/light/repeats';
import { expectNear, itKeepsItsRanges, refusal, value } from '../support';

const reading = fc.double({ min: -2, max: 2, noNaN: true }).map((x) => 10 ** x);
const readings = fc.array(reading, { minLength: 2, maxLength: 12 });

describe('repeated readings', () => {
  it('of 4, 8 and 16 spread over 4 stops and have 8 in their middle, worked by hand', () => {
    expect(lightSpread([8, 4, 16])).toBe(4);
    expectNear(value(lightMean([4, 8, 16])), 8);
  });

  it('of 4, 8 and 16, in stops −2, 0 and 2 from the middle, deviate by √((4 + 0 + 4) / 2) = 2, worked by hand', () => {
    expect(lightRepeat([4, 8, 16])).toBe(2);
  });

  it('of two readings deviate by their spread over √2', () => {
    fc.assert(
      fc.property(reading, reading, (a, b) => {
        expect(value(lightRepeat([a, b]))).toBeCloseTo(value(lightSpread([a, b])) / Math.SQRT2, 11);
      }),
      trials(31),
    );
  });

  it('deviate by as much whichever comes first, and at any brightness', () => {
    fc.assert(
      fc.property(readings, reading, (list, k) => {
        const turned = [...list.slice(1), list[0] as number].map((n) => n * k);
        expect(value(lightRepeat(turned))).toBeCloseTo(value(lightRepeat(list)), 10);
        expect(value(lightSpread(turned))).toBeCloseTo(value(lightSpread(list)), 10);
        expectNear(value(lightMean(turned)), k * value(lightMean(list)), 1e-12);
      }),
      trials(32),
    );
  });

  it('have their mean between the least and the most of them', () => {
    fc.assert(
      fc.property(readings, (list) => {
        const mean = value(lightMean(list));
        expect(mean).toBeGreaterThanOrEqual(Math.min(...list) * (1 - 1e-12));
        expect(mean).toBeLessThanOrEqual(Math.max(...list) * (1 + 1e-12));
      }),
      trials(33),
    );
  });

  it('that are all the same neither spread nor deviate', () => {
    expect(lightSpread([8, 8, 8])).toBe(0);
    expect(lightRepeat([8, 8, 8])).toBe(0);
    expect(lightMean([8, 8, 8])).toBe(8);
  });

  it('keep their digits a millionth of a stop apart: worked by hand, 2·x/ln 2 over √2', () => {
    const x = 2 ** -20;
    expect(value(lightRepeat([8, 8 * (1 + x)]))).toBeCloseTo((Math.SQRT2 * Math.log1p(x)) / Math.LN2, 12);
  });

  it('have no deviation where there is but one', () => {
    const { fail, message } = refusal(lightRepeat([8]));
    expect(fail).toBe('no-answer');
    expect(message).toContain('readings holds one reading');
    expect(lightSpread([8])).toBe(0);
    expect(lightMean([8])).toBe(8);
  });

  it('are taken in thousands', () => {
    expect(lightRepeat(Array.from({ length: 20_000 }, () => 8))).toBe(0);
  });

  for (const id of ['LIGHTSPREAD', 'LIGHTMEAN', 'LIGHTREPEAT'])
    describe(id, () => itKeepsItsRanges(id, { readings: [[8, 8, 11], 'above 0'] }));
});

describe('unevenness', () => {
  it('of f-numbers counts the light, that of lux the figures: 1 and 0.9 are 19 % or 10 %, worked by hand', () => {
    expectNear(value(lightEvenness([1, 0.9])), 19);
    expectNear(value(lightEvenness([1, 0.9], 'lux')), 10);
    expectNear(value(lightEvenness([1, 0.9], 'raw')), 10);
  });

  it('of an even field is none', () => {
    expect(lightEvenness([8, 8, 8])).toBe(0);
    expect(lightEvenness([8])).toBe(0);
  });

  it('cannot be shown below 6.7 % by readings a tenth of a stop apart: 1 − 2^(−1/10), worked by hand', () => {
    expectNear(value(lightEvenness([8 * 2 ** (1 / 20), 8])), 100 * (1 - 2 ** -0.1));
  });

  it('does not depend on the order or on the brightness, and lies from 0 below 100', () => {
    fc.assert(
      fc.property(readings, reading, (list, k) => {
        for (const scale of ['aperture', 'lux', 'raw'] as const) {
          const percent = value(lightEvenness(list, scale));
          expect(value(lightEvenness([...list].reverse(), scale))).toBe(percent);
          expect(
            value(
              lightEvenness(
                list.map((n) => n * k),
                scale,
              ),
            ),
          ).toBeCloseTo(percent, 10);
          expect(percent).toBeGreaterThanOrEqual(0);
          expect(percent).toBeLessThan(100);
        }
      }),
      trials(34),
    );
  });

  itKeepsItsRanges('LIGHTEVENNESS', { values: [[8, 11], 'above 0'] });
});
