import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { fallSpeed, fallTime, G } from '../../../src/exposure/motion/fall';
import { freezeBlur, freezeTime } from '../../../src/exposure/motion/freeze';
import { spinSpeed } from '../../../src/exposure/motion/spinSpeed';
import { expectNear, itKeepsItsRanges, refusal, value } from '../support';

const positive = fc.double({ min: -2, max: 2, noNaN: true }).map((x) => 10 ** x);
const level = fc.double({ min: 0.05, max: 0.95, noNaN: true });

describe('smear', () => {
  it('of 1 m/s in a thousandth of a second is 1 mm on the subject, half of it at half life size', () => {
    expectNear(value(freezeBlur(1, 0.001)), 1);
    expectNear(value(freezeBlur(1, 0.001, 0.5)), 0.5);
  });

  it('in pixels is that length over the pitch: 0.5 mm at 5 µm are 100 pixels, worked by hand', () => {
    expectNear(value(freezeBlur(1, 0.001, 0.5, 5)), 100);
  });

  it('comes back to the duration it was made from, at any level', () => {
    fc.assert(
      fc.property(positive, positive, positive, positive, level, (v, t, m, pitch, l) => {
        expectNear(value(freezeTime(v, value(freezeBlur(v, t, m, undefined, l)), m, undefined, l)), t);
        expectNear(value(freezeTime(v, value(freezeBlur(v, t, m, pitch, l)), m, pitch, l)), t);
      }),
      trials(91),
    );
  });

  it('is 3.32 times as long for a t0.5, as ln 10 / ln 2, worked by hand', () => {
    const t05 = value(freezeBlur(1, 0.001, 1, undefined, 0.5));
    expectNear(t05, 3.321928094887362);
  });

  it('in pixels is refused without the magnification', () => {
    for (const come of [freezeBlur(1, 0.001, undefined, 5), freezeTime(1, 2, undefined, 5)]) {
      expect(refusal(come).fail).toBe('unreadable');
      expect(refusal(come).message).toContain('magnification is missing');
    }
  });

  itKeepsItsRanges('FREEZEBLUR', {
    speed: [2, 'above 0'],
    duration: [0.001, 'above 0'],
    magnification: [0.5, 'above 0'],
    pixelPitch: [3.76, 'above 0'],
    level: [0.5, 'level'],
  });
  describe('back', () =>
    itKeepsItsRanges('FREEZETIME', {
      speed: [2, 'above 0'],
      blur: [2, 'above 0'],
      magnification: [0.5, 'above 0'],
      pixelPitch: [3.76, 'above 0'],
      level: [0.5, 'level'],
    }));
});

describe('a fall', () => {
  it('through half of g metres takes one second and ends at g, worked by hand', () => {
    expectNear(value(fallTime(G / 2)), 1);
    expectNear(value(fallSpeed(G / 2)), G);
  });

  it('takes as long as gravity needs to bring the speed: v = v₀ + g·t', () => {
    fc.assert(
      fc.property(positive, fc.double({ min: 0, max: 100, noNaN: true }), (h, v) => {
        const end = value(fallSpeed(h, v));
        // The speed gained is a difference of two large numbers for a fast start.
        expect(Math.abs(v + G * value(fallTime(h, v)) - end)).toBeLessThanOrEqual(1e-13 * (end + v));
      }),
      trials(94),
    );
  });

  it('from a stop halfway goes on at the speed reached there', () => {
    fc.assert(
      fc.property(positive, positive, (a, b) => {
        const half = value(fallSpeed(a));
        expectNear(value(fallSpeed(b, half)), value(fallSpeed(a + b)));
        expectNear(value(fallTime(a)) + value(fallTime(b, half)), value(fallTime(a + b)));
      }),
      trials(95),
    );
  });

  it('with a fast start takes its height over its speed, to all digits: 1 mm at 1000 km/s', () => {
    expectNear(value(fallTime(0.001, 1e6)), 1e-9, 1e-14);
  });

  itKeepsItsRanges('FALLSPEED', { drop: [1, 'above 0'], startSpeed: [0, 'from 0'] });
  describe('in time', () =>
    itKeepsItsRanges('FALLTIME', { drop: [1, 'above 0'], startSpeed: [0, 'from 0'] }));
});

describe('a rim', () => {
  it('of one metre turning once a second runs at π metres a second', () => {
    expectNear(value(spinSpeed(1, 60)), Math.PI);
  });

  it('runs twice as fast at twice the width or twice the turns', () => {
    expectNear(value(spinSpeed(2, 33)), 2 * value(spinSpeed(1, 33)));
    expectNear(value(spinSpeed(1, 66)), 2 * value(spinSpeed(1, 33)));
  });

  itKeepsItsRanges('SPINSPEED', { diameter: [0.3, 'above 0'], rpm: [60, 'above 0'] });
});
