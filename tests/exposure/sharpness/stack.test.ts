import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { depth } from '../../../src/exposure/sharpness/depth';
import { OVERLAP, stackFrames, stackStep } from '../../../src/exposure/sharpness/stack';
import { expectNear, itKeepsItsRanges, value } from '../support';

const aperture = fc.double({ min: 1, max: 22, noNaN: true });
const scale = fc.double({ min: -1, max: 1, noNaN: true }).map((x) => 10 ** x);
const blur = fc.double({ min: 0.003, max: 0.05, noNaN: true });
const overlap = fc.double({ min: 0, max: 0.9, noNaN: true });
const LENS = {
  aperture: [8, 'above 0'],
  magnification: [1, 'above 0'],
  blurCircle: [0.015, 'above 0'],
  overlap: [0.2, 'overlap'],
  pupil: [1, 'above 0'],
} as const;

describe('step of a focus stack', () => {
  it('without overlap is the depth of field, and half of it with half', () => {
    fc.assert(
      fc.property(aperture, scale, blur, (n, m, c) => {
        const slice = value(depth(n, m, c));
        expect(stackStep(n, m, c, 0)).toBe(slice);
        expectNear(value(stackStep(n, m, c, 0.5)), slice / 2);
      }),
      trials(251),
    );
  });

  it('leaves a fifth of each slice to the next unless told otherwise', () => {
    expect(OVERLAP).toBe(0.2);
    expect(stackStep(8, 1, 0.015)).toBe(stackStep(8, 1, 0.015, 0.2, 1));
    expectNear(value(stackStep(8, 1, 0.015)), 0.384);
  });

  it('with a pupil magnification is that of the depth of field', () => {
    expectNear(value(stackStep(8, 1, 0.03, 0, 0.5)), 1.44);
  });

  itKeepsItsRanges('STACKSTEP', LENS);
});

describe('frames of a focus stack', () => {
  /** A step of 0.4: f/10 at life size, 0.01 mm, no overlap. */
  const frames = (wanted: number): number => value(stackFrames(wanted, 10, 1, 0.01, 0));

  it('are one more than the steps at an exact multiple, and one more beyond it, worked by hand', () => {
    expect(frames(0.4)).toBe(2);
    expect(frames(4)).toBe(11);
    expect(frames(4.0001)).toBe(12);
    expect(frames(3.9999)).toBe(11);
  });

  it('are two for a depth below one step: both ends are shot', () => {
    expect(frames(0.001)).toBe(2);
  });

  it('do not gain one from rounding error at a multiple', () => {
    fc.assert(
      fc.property(aperture, scale, blur, overlap, fc.integer({ min: 1, max: 500 }), (n, m, c, o, steps) => {
        const exact = steps * value(stackStep(n, m, c, o));
        for (const wanted of [exact, exact * (1 + 1e-13), exact * (1 - 1e-13)])
          expect(stackFrames(wanted, n, m, c, o)).toBe(steps + 1);
      }),
      trials(252),
    );
  });

  it('cover the depth, and one fewer would not', () => {
    fc.assert(
      fc.property(scale, aperture, scale, blur, overlap, (wanted, n, m, c, o) => {
        const step = value(stackStep(n, m, c, o));
        const shot = value(stackFrames(wanted, n, m, c, o));
        expect(Number.isInteger(shot)).toBe(true);
        expect((shot - 1) * step).toBeGreaterThanOrEqual(wanted * (1 - 1e-8));
        expect((shot - 2) * step).toBeLessThan(wanted);
      }),
      trials(253),
    );
  });

  it('grow with the overlap', () => {
    let before = 0;
    for (const o of [0, 0.2, 0.5, 0.8, 0.95]) {
      const shot = value(stackFrames(10, 8, 1, 0.015, o));
      expect(shot).toBeGreaterThan(before);
      before = shot;
    }
  });

  itKeepsItsRanges('STACKFRAMES', { depth: [10, 'above 0'], ...LENS });
});
