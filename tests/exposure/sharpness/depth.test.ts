import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { isFail } from '../../../src/exposure/core/result';
import {
  apertureForDepth,
  depth,
  depthFar,
  depthNear,
  hyperfocal,
} from '../../../src/exposure/sharpness/depth';
import { magnification } from '../../../src/exposure/sharpness/magnification';
import { expectNear, itKeepsItsRanges, refusal, value } from '../support';

const aperture = fc.double({ min: 1, max: 64, noNaN: true });
const scale = fc.double({ min: -2, max: 1, noNaN: true }).map((x) => 10 ** x);
const blur = fc.double({ min: 0.003, max: 0.1, noNaN: true });
const pupil = fc.double({ min: 0.4, max: 2.5, noNaN: true });
const mm = fc.double({ min: 10, max: 500, noNaN: true });

describe('depth of field', () => {
  it('at life size is four times f-number and blur circle, worked by hand', () => {
    expectNear(value(depth(16, 1, 0.03)), 1.92);
  });

  it('is undone by the f-number for it', () => {
    fc.assert(
      fc.property(aperture, scale, blur, pupil, (n, m, c, p) => {
        expectNear(value(apertureForDepth(value(depth(n, m, c, p)), m, c, p)), n);
      }),
      trials(221),
    );
  });

  it('grows as the f-number and the blur circle, and shrinks with the magnification and the pupil', () => {
    fc.assert(
      fc.property(aperture, scale, blur, pupil, (n, m, c, p) => {
        const d = value(depth(n, m, c, p));
        expectNear(value(depth(2 * n, m, c, p)), 2 * d);
        expectNear(value(depth(n, m, 2 * c, p)), 2 * d);
        expect(value(depth(n, m * 1.01, c, p))).toBeLessThan(d);
        expect(value(depth(n, m, c, p * 1.01))).toBeLessThan(d);
      }),
      trials(222),
    );
  });

  it('with the focal length is the far limit less the near limit', () => {
    fc.assert(
      fc.property(aperture, mm, blur, fc.double({ min: 0.05, max: 0.9, noNaN: true }), (n, f, c, part) => {
        const u = f + (part * f * f) / (n * c);
        const m = value(magnification(f, undefined, u));
        const limits = value(depthFar(f, n, u, c)) - value(depthNear(f, n, u, c));
        expectNear(value(depth(n, m, c, 1, f)), limits, 1e-10);
      }),
      trials(223),
    );
  });

  it('with the focal length is more than without, and nearly the same in close-up', () => {
    expect(value(depth(22, 0.02, 0.03, 1, 120))).toBeGreaterThan(value(depth(22, 0.02, 0.03)));
    expectNear(value(depth(22, 2, 0.03, 1, 120)), value(depth(22, 2, 0.03)), 1e-5);
  });

  it('has no end at or below the magnification N·c / f', () => {
    const least = (8 * 0.03) / 50;
    for (const m of [least, least * (1 + 1e-10), least / 2]) {
      expect(refusal(depth(8, m, 0.03, 1, 50)).fail).toBe('no-answer');
      expect(refusal(depth(8, m, 0.03, 1, 50)).message).toContain('no far limit');
    }
    expect(value(depth(8, least * (1 + 1e-6), 0.03, 1, 50))).toBeGreaterThan(1e6);
  });

  itKeepsItsRanges('DEPTH', {
    aperture: [16, 'above 0'],
    magnification: [0.5, 'above 0'],
    blurCircle: [0.03, 'above 0'],
    pupil: [1, 'above 0'],
    focal: [100, 'above 0'],
  });
});

describe('f-number for a depth', () => {
  itKeepsItsRanges('APERTUREFORDEPTH', {
    depth: [5, 'above 0'],
    magnification: [0.5, 'above 0'],
    blurCircle: [0.03, 'above 0'],
    pupil: [1, 'above 0'],
  });
});

describe('hyperfocal distance', () => {
  it('of 100 mm at f/10 with 0.1 mm is 10 m, and the focal length more, worked by hand', () => {
    expectNear(value(hyperfocal(100, 10, 0.1, 'handbook')), 10_000);
    expectNear(value(hyperfocal(100, 10, 0.1)), 10_100);
  });

  it('is the exact one unless told otherwise', () => {
    expect(hyperfocal(50, 8, 0.03)).toBe(hyperfocal(50, 8, 0.03, 'exact'));
  });

  it('is k times as far when lens and blur circle are k times as large', () => {
    fc.assert(
      fc.property(mm, aperture, blur, scale, (f, n, c, k) => {
        for (const form of ['exact', 'handbook'] as const)
          expectNear(value(hyperfocal(f * k, n, c * k, form)), k * value(hyperfocal(f, n, c, form)));
      }),
      trials(224),
    );
  });

  itKeepsItsRanges('HYPERFOCAL', {
    focal: [50, 'above 0'],
    aperture: [8, 'above 0'],
    blurCircle: [0.03, 'above 0'],
  });
});

describe('limits of sharpness', () => {
  /** A lens with h = 10 m: 100 mm at f/10 with 0.1 mm. */
  const lens = [100, 10] as const;

  it('of a lens with h = 10 m at 2.1 m lie at 1.75 and 2.625 m, worked by hand', () => {
    expectNear(value(depthNear(...lens, 2100, 0.1)), 1750);
    expectNear(value(depthFar(...lens, 2100, 0.1)), 2625);
  });

  it('at the hyperfocal distance are half of it and none', () => {
    fc.assert(
      fc.property(mm, aperture, blur, (f, n, c) => {
        const h = value(hyperfocal(f, n, c));
        expectNear(value(depthNear(f, n, h, c)), h / 2, 1e-11);
        expect(refusal(depthFar(f, n, h, c)).fail).toBe('no-answer');
      }),
      trials(225),
    );
  });

  it('have a far one just before the hyperfocal distance, and none from there on', () => {
    const at = value(hyperfocal(...lens, 0.1));
    expectNear(value(depthFar(...lens, at - 10, 0.1)), (at - 10) * 1000, 1e-9);
    expectNear(value(depthFar(...lens, at - 0.001, 0.1)), (at - 0.001) * 1e7, 1e-5);
    for (const u of [at, at * (1 - 1e-12), at + 1, 2 * at, 1e9]) {
      const { fail, message } = refusal(depthFar(...lens, u, 0.1));
      expect(fail).toBe('no-answer');
      expect(message).toContain('no far limit');
      expect(isFail(depthNear(...lens, u, 0.1))).toBe(false);
    }
  });

  it('enclose the subject, and open with the f-number', () => {
    fc.assert(
      fc.property(mm, aperture, blur, fc.double({ min: 0.01, max: 0.9, noNaN: true }), (f, n, c, part) => {
        const u = f + (part * f * f) / (n * c);
        const near = value(depthNear(f, n, u, c));
        const far = value(depthFar(f, n, u, c));
        expect(near).toBeLessThan(u);
        expect(far).toBeGreaterThan(u);
        expect(value(depthNear(f, n * 1.05, u, c))).toBeLessThan(near);
        expect(value(depthFar(f, n * 1.05, u, c))).toBeGreaterThan(far);
      }),
      trials(226),
    );
  });

  it('meet the handbook: u is the harmonic mean of both', () => {
    fc.assert(
      fc.property(mm, aperture, blur, fc.double({ min: 0.01, max: 0.9, noNaN: true }), (f, n, c, part) => {
        const u = f + (part * f * f) / (n * c);
        const [near, far] = [value(depthNear(f, n, u, c)), value(depthFar(f, n, u, c))];
        expectNear((2 * near * far) / (near + far), u, 1e-11);
      }),
      trials(227),
    );
  });

  it('approach the focal length with the subject', () => {
    expectNear(value(depthNear(50, 8, 50 * (1 + 1e-6), 0.03)), 50, 2e-6);
    expectNear(value(depthFar(50, 8, 50 * (1 + 1e-6), 0.03)), 50, 2e-6);
  });

  it.each([depthNear, depthFar])('are refused at and within the focal length: %o', (limit) => {
    for (const u of [50, 49, 50 * (1 + 1e-12)]) {
      const { fail, message } = refusal(limit(50, 8, u, 0.03));
      expect(fail).toBe('domain');
      expect(message).toContain('50 mm');
      expect(message).toContain('distance');
    }
  });

  for (const id of ['DEPTHNEAR', 'DEPTHFAR'])
    describe(id, () =>
      itKeepsItsRanges(id, {
        focal: [50, 'above 0'],
        aperture: [8, 'above 0'],
        distance: [3000, 'above 0'],
        blurCircle: [0.03, 'above 0'],
      }),
    );
});
