import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import {
  airyDisc,
  bestAperture,
  GREEN_NM,
  MERCURY_NM,
  spreadAperture,
  workingAperture,
} from '../../../src/exposure/sharpness/diffraction';
import { expectNear, itKeepsItsRanges, value } from '../support';

const aperture = fc.double({ min: 1, max: 64, noNaN: true });
const scale = fc.double({ min: -2, max: 1, noNaN: true }).map((x) => 10 ** x);
const nm = fc.double({ min: 380, max: 750, noNaN: true });
const pupil = fc.double({ min: 0.4, max: 2.5, noNaN: true });

/** Bessel function J₁ by its series. */
function besselOne(x: number): number {
  let term = x / 2;
  let sum = term;
  for (let k = 1; k < 40; k++) {
    term *= -((x / 2) ** 2) / (k * (k + 1));
    sum += term;
  }
  return sum;
}
/** Its first zero beyond 0, between 3 and 5, by halving. */
function firstZero(): number {
  let [low, high] = [3, 5];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (besselOne(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}

describe('effective f-number', () => {
  it('is twice the marked one at life size, and the marked one far off, worked by hand', () => {
    expect(workingAperture(16, 1)).toBe(32);
    expect(workingAperture(16, 0)).toBe(16);
    expect(workingAperture(16, 1, 0.5)).toBe(48);
  });

  itKeepsItsRanges('WORKINGAPERTURE', {
    aperture: [16, 'above 0'],
    magnification: [1, 'from 0'],
    pupil: [1, 'above 0'],
  });
});

describe('Airy disc', () => {
  it('has the diameter of the first zero of J₁, 2·3.8317 / π = 2.4393, of which 2.44 is the rounding', () => {
    const zero = firstZero();
    expect(zero).toBeCloseTo(3.8317059702, 9);
    expect(Math.abs(value(airyDisc(1, 0, 1000)) - (2 * zero) / Math.PI)).toBeLessThan(0.0007);
  });

  it('goes with the effective f-number and the wavelength', () => {
    fc.assert(
      fc.property(aperture, scale, nm, pupil, (n, m, l, p) => {
        const disc = value(airyDisc(n, m, l, p));
        expectNear(value(airyDisc(value(workingAperture(n, m, p)), 0, l)), disc);
        expectNear(value(airyDisc(n, m, 2 * l, p)), 2 * disc);
        expect(value(airyDisc(n * 1.01, m, l, p))).toBeGreaterThan(disc);
      }),
      trials(241),
    );
  });

  it('is that of green light unless told otherwise', () => {
    expect(airyDisc(16, 0)).toBe(airyDisc(16, 0, 550));
    expect(GREEN_NM).toBe(550);
  });

  itKeepsItsRanges('AIRYDISC', {
    aperture: [16, 'above 0'],
    magnification: [1, 'from 0'],
    wavelength: [550, 'above 0'],
    pupil: [1, 'above 0'],
  });
});

describe('f-number where defocus and diffraction balance', () => {
  it('makes the two blurs alike: half the spread over the effective f-number is the Airy disc', () => {
    fc.assert(
      fc.property(scale, scale, nm, pupil, (spread, m, l, p) => {
        const n = value(workingAperture(value(spreadAperture(spread, m, l, p)), m, p));
        expectNear(spread / (2 * n), value(airyDisc(n, 0, l)) / 1000, 1e-12);
      }),
      trials(242),
    );
  });

  it('is a stop more for twice the spread, and half at life size', () => {
    fc.assert(
      fc.property(scale, (spread) => {
        const n = value(spreadAperture(spread));
        expectNear(value(spreadAperture(2 * spread)), n * Math.SQRT2);
        expectNear(value(spreadAperture(spread, 1)), n / 2);
      }),
      trials(243),
    );
  });

  it('lies within a thousandth of the published √(375·spread)', () => {
    for (const spread of [0.5, 1, 2, 4, 8])
      expectNear(value(spreadAperture(spread)), Math.sqrt(375 * spread), 1e-3);
  });

  it('from a depth is that from its image, depth·m² deep', () => {
    fc.assert(
      fc.property(scale, scale, nm, pupil, (d, m, l, p) => {
        expectNear(value(bestAperture(d, m, l, p)), value(spreadAperture(d * m * m, m, l, p)));
      }),
      trials(244),
    );
  });

  it('rises with depth, and falls with the wavelength', () => {
    fc.assert(
      fc.property(scale, scale, nm, (d, m, l) => {
        const n = value(bestAperture(d, m, l));
        expect(value(bestAperture(d * 1.01, m, l))).toBeGreaterThan(n);
        expect(value(bestAperture(d, m, l * 1.01))).toBeLessThan(n);
      }),
      trials(245),
    );
  });

  it('is for the mercury line unless told otherwise', () => {
    expect(bestAperture(20, 1)).toBe(bestAperture(20, 1, 546));
    expect(spreadAperture(4)).toBe(spreadAperture(4, 0, 546, 1));
    expect(MERCURY_NM).toBe(546);
  });

  describe('from the spread', () =>
    itKeepsItsRanges('SPREADAPERTURE', {
      spread: [4, 'above 0'],
      magnification: [1, 'from 0'],
      wavelength: [546, 'above 0'],
      pupil: [1, 'above 0'],
    }));
  describe('from the depth', () =>
    itKeepsItsRanges('BESTAPERTURE', {
      depth: [20, 'above 0'],
      magnification: [1, 'above 0'],
      wavelength: [546, 'above 0'],
      pupil: [1, 'above 0'],
    }));
});
