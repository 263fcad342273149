import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import {
  doubtOf,
  fitPolynomial,
  highestOf,
  passes,
  type Polynomial,
  polynomialAt,
} from '../../../src/exposure/trace/polynomial';
import { timeAt } from '../../../src/exposure/trace/samples';
import { lightAt, type Signal } from '../../../src/exposure/trace/signal';
import { expectNear } from '../support';
import { noiseFrom } from './shapes';
import { signalOf } from './signals';

/** The fit, where there must be one. */
function fitted(signal: Signal, from: number, to: number, degree: number): Polynomial {
  const fit = fitPolynomial(signal, from, to, degree);
  if (fit === undefined) throw new Error('no fit');
  return fit;
}

/** From 1 at the time 1, over 5 at 2, to 9 at 5, and a lone sample before and after. */
const three = () => signalOf([70, 1, 5, 9, 80], { times: [0, 1, 2, 5, 6] });

describe('a fitted polynomial', () => {
  it('runs from −1 to 1 over the samples from the first to the last of them', () => {
    expect(fitted(three(), 1, 3, 1)).toMatchObject({ middle: 3, half: 2 });
    expect(fitted(three(), 0, 4, 2)).toMatchObject({ middle: 3, half: 3 });
  });

  it('passes through as many samples as it has terms', () => {
    const fit = fitted(three(), 1, 3, 2);
    // 23/3 + 4·u − 8/3·u² is 1, 5 and 9 at u = −1, −1/2 and 1
    expect(fit.terms).toHaveLength(3);
    for (const [k, term] of [23 / 3, 4, -8 / 3].entries()) expectNear(fit.terms[k] as number, term);
    expectNear(polynomialAt(fit, -1), 1);
    expectNear(polynomialAt(fit, -0.5), 5);
    expectNear(polynomialAt(fit, 1), 9);
  });

  it('is the straight line of the least squares, worked by hand', () => {
    // u = −1, −1/2, 1 with light 1, 5, 9: means −1/6 and 5, Σ(u−ū)² = 13/6, Σ(u−ū)(y−ȳ) = 8
    const { terms } = fitted(three(), 1, 3, 1);
    expectNear(terms[1] as number, 48 / 13);
    expectNear(terms[0] as number, 5 + 48 / 78);
    expect(terms).toHaveLength(2);
    expect(fitted(three(), 1, 3, 0).terms).toEqual([5]);
  });

  it('leaves deviations that go with no power of the time, whatever its degree', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 4 }),
        fc.integer({ min: 12, max: 60 }),
        fc.integer({ min: 1, max: 1e6 }),
        (degree, count, seed) => {
          const next = noiseFrom(seed);
          const times = Float64Array.from({ length: count }, next).sort();
          const signal = signalOf(times.map(next), { times, sign: -1, base: 0.5, scale: 2 });
          const [from, to] = [2, count - 2];
          const fit = fitted(signal, from, to, degree);
          for (let power = 0; power <= degree; power++) {
            let sum = 0;
            for (let i = from; i <= to; i++) {
              const u = (timeAt(signal.samples, i) - fit.middle) / fit.half;
              sum += (lightAt(signal, i) - polynomialAt(fit, u)) * u ** power;
            }
            expect(Math.abs(sum)).toBeLessThan(1e-9);
          }
        },
      ),
      trials(321),
    );
  });

  it('is none where the samples are fewer than its terms, or lie at fewer times', () => {
    const signal = signalOf([1, 5, 9, 4], { times: [1, 1, 2, 2] });
    expect(fitPolynomial(signal, 0, 3, 2)).toBeUndefined();
    expect(fitPolynomial(signal, 0, 3, 1)).toBeDefined();
    expect(fitPolynomial(three(), 1, 3, 3)).toBeUndefined();
  });

  it('is none of samples at one instant, over which nothing can run from −1 to 1', () => {
    const signal = signalOf([1, 5, 9, 4], { times: [1, 1, 1, 2] });
    for (const degree of [0, 1, 2]) expect(fitPolynomial(signal, 0, 2, degree)).toBeUndefined();
  });

  it('is none where two samples are too near each other to tell its bend', () => {
    // At u = −1, 1 − ε and 1, what u² has of its own beside 1 and u is 2·ε²: it takes 1e-10 for each sample.
    const bent = (near: number) => fitPolynomial(signalOf([0, 1, 1], { times: [-1, 1 - near, 1] }), 0, 2, 2);
    expect(bent(1e-5)).toBeUndefined();
    expect(bent(1e-4)).toBeDefined();
  });
});

describe('the doubt of a fitted polynomial', () => {
  it('is that of the mean, and of a straight line, as in any book of statistics', () => {
    const flat = fitted(three(), 1, 3, 0);
    const line = fitted(three(), 1, 3, 1);
    for (const u of [-1, -0.25, 0, 0.5, 1]) {
      expectNear(doubtOf(flat, u), Math.sqrt(1 / 3));
      expectNear(doubtOf(line, u), Math.sqrt(1 / 3 + (u + 1 / 6) ** 2 / (13 / 6)));
    }
  });

  it('is that of a sample where it passes through it, and what three of them weigh elsewhere', () => {
    const fit = fitted(three(), 1, 3, 2);
    for (const u of [-1, -0.5, 1]) expectNear(doubtOf(fit, u), 1);
    // Lagrange's weights of −1, −1/2 and 1 at u = 1/2: (1 · −1/2) / (−1/2 · −2), (3/2 · −1/2) / (1/2 · −3/2), (3/2 · 1) / (2 · 3/2)
    expectNear(doubtOf(fit, 0.5), Math.hypot(-0.5, 1, 0.5));
  });
});

/** A polynomial over the times from 1 to 5. */
const over = (...terms: readonly number[]): Polynomial => ({ terms, middle: 3, half: 2, inverse: [] });

describe('a polynomial', () => {
  it('has the value of its terms', () => {
    // 7 − 2/2 + 3/4 − 5/8
    expect(polynomialAt(over(7, -2, 3, -5), 0.5)).toBe(6.125);
    expect(polynomialAt(over(7, -2, 3, -5), 0)).toBe(7);
    expect(polynomialAt(over(7, -2, 3, -5), -2)).toBe(63);
  });

  it('is highest at an end, or within, to a thirty-second', () => {
    expect(highestOf(over(0, 1))).toBe(1);
    expect(highestOf(over(0, -1))).toBe(-1);
    // 2 − (u − 1/4)², and −(u + 5/32)²
    expect(highestOf(over(2 - 1 / 16, 1 / 2, -1))).toBe(0.25);
    expect(highestOf(over(-25 / 1024, -10 / 32, -1))).toBe(-5 / 32);
  });

  it('is highest at the first of several places that are alike', () => {
    expect(highestOf(over(4))).toBe(-1);
    // −(u² − 1/4)²
    expect(highestOf(over(-1 / 16, 0, 1 / 2, 0, -1))).toBe(-0.5);
  });
});

describe('a level', () => {
  it('is passed where a straight line reaches it, wherever it is looked for', () => {
    for (const near of [1, 2.5, 5]) expectNear(passes(over(0.25, 0.5), 0.5, near) as number, 4);
    expect(passes(over(0.25, 0.5), 0.75, 3)).toBe(5);
  });

  it('is passed at the place next to where it is looked for', () => {
    // u² is 1/4 at u = ±1/2, the times 2 and 4
    expectNear(passes(over(0, 0, 1), 0.25, 1) as number, 2);
    expectNear(passes(over(0, 0, 1), 0.25, 5) as number, 4);
    // 1 + u + u³ at u = 1/4
    expectNear(passes(over(1, 1, 0, 1), 1 + 1 / 4 + 1 / 64, 4.5) as number, 3.5);
  });

  it('is not passed beyond the ends, nor where there is no slope to follow', () => {
    expect(passes(over(0.25, 0.5), 0.8, 3)).toBeUndefined();
    expect(passes(over(0.25, 0.5), -0.3, 3)).toBeUndefined();
    expect(passes(over(0, 0, 1), 0.25, 3)).toBeUndefined();
    expect(passes(over(1), 0.5, 3)).toBeUndefined();
  });

  it('is looked for in twenty steps, of which each halves the way to where a polynomial only touches it', () => {
    expect(passes({ ...over(0, 0, 1), middle: 0, half: 1 }, 0, 1)).toBe(2 ** -20);
  });
});
