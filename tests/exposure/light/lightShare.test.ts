import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { lightRatio } from '../../../src/exposure/light/lightRatio';
import { lightShare } from '../../../src/exposure/light/lightShare';
import { lightSum } from '../../../src/exposure/light/lightSum';
import { lightTargets } from '../../../src/exposure/light/lightTargets';
import { expectNear, itKeepsItsRanges, refusal, value } from '../support';

const reading = fc.double({ min: -3, max: 3, noNaN: true }).map((x) => 10 ** x);
const readings = fc.array(reading, { minLength: 1, maxLength: 9 });

describe('shares of the light', () => {
  it('of lights a stop apart are 4, 2 and 1 of seven', () => {
    const shares = value(lightShare([4, 2 * Math.SQRT2, 2]));
    [4 / 7, 2 / 7, 1 / 7].forEach((share, i) => expectNear(shares[i] as number, share));
  });

  it('make one in all, and do not depend on how bright the whole is', () => {
    fc.assert(
      fc.property(readings, reading, (list, k) => {
        const shares = value(lightShare(list));
        expectNear(
          shares.reduce((a, b) => a + b, 0),
          1,
        );
        const brighter = value(lightShare(list.map((n) => n * k)));
        shares.forEach((s, i) => expectNear(brighter[i] as number, s));
      }),
      trials(23),
    );
  });

  it('and targets are found of lights whose squares no number holds', () => {
    expect(value(lightShare([1e200, 1e200]))).toEqual([0.5, 0.5]);
    for (const target of value(lightTargets(8, [600, 600]))) expectNear(target, 8 / Math.SQRT2);
  });

  itKeepsItsRanges('LIGHTSHARE', { readings: [[16, 11, 8], 'above 0'] });
});

describe('a lighting ratio', () => {
  it('is one more by sum than by each, as the fill reaches both sides', () => {
    fc.assert(
      fc.property(reading, reading, (key, fill) => {
        const each = value(lightRatio(key, fill, 'each'));
        expectNear(value(lightRatio(key, fill, 'sum')), each + 1);
        expectNear(each * value(lightRatio(fill, key, 'each')), 1);
      }),
      trials(24),
    );
  });

  it('by sum is what the lit side reads against the shadow side', () => {
    const lit = value(lightSum([11, 8]));
    expectNear(value(lightRatio(11, 8)), value(lightRatio(lit, 8, 'each')));
  });

  itKeepsItsRanges('LIGHTRATIO', { key: [11, 'above 0'], fill: [8, 'above 0'] });
});

describe('targets of the lights', () => {
  const stops = fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: 1, maxLength: 9 });

  it('read the total together', () => {
    fc.assert(
      fc.property(reading, stops, (total, from) => {
        expectNear(value(lightSum(value(lightTargets(total, from)))), total);
      }),
      trials(25),
    );
  });

  it('lie as many stops apart as asked for, whichever light the stops are counted from', () => {
    fc.assert(
      fc.property(stops, fc.double({ min: -5, max: 5, noNaN: true }), (from, shift) => {
        const targets = value(lightTargets(8, from));
        targets.forEach((t, i) =>
          expectNear(
            t / (targets[0] as number),
            2 ** (((from[i] as number) - (from[0] as number)) / 2),
            1e-12,
          ),
        );
        const shifted = value(
          lightTargets(
            8,
            from.map((s) => s + shift),
          ),
        );
        shifted.forEach((t, i) => expectNear(t, targets[i] as number));
      }),
      trials(26),
    );
  });

  it('are refused where one of them would be no light at all', () => {
    const { fail, message } = refusal(lightTargets(8, [0, -5000]));
    expect(fail).toBe('domain');
    expect(message).toContain('stopsFromKey lie too far apart');
  });

  itKeepsItsRanges('LIGHTTARGETS', { total: [11, 'above 0'], stopsFromKey: [[0, -1], 'any'] });
});
