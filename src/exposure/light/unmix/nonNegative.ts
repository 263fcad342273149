import { at } from '../../core/at';
import type { Vector } from '../../core/vector';
import { dot, length, pivotedQr } from './pivotedQr';

/** How far a column may still point to the target, as a share of the target's length, and yet bring nothing. */
const SETTLED = 1e-12;

interface Trial {
  /** Column numbers that may be above 0, and their x. */
  readonly used: readonly number[];
  readonly x: Vector;
}

/** Least squares over some of the columns; undefined where they are not independent. */
function solved(columns: readonly Vector[], used: readonly number[], target: Vector): Trial | undefined {
  const qr = pivotedQr(used.map((j) => at(columns, j)));
  if (qr.rank < used.length) return undefined;
  return { used: qr.order.map((k) => at(used, k)), x: qr.solve(target) };
}

/** All x of all columns, 0 where a column is not used. */
function spreadOut(trial: Trial, count: number): number[] {
  const all = Array.from({ length: count }, () => 0);
  trial.used.forEach((j, k) => (all[j] = at(trial.x, k)));
  return all;
}

/**
 * Goes from x ≥ 0 towards a trial that has members below 0: as far as none goes below, drops the columns that have come
 * to 0, solves again, until no member of the trial is below 0.
 */
function withoutNegatives(columns: readonly Vector[], target: Vector, start: Vector, trial: Trial): number[] {
  const x = [...start];
  let now = trial;
  while (now.x.some((z) => z <= 0)) {
    const way = (j: number, z: number): number => (x[j] === 0 ? 0 : at(x, j) / (at(x, j) - z));
    const low = now.used.map((j, k) => [j, at(now.x, k)] as const).filter(([, z]) => z <= 0);
    const part = low.reduce((least, [j, z]) => Math.min(least, way(j, z)), 1);
    const gone = new Set(low.filter(([j, z]) => way(j, z) <= part).map(([j]) => j));
    now.used.forEach((j, k) => {
      x[j] = gone.has(j) ? 0 : Math.max(0, at(x, j) + part * (at(now.x, k) - at(x, j)));
    });
    const kept = now.used.filter((j) => !gone.has(j));
    // where rounding makes the rest dependent, nothing is left, and the trial brings the sum no nearer
    now = solved(columns, kept, target) ?? { used: [], x: [] };
  }
  return spreadOut(now, columns.length);
}

/**
 * x ≥ 0 that brings Σ columnⱼ·xⱼ nearest to a target in least squares: the active-set method of Lawson and Hanson, Solving
 * Least Squares Problems (1974), chapter 23, with QR for its least squares.
 *
 * Each round takes in the column that points most to what is left and must bring the sum nearer. No set of columns can come
 * twice, so it ends. Columns that are not independent are allowed: the sum is unique, the x then need not be.
 *
 * @param columns - each of length 1, so that one measure of "points to nothing" fits all.
 */
export function nonNegative(columns: readonly Vector[], target: Vector): number[] {
  const left = (x: Vector): number[] =>
    target.map((t, i) => columns.reduce((sum, c, j) => sum - (c[i] as number) * (x[j] as number), t));
  let best = columns.map(() => 0);
  for (;;) {
    const missing = left(best);
    const pull = columns.map((column) => dot(column, missing));
    const used = columns.flatMap((_, j) => (at(best, j) > 0 ? [j] : []));
    const next = columns
      .map((_, j) => j)
      .filter((j) => !used.includes(j) && at(pull, j) > SETTLED * length(target))
      .sort((a, b) => at(pull, b) - at(pull, a));
    let better: number[] | undefined;
    for (const j of next) {
      const trial = solved(columns, [...used, j], target);
      if (!trial) continue;
      const x = withoutNegatives(columns, target, best, trial);
      if (length(left(x)) >= length(missing)) continue;
      better = x;
      break;
    }
    if (!better) return best;
    best = better;
  }
}
