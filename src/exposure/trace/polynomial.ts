import { at } from '../core/at';
import { timeAt } from './samples';
import { lightAt, type Signal } from './signal';

/** A polynomial in u, which goes from −1 to 1 over a stretch of time. */
export interface Polynomial {
  /** Factors of 1, u, u² …, the lowest power first. */
  readonly terms: readonly number[];
  readonly middle: number;
  readonly half: number;
  /** Inverse of the normal matrix: the variance of the terms where that of a sample is 1. */
  readonly inverse: readonly (readonly number[])[];
}

const sumAt = (sums: Float64Array, k: number): number => sums[k] as number;

/**
 * Least-squares polynomial through the samples of a stretch: a local fit as of Savitzky and Golay (Analytical Chemistry 36,
 * 1964), for samples at any times.
 *
 * @returns undefined where the samples do not fix one.
 */
export function fitPolynomial(
  signal: Signal,
  from: number,
  to: number,
  degree: number,
): Polynomial | undefined {
  const first = timeAt(signal.samples, from);
  const half = (timeAt(signal.samples, to) - first) / 2;
  const middle = first + half;
  if (!(half > 0)) return undefined;
  const powers = new Float64Array(2 * degree + 1);
  const moments = new Float64Array(degree + 1);
  for (let i = from; i <= to; i++) {
    const u = (timeAt(signal.samples, i) - middle) / half;
    const light = lightAt(signal, i);
    let power = 1;
    for (let k = 0; k <= 2 * degree; k++) {
      powers[k] = sumAt(powers, k) + power;
      if (k <= degree) moments[k] = sumAt(moments, k) + power * light;
      power *= u;
    }
  }
  const inverse = inverseOf(
    Array.from({ length: degree + 1 }, (_, i) => Array.from(powers.subarray(i, i + degree + 1))),
  );
  if (inverse === undefined) return undefined;
  const terms = inverse.map((row) => row.reduce((sum, x, k) => sum + x * sumAt(moments, k), 0));
  return { terms, middle, half, inverse };
}

/** Inverse of a symmetric positive matrix by elimination (Gauss and Jordan); undefined where a pivot vanishes. */
function inverseOf(matrix: number[][]): number[][] | undefined {
  const size = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, k) => (k === i ? 1 : 0))]);
  // below this share of the number of samples a pivot is what rounding leaves of nothing
  const least = 1e-10 * at(at(rows, 0), 0);
  for (const [k, pivotRow] of rows.entries()) {
    const pivot = at(pivotRow, k);
    if (!(pivot > least)) return undefined;
    for (const [j, x] of pivotRow.entries()) pivotRow[j] = x / pivot;
    for (const [i, row] of rows.entries()) {
      if (i === k) continue;
      const factor = at(row, k);
      for (const [j, x] of pivotRow.entries()) row[j] = at(row, j) - factor * x;
    }
  }
  return rows.map((row) => row.slice(size));
}

export const polynomialAt = ({ terms }: Polynomial, u: number): number =>
  terms.reduceRight((sum, term) => sum * u + term, 0);

const slopeOf = ({ terms }: Polynomial, u: number): number =>
  terms.reduceRight((sum, term, k) => (k === 0 ? sum : sum * u + k * term), 0);

/** Standard deviation of the value, where that of a sample is 1. */
export function doubtOf({ inverse }: Polynomial, u: number): number {
  let sum = 0;
  for (const [i, row] of inverse.entries()) for (const [k, x] of row.entries()) sum += x * u ** (i + k);
  return Math.sqrt(Math.max(0, sum));
}

/** Where in the stretch, from −1 to 1, the polynomial is highest. */
export function highestOf(fit: Polynomial): number {
  // a quartic about a top has one hump, which so many steps meet to a thousandth of what it falls by
  const STEPS = 64;
  let best = -1;
  for (let k = 0; k <= STEPS; k++) {
    const u = (2 * k) / STEPS - 1;
    if (polynomialAt(fit, u) > polynomialAt(fit, best)) best = u;
  }
  return best;
}

/** Time at which the polynomial passes a level, by Newton's steps from an instant; undefined where that leaves the stretch. */
export function passes(fit: Polynomial, level: number, near: number): number | undefined {
  let u = (near - fit.middle) / fit.half;
  // Newton's steps double the digits: six are enough where they come near at all
  for (let k = 0; k < 20; k++) {
    const step = (level - polynomialAt(fit, u)) / slopeOf(fit, u);
    u += step;
    if (!(Math.abs(u) <= 1)) return undefined;
    // the next step would be its square, below the last digit
    if (Math.abs(step) < 1e-12) break;
  }
  return fit.middle + fit.half * u;
}
