import { at } from '../../core/at';
import type { Vector } from '../../core/vector';

/** Columns that add less than this share to the others, after scaling all to length 1, count as made of the others. */
const RANK_TOLERANCE = 1e-9;

export const dot = (a: Vector, b: Vector): number => a.reduce((sum, x, i) => sum + x * (b[i] as number), 0);
export const length = (a: Vector): number => Math.sqrt(dot(a, a));

/** A·Π = Q·R of a matrix given by its columns. */
export interface PivotedQr {
  /** How many columns are independent. */
  readonly rank: number;
  /** Column numbers in the order they were taken; the first `rank` are independent, the others made of them. */
  readonly order: readonly number[];
  /** x of the independent columns, in that order, that brings their sum nearest to a target (least squares). */
  readonly solve: (target: Vector) => number[];
  /** What each dependent column is made of: a row for each of order[rank…], a member for each of order[…rank]. */
  readonly makeUp: () => number[][];
  /** Row k of the pseudo-inverse of the independent columns: by how much each member of the target changes x[k]. */
  readonly influence: (k: number) => number[];
}

/** v − 2·h·(h·v) from member `from` on: a reflection in the plane across the unit vector h. */
function reflect(v: number[], h: Vector, from: number): void {
  let along = 0;
  for (let i = from; i < v.length; i++) along += (h[i] as number) * (v[i] as number);
  for (let i = from; i < v.length; i++) v[i] = (v[i] as number) - 2 * along * (h[i] as number);
}

/** Length of what a column still has from member `from` on. */
function rest(column: Vector, from: number): number {
  let sum = 0;
  for (let i = from; i < column.length; i++) sum += (column[i] as number) ** 2;
  return Math.sqrt(sum);
}

/**
 * QR by Householder reflections, the longest remaining column first (Businger and Golub 1965; Golub and Van Loan, Matrix
 * Computations, "QR with column pivoting"). Scale the columns alike beforehand: the rank is counted against the longest.
 *
 * @param columns - at least one, all of one length, no fewer members than there are columns.
 */
export function pivotedQr(columns: readonly Vector[], tolerance = RANK_TOLERANCE): PivotedQr {
  const left = columns.map((column) => [...column]);
  const order = columns.map((_, j) => j);
  const reflections: number[][] = [];
  const members = left[0]?.length ?? 0;
  let first = 0;
  let rank = 0;
  for (; rank < Math.min(left.length, members); rank++) {
    let longest = rank;
    let size = rest(at(left, rank), rank);
    for (let j = rank + 1; j < left.length; j++) {
      const other = rest(at(left, j), rank);
      if (other > size) [longest, size] = [j, other];
    }
    [left[rank], left[longest]] = [at(left, longest), at(left, rank)];
    [order[rank], order[longest]] = [at(order, longest), at(order, rank)];
    first = Math.max(first, size);
    if (!(size > tolerance * first)) break;
    const pivot = at(left, rank);
    const across = pivot.map((x, i) => (i < rank ? 0 : x));
    across[rank] = at(across, rank) + (at(pivot, rank) < 0 ? -size : size);
    const across1 = length(across);
    const h = across.map((x) => x / across1);
    reflections.push(h);
    for (let j = rank; j < left.length; j++) reflect(at(left, j), h, rank);
  }
  /** Member i of R's column j. */
  const r = (i: number, j: number): number => (left[j] as number[])[i] as number;
  const backwards = (right: Vector): number[] => {
    const x = right.slice(0, rank);
    for (let i = rank - 1; i >= 0; i--) {
      let sum = x[i] as number;
      for (let j = i + 1; j < rank; j++) sum -= r(i, j) * (x[j] as number);
      x[i] = sum / r(i, i);
    }
    return x;
  };
  return {
    rank,
    order,
    solve: (target) => {
      const turned = [...target];
      reflections.forEach((h, k) => reflect(turned, h, k));
      return backwards(turned);
    },
    makeUp: () => left.slice(rank).map(backwards),
    influence: (k) => {
      const z = Array.from({ length: members }, () => 0);
      for (let i = k; i < rank; i++) {
        let sum = i === k ? 1 : 0;
        for (let j = k; j < i; j++) sum -= r(j, i) * (z[j] as number);
        z[i] = sum / r(i, i);
      }
      for (let i = rank - 1; i >= 0; i--) reflect(z, at(reflections, i), i);
      return z;
    },
  };
}
