import { fcnnlsVector } from 'ml-fcnnls';
import { Matrix, QrDecomposition, SingularValueDecomposition } from 'ml-matrix';

export const ones = (count: number): number[] => Array.from({ length: count }, () => 1);

/** A pattern of 0 and 1, or with shares of the power down to six stops. */
export const drawPattern = (heads: number, rows: number, shares: boolean, next: () => number): number[][] =>
  Array.from({ length: rows }, () =>
    Array.from({ length: heads }, () => (next() < 0.5 ? 0 : shares ? 2 ** (-6 * next()) : 1)),
  );
export const hasDarkRow = (pattern: readonly (readonly number[])[]): boolean =>
  pattern.some((row) => row.every((share) => share === 0));

/** What a meter that is never off reads. */
export const reads = (pattern: readonly (readonly number[])[], lights: readonly number[]): number[] =>
  pattern.map((row) => Math.sqrt(row.reduce((sum, share, j) => sum + share * (lights[j] as number), 0)));
/** What a meter shows to a tenth of a stop. */
export const tenth = (reading: number): number => 2 ** (Math.round(20 * Math.log2(reading)) / 20);

/** Each row divided by its light: what general libraries solve against ones. */
export const weighted = (pattern: readonly (readonly number[])[], readings: readonly number[]): number[][] =>
  pattern.map((row, i) => row.map((share) => share / (readings[i] as number) ** 2));
const lengthsOf = (rows: readonly (readonly number[])[]): number[] =>
  (rows[0] ?? []).map((_, j) => Math.hypot(...rows.map((row) => row[j] as number)));
const scaled = (rows: readonly (readonly number[])[], lengths: readonly number[]): number[][] =>
  rows.map((row) => row.map((x, j) => x / (lengths[j] as number)));

/** Longest to shortest axis, the columns scaled to length 1. */
export function condition(rows: readonly (readonly number[])[]): number {
  const lengths = lengthsOf(rows);
  if (lengths.includes(0)) return Infinity;
  return new SingularValueDecomposition(new Matrix(scaled(rows, lengths))).condition;
}

/** Fast combinatorial non-negative least squares against ones, by a general library. */
export function nonNegativeByLibrary(rows: readonly (readonly number[])[]): number[] {
  // the library counts a column as settled by an absolute gradient: the columns are given at length 1
  const lengths = lengthsOf(rows);
  const { K } = fcnnlsVector(scaled(rows, lengths), ones(rows.length), {
    gradientTolerance: 1e-12,
    maxIterations: 1000,
  });
  return K.to1DArray().map((x, j) => x / (lengths[j] as number));
}

/** Least squares against ones, by the QR of a general library. */
export const leastSquaresByLibrary = (rows: readonly (readonly number[])[]): number[] =>
  new QrDecomposition(new Matrix(rows.map((row) => [...row])))
    .solve(Matrix.columnVector(ones(rows.length)))
    .to1DArray();
