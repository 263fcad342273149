import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { lightRatio } from '../../../src/exposure/light/lightRatio';
import { lightShare } from '../../../src/exposure/light/lightShare';
import { lightSum } from '../../../src/exposure/light/lightSum';
import { lightTargets } from '../../../src/exposure/light/lightTargets';
import { answerOf, expectNear, itKeepsItsRanges, refusal, value } from '../support';

/** Targets of lights that are all lit. */
const targetsOf = (...job: Parameters<typeof lightTargets>): readonly number[] =>
  value(lightTargets(...job)).map((target) => target as number);
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
    for (const target of targetsOf(8, [600, 600])) expectNear(target, 8 / Math.SQRT2);
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
        expectNear(value(lightSum(targetsOf(total, from))), total);
      }),
      trials(25),
    );
  });

  it('lie as many stops apart as asked for, whichever light the stops are counted from', () => {
    fc.assert(
      fc.property(stops, fc.double({ min: -5, max: 5, noNaN: true }), (from, shift) => {
        const targets = targetsOf(8, from);
        targets.forEach((t, i) =>
          expectNear(
            t / (targets[0] as number),
            2 ** (((from[i] as number) - (from[0] as number)) / 2),
            1e-12,
          ),
        );
        const shifted = targetsOf(
          8,
          from.map((s) => s + shift),
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

  it('leave out what has no light: two of three lights share the total, worked by hand', () => {
    const targets = value(lightTargets(8, [0, undefined, 0]));
    expect(targets).toEqual([
      expect.closeTo(8 / Math.SQRT2, 12),
      undefined,
      expect.closeTo(8 / Math.SQRT2, 12),
    ]);
  });

  const column = (...cells: unknown[]): unknown[][] => cells.map((cell) => [cell]);

  it('take an empty text for no light, and an empty cell for the key, whatever the host sends for it', () => {
    // the key and another a stop less share 8² = 64 as 2:1
    const [key, less] = [Math.sqrt(128 / 3), Math.sqrt(64 / 3)].map((n) => expect.closeTo(n, 12));
    for (const empty of [null, 0])
      expect(answerOf('LIGHTTARGETS', 8, column(empty, '', -1))).toEqual(column(key, '', less));
    expect(answerOf('LIGHTTARGETS', 8, column('', ''))).toMatchObject({ error: '#VALUE!' });
  });

  it('keep the present distance from the key where there are readings: f/16 and f/8 stay two stops apart', () => {
    // T² = 80 shared as 4:1
    const kept = [8, 4].map((n) => expect.closeTo(n, 12));
    expect(value(lightTargets(Math.sqrt(80), [0, undefined], [16, 8]))).toEqual(kept);
    // a head whose stops are given needs no reading, and one without either is no light
    expect(value(lightTargets(Math.sqrt(80), [0, -2, undefined], [16, undefined, undefined]))).toEqual([
      ...kept,
      undefined,
    ]);
    const cells = answerOf('LIGHTTARGETS', `${Math.sqrt(80)} exact`, column('', 0, -2), column('', 16, ''));
    expect(cells).toEqual(column('', ...kept));
  });

  it('take the first 0 for the key', () => {
    // the first reads 4, the second 8: the third, at 8, lies two stops above the first
    expect(value(lightTargets(Math.sqrt(6), [0, 0, undefined], [4, 8, 8]))).toEqual(
      [1, 1, 2].map((n) => expect.closeTo(n, 12)),
    );
  });

  it('read together and lie apart as before where all but the key are kept', () => {
    const present = fc.array(reading, { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(reading, present, (total, list) => {
        const targets = targetsOf(total, [0, ...list.slice(1).map(() => undefined)], list);
        const all = value(lightSum(list));
        targets.forEach((t, i) => expectNear(t, (total * (list[i] as number)) / all, 1e-9));
      }),
      trials(27),
    );
  });

  it('are refused with readings where no light is the key, or the key has no reading', () => {
    expect(refusal(lightTargets(8, [-1, undefined], [8, 8]))).toEqual({
      fail: 'unreadable',
      message: 'stopsFromKey has no 0: type 0 in the key’s row, as the others keep their distance from it.',
    });
    expect(refusal(lightTargets(8, [-1, 0], [8, undefined]))).toEqual({
      fail: 'unreadable',
      message:
        'readings is blank for the key (number 2 of the list): the others keep their distance from it.',
    });
    expect(refusal(lightTargets(8, [0, -1], [8]))).toEqual({
      fail: 'unreadable',
      message: 'readings must be as many as the stops: 1 for 2.',
    });
    expect(answerOf('LIGHTTARGETS', 8, column(-1, ''), column(8, 8))).toMatchObject({
      error: '#VALUE!',
      message: expect.stringContaining('type 0 in the key’s row'),
    });
    expect(answerOf('LIGHTTARGETS', 8, column(0, ''), column(null, 8))).toMatchObject({
      error: '#VALUE!',
      message: expect.stringContaining('blank for the key'),
    });
  });

  itKeepsItsRanges('LIGHTTARGETS', {
    total: [11, 'above 0'],
    stopsFromKey: [[0, -1], 'any'],
    readings: [[11, 8], 'above 0'],
  });
});
