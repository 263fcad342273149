import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { hingeForTilt, tiltForHinge } from '../../../src/exposure/sharpness/tilt';
import { expectNear, itKeepsItsRanges, refusal, value } from '../support';

const mm = fc.double({ min: 20, max: 600, noNaN: true });
const degrees = fc.double({ min: 0.01, max: 80, noNaN: true });

describe('tilt and hinge', () => {
  it('of a hinge at twice the focal length are 30 degrees, at √2 times 45, worked by hand', () => {
    expectNear(value(tiltForHinge(150, 300)), 30);
    expectNear(value(tiltForHinge(150, 150 * Math.SQRT2)), 45);
    expectNear(value(hingeForTilt(150, 30)), 300);
  });

  it('undo each other', () => {
    fc.assert(
      fc.property(mm, degrees, (f, tilt) => {
        expectNear(value(tiltForHinge(f, value(hingeForTilt(f, tilt)))), tilt, 1e-11);
      }),
      trials(261),
    );
  });

  it('fall as the other rises, and are those of a lens k times as large at k times the hinge', () => {
    fc.assert(
      fc.property(mm, degrees, fc.double({ min: 0.1, max: 10, noNaN: true }), (f, tilt, k) => {
        const hinge = value(hingeForTilt(f, tilt));
        expect(value(hingeForTilt(f, tilt * 1.01))).toBeLessThan(hinge);
        expect(value(tiltForHinge(f, hinge * 1.01))).toBeLessThan(tilt);
        expectNear(value(hingeForTilt(f * k, tilt)), hinge * k);
      }),
      trials(262),
    );
  });

  it('of a quarter turn and a hinge at the focal length go together, rounding error included', () => {
    expect(tiltForHinge(150, 150)).toBe(90);
    expect(tiltForHinge(150, 150 * (1 - 1e-12))).toBe(90);
    expect(hingeForTilt(150, 90)).toBe(150);
  });

  it('of a hinge nearer than the focal length are refused, in words that name both', () => {
    const { fail, message } = refusal(tiltForHinge(150, 149));
    expect(fail).toBe('domain');
    expect(message).toMatch(/hinge.*150 mm.*149 mm/);
  });

  describe('tilt for a hinge', () =>
    itKeepsItsRanges('TILTFORHINGE', { focal: [150, 'above 0'], hinge: [1500, 'above 0'] }));
  describe('hinge for a tilt', () =>
    itKeepsItsRanges('HINGEFORTILT', { focal: [150, 'above 0'], tilt: [5, 'tilt'] }));
});
