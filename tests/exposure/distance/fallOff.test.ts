import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { fallOff } from '../../../src/exposure/distance/fallOff';
import { itKeepsItsRanges, refusal, value } from '../support';

const metres = fc.double({ min: -1, max: 1.5, noNaN: true }).map((x) => 10 ** x);

/** Nodes and weights of Gauss and Legendre for five points on −1 … 1, as printed in tables of quadrature. */
const GAUSS: readonly (readonly [number, number])[] = [
  [0, 0.568888888888889],
  [0.538469310105683, 0.478628670499366],
  [-0.538469310105683, 0.478628670499366],
  [0.906179845938664, 0.236926885056189],
  [-0.906179845938664, 0.236926885056189],
];

/** Integral of f from a to b, over many short pieces. */
function integral(f: (x: number) => number, a: number, b: number, pieces: number): number {
  const half = (b - a) / pieces / 2;
  let sum = 0;
  for (let i = 0; i < pieces; i++)
    for (const [node, weight] of GAUSS) sum += weight * half * f(a + half * (2 * i + 1 + node));
  return sum;
}

/**
 * Share of the half-space that a rectangle fills, seen from its centre: each element counts with the cosine at both ends
 * and the inverse square of its distance, d² / (π·(d² + x² + y²)²).
 */
const byIntegration = (d: number, width: number, height: number): number =>
  integral(
    (x) => integral((y) => d ** 2 / (Math.PI * (d ** 2 + x ** 2 + y ** 2) ** 2), -height / 2, height / 2, 24),
    -width / 2,
    width / 2,
    24,
  );

/** The same by the function: from so far away that the rectangle is a point, where its share is w·h / (π·d²). */
const FAR = 1e6;
const byFallOff = (d: number, width: number, height: number): number =>
  ((width * height) / (Math.PI * FAR ** 2)) * 2 ** value(fallOff(d, FAR, width, height));

describe('fall-off of a point', () => {
  it('is two stops for each doubling of the distance', () => {
    expect(fallOff(1, 2)).toBe(2);
    expect(fallOff(0.5, 4)).toBe(6);
    expect(fallOff(2, 1)).toBe(-2);
  });
});

describe('fall-off of a round front', () => {
  it('is one stop from contact to half its width away, as d² + r² doubles, worked by hand', () => {
    expect(value(fallOff(1e-9, 0.5, 1))).toBeCloseTo(1, 12);
  });

  it('is that of 1 / (d² + r²): from 3 to 4 with a radius of 3 it is log2(25 / 18), worked by hand', () => {
    expect(value(fallOff(3, 4, 6))).toBeCloseTo(Math.log2(25 / 18), 12);
  });

  it('is within 1 % of the inverse square from five widths on (the rule of five times)', () => {
    const error = 1 - 2 ** (value(fallOff(5, FAR, 1)) - value(fallOff(5, FAR)));
    expect(error).toBeGreaterThan(0);
    expect(error).toBeLessThan(0.01);
  });
});

describe('fall-off of a rectangular front', () => {
  it.each([
    [0.3, 0.3, 0.5],
    [1, 1.4, 1],
    [1, 1.4, 0.5],
    [0.6, 0.9, 0.45],
    [0.2, 2, 0.8],
    [3, 2, 1.2],
  ])('of %d by %d m at %d m agrees with a double numerical integration', (width, height, d) => {
    expect(byFallOff(d, width, height) / byIntegration(d, width, height)).toBeCloseTo(1, 8);
    const stops = Math.log2(byIntegration(d, width, height) / byIntegration(2 * d, width, height));
    expect(value(fallOff(d, 2 * d, width, height))).toBeCloseTo(stops, 8);
  });

  // view-factor-examples, FALLOFF: an edge element of length b against a parallel rectangle a by b, averaged along the edge.
  it('gives the published 0.3886 of a strip parallel to a rectangle 3 by 2 m, 0.5 m off', () => {
    const [a, b, c] = [3, 2, 0.5];
    // A corner sees a quarter of the rectangle of twice the sides; the element sees two corners.
    const strip = integral((x) => byFallOff(c, 2 * a, 2 * x) / 4, 0, b, 60);
    expect(Math.abs((2 * strip) / b - 0.3886)).toBeLessThanOrEqual(0.00005);
  });

  // view-factor-examples, FALLOFF: two parallel rectangles a by b, c apart. By symmetry the mean of one corner, four times.
  it('gives the published 0.4756 between two rectangles of 1 by 1.5 m, 0.5 m apart', () => {
    const [a, b, c] = [1, 1.5, 0.5];
    const both = integral((x) => integral((y) => byFallOff(c, 2 * x, 2 * y), 0, b, 12), 0, a, 12);
    expect(Math.abs(both / (a * b) - 0.4756)).toBeLessThanOrEqual(0.00005);
  });

  it('does not care which side is called the width', () => {
    fc.assert(
      fc.property(metres, metres, metres, metres, (near, far, w, h) => {
        expect(value(fallOff(near, far, w, h))).toBeCloseTo(value(fallOff(near, far, h, w)), 11);
      }),
      trials(61),
    );
  });

  it('lies between that of the disc inside a square and that of the disc around it', () => {
    fc.assert(
      fc.property(metres, metres, metres, (near, more, side) => {
        const far = near + more;
        const square = value(fallOff(near, far, side, side));
        expect(square).toBeLessThanOrEqual(value(fallOff(near, far, side)) + 1e-9);
        expect(square).toBeGreaterThanOrEqual(value(fallOff(near, far, side * Math.SQRT2)) - 1e-9);
      }),
      trials(62),
    );
  });
});

describe('fall-off of every front', () => {
  const front = fc.constantFrom(0, 1, 2);
  const of = (kind: number, w: number, h: number): [number?, number?] =>
    kind === 0 ? [] : kind === 1 ? [w] : [w, h];

  it('rises with the far distance, and never beyond the inverse square', () => {
    fc.assert(
      fc.property(metres, metres, metres, metres, front, (near, more, w, h, kind) => {
        const stops = value(fallOff(near, near + more, ...of(kind, w, h)));
        expect(stops).toBeGreaterThanOrEqual(0);
        expect(value(fallOff(near, near + 2 * more, ...of(kind, w, h)))).toBeGreaterThanOrEqual(stops);
        expect(stops).toBeLessThanOrEqual(value(fallOff(near, near + more)) + 1e-11);
      }),
      trials(63),
    );
  });

  it('adds up along the way, and is the same for everything twice as large', () => {
    fc.assert(
      fc.property(metres, metres, metres, metres, metres, front, (a, b, c, w, h, kind) => {
        const whole = value(fallOff(a, c, ...of(kind, w, h)));
        const parts = value(fallOff(a, b, ...of(kind, w, h))) + value(fallOff(b, c, ...of(kind, w, h)));
        expect(parts).toBeCloseTo(whole, 11);
        expect(value(fallOff(2 * a, 2 * c, ...of(kind, 2 * w, 2 * h)))).toBeCloseTo(whole, 11);
      }),
      trials(64),
    );
  });

  it('is refused for a height without a width', () => {
    const { fail, message } = refusal(fallOff(1, 2, undefined, 1.4));
    expect(fail).toBe('unreadable');
    expect(message).toContain('width is missing');
  });

  itKeepsItsRanges('FALLOFF', {
    near: [1, 'above 0'],
    far: [2, 'above 0'],
    width: [1, 'above 0'],
    height: [1.4, 'above 0'],
  });
});
