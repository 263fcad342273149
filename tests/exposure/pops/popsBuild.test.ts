import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { lightSum } from '../../../src/exposure/light/lightSum';
import { creepTime } from '../../../src/exposure/pops/creepTime';
import { popsBuild } from '../../../src/exposure/pops/popsBuild';
import { popsReading } from '../../../src/exposure/pops/pops';
import { popsTime } from '../../../src/exposure/pops/popsTime';
import { answerOf, expectNear, itKeepsItsRanges, refusal, value } from '../support';

const reading = fc.double({ min: -1, max: 2, noNaN: true }).map((x) => 10 ** x);
const count = fc.integer({ min: 1, max: 99 });

describe('a build of several heads', () => {
  it('is that of all lights together where each head pops once', () => {
    fc.assert(
      fc.property(fc.array(reading, { minLength: 1, maxLength: 6 }), (list) => {
        const once = list.map(() => 1);
        expectNear(value(popsBuild(list, once)), value(lightSum(list)));
      }),
      trials(84),
    );
  });

  it('counts a head with n pops as n heads', () => {
    fc.assert(
      fc.property(reading, reading, count, (a, b, n) => {
        const heads = [...Array.from({ length: n }, () => a), b];
        expectNear(value(popsBuild([a, b], [n, 1])), value(lightSum(heads)));
        expectNear(value(popsBuild([a], [n])), value(popsReading(a, n)));
      }),
      trials(85),
    );
  });

  it('of 1 and 2 with 9 and 4 pops is 5, as 9·1 + 4·4 = 25, worked by hand', () => {
    expectNear(value(popsBuild([1, 2], [9, 4])), 5);
  });

  it('leaves a head with no pops dark: 4 pops of 3 and none of 8 are 6, worked by hand', () => {
    expectNear(value(popsBuild([3, 8], [4, 0])), 6);
    for (const none of [0, null, '', '0'])
      expect(answerOf('POPSBUILD', [['3 exact'], [8]], [[4], [none]])).toBeCloseTo(6, 12);
  });

  it('has one number for all, and is refused where no head fires at all: write 1', () => {
    expect(answerOf('POPSBUILD', [['3 exact'], ['4 exact']], 4)).toBeCloseTo(10, 12);
    expect(refusal(popsBuild([8, 11], [0, 0]))).toEqual({
      fail: 'unreadable',
      message: 'pops is blank: write 1 where a head fires once. A head without pops does not fire.',
    });
    for (const blank of [null, 0, '', [[null], [0]], undefined])
      expect(answerOf('POPSBUILD', [[8], [11]], blank)).toMatchObject({
        error: '#VALUE!',
        message: expect.stringMatching(/^pops is blank: write 1/),
      });
    // also where ambient light alone would give a reading
    expect(refusal(popsBuild([8], [0], 4, 1, 1)).message).toContain('write 1');
  });

  it('gathers ambient light by its share of the open time: 3² + 1²·16/1 = 25, worked by hand', () => {
    expectNear(value(popsBuild([3], [1], 1, 1, 16)), 5);
    expectNear(value(popsBuild([3], [1], 1, 1 / 64, 1 / 4)), 5);
    expectNear(value(popsBuild([3], [1], 1, 1, 16, 2)), 2.5);
  });

  it('is refused for ambient light without its two times, naming the one that is missing', () => {
    expect(refusal(popsBuild([8], [1], 4)).message).toContain('ambientTime is missing');
    expect(refusal(popsBuild([8], [1], 4, 1)).message).toContain('openTime is missing');
    expect(refusal(popsBuild([8], [1], 4, undefined, 1)).message).toContain('ambientTime is missing');
    expect(refusal(popsBuild([8], [1], 4)).fail).toBe('unreadable');
  });

  it('is refused where there are not as many pops as readings', () => {
    const { fail, message } = refusal(popsBuild([8, 11], [1, 2, 3]));
    expect(fail).toBe('unreadable');
    expect(message).toContain('3 for 2');
  });

  itKeepsItsRanges('POPSBUILD', {
    readings: [[8, 11], 'above 0'],
    pops: [[1, 2], 'whole or none'],
    ambient: [2, 'above 0'],
    ambientTime: [1 / 64, 'above 0'],
    openTime: [1, 'above 0'],
    loss: [0, 'any'],
  });
});

describe('the time until ambient light shows', () => {
  it('is the open time after which a build reads the limit more than the flash alone', () => {
    const limit = fc.double({ min: 0.01, max: 1, noNaN: true });
    fc.assert(
      fc.property(reading, reading, limit, (flash, ambient, stops) => {
        const open = value(creepTime(flash, ambient, 1 / 64, stops));
        const built = value(popsBuild([flash], [1], ambient, 1 / 64, open));
        expectNear(built, flash * 2 ** (stops / 2));
      }),
      trials(86),
    );
  });

  it('is the metering time for one stop where both read the same, worked by hand', () => {
    expectNear(value(creepTime(8, 8, 1 / 64, 1)), 1 / 64);
  });

  it('is four times as long for half the ambient reading', () => {
    expectNear(value(creepTime(8, 2, 1)) / value(creepTime(8, 4, 1)), 4);
  });

  it('keeps its digits for a small limit: worked by hand, x·ln 2', () => {
    expectNear(value(creepTime(8, 8, 1, 1e-9)), 1e-9 * Math.LN2, 1e-9);
  });

  itKeepsItsRanges('CREEPTIME', {
    flash: [32, 'above 0'],
    ambient: [4, 'above 0'],
    ambientTime: [1 / 64, 'above 0'],
    limit: [0.1, 'above 0'],
  });
});

describe('the time that pops take', () => {
  it('is n waits until the next frame, one less while the shutter is open: 4 pops 3 s apart', () => {
    expect(popsTime(4, 2, 1)).toBe(12);
    expect(popsTime(4, 2, 1, 'open')).toBe(9);
  });

  it('of one pop leaves the shutter open for nothing', () => {
    expect(popsTime(1, 2, 1, 'open')).toBe(0);
    expect(popsTime(1, 2, 1)).toBe(3);
  });

  itKeepsItsRanges('POPSTIME', { pops: [4, 'whole'], recycle: [2, 'above 0'], pause: [0.5, 'from 0'] });
});
