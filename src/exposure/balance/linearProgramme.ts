import { fail, type Result } from '../core/result';
import type { Vector } from '../core/vector';

/** Minimise objective·x where each row·x and each x keeps its bounds. */
export interface Programme {
  readonly objective: Vector;
  /** One a condition, one member a variable. */
  readonly rows: readonly Vector[];
  readonly rowLeast: Vector;
  readonly rowMost: Vector;
  /** Bounds of the variables, all finite. */
  readonly least: Vector;
  readonly most: Vector;
}

/** Far above what a programme of 12 heads and 25 points has been seen to take. */
const MOST_MOVES = 5000;

/** A slope below this does not lead down, a pivot below this does not count, for numbers of about 1. */
const FLAT = 1e-9;
/** A move of no more than this leads nowhere. */
const STILL = 1e-12;
/** What a bound may be missed by, as a share of it; bounds near 0 and far above 1 are held as strictly as these. */
const missable = (bound: number): number => 1e-9 * Math.min(1, Math.max(1e-4, Math.abs(bound)));

/** The state between two pivots: each basic variable written as a sum of the others, which stand at one of their bounds. */
interface Dictionary {
  /** Bounds, value and side of every variable: the x first, then the rows. */
  readonly least: number[];
  readonly most: number[];
  readonly value: number[];
  readonly high: boolean[];
  /** Which variable each line stands for, and which each column. */
  readonly basic: number[];
  readonly free: number[];
  readonly lines: number[][];
}

const at = (list: Vector, i: number): number => list[i] as number;
const lineAt = ({ lines }: Dictionary, i: number): number[] => lines[i] as number[];

function begin({ rows, rowLeast, rowMost, least, most }: Programme): Dictionary {
  const value = [...least, ...rows.map((row) => row.reduce((sum, a, j) => sum + a * at(least, j), 0))];
  return {
    least: [...least, ...rowLeast],
    most: [...most, ...rowMost],
    value,
    high: value.map(() => false),
    basic: rows.map((_, i) => least.length + i),
    free: least.map((_, j) => j),
    lines: rows.map((row) => [...row]),
  };
}

/** −1 where a variable lies below its bounds, 1 above, 0 within. */
function side(d: Dictionary, variable: number): number {
  const value = at(d.value, variable);
  if (value < at(d.least, variable) - missable(at(d.least, variable))) return -1;
  return value > at(d.most, variable) + missable(at(d.most, variable)) ? 1 : 0;
}

/**
 * Column to move: of those that lead down the steepest, or, where the last move led nowhere, the one whose variable comes
 * first (Bland's rule).
 *
 * @param costs - of every variable: its part in the sum that is made small.
 */
function entering(d: Dictionary, costs: Vector, stuck: boolean): number | undefined {
  const slopes = d.free.map((variable) => at(costs, variable));
  for (let i = 0; i < d.lines.length; i++) {
    const cost = at(costs, at(d.basic, i));
    if (cost === 0) continue;
    const line = lineAt(d, i);
    for (let j = 0; j < slopes.length; j++) slopes[j] = at(slopes, j) + cost * at(line, j);
  }
  let chosen: number | undefined;
  let steepest = FLAT;
  for (let j = 0; j < slopes.length; j++) {
    const variable = at(d.free, j);
    if (at(d.most, variable) <= at(d.least, variable)) continue;
    const slope = at(slopes, j);
    const fall = d.high[variable] ? slope : -slope;
    if (fall <= FLAT) continue;
    const better = stuck ? chosen === undefined || variable < at(d.free, chosen) : fall > steepest;
    if (!better) continue;
    chosen = j;
    steepest = fall;
  }
  return chosen;
}

/** How far a column moves, and the line that stops it there (none: it goes to its own other bound). */
function leaving(d: Dictionary, column: number): { step: number; line?: number; bound?: number } {
  const variable = at(d.free, column);
  const direction = d.high[variable] ? -1 : 1;
  let found: { step: number; line?: number; bound?: number } = {
    step: at(d.most, variable) - at(d.least, variable),
  };
  let stopper = variable;
  for (let i = 0; i < d.lines.length; i++) {
    const rate = direction * at(lineAt(d, i), column);
    if (Math.abs(rate) <= FLAT) continue;
    const moved = at(d.basic, i);
    const now = side(d, moved);
    // one that is out and goes further out stops nothing; one that is out and comes back stops as it comes in
    if (now * rate > 0) continue;
    const bound = (now === 0 ? rate > 0 : now > 0) ? at(d.most, moved) : at(d.least, moved);
    const step = Math.max(0, (bound - at(d.value, moved)) / rate);
    const tie = Math.abs(step - found.step) <= STILL;
    if (tie ? moved < stopper : step < found.step) {
      found = { step, line: i, bound };
      stopper = moved;
    }
  }
  return found;
}

function pivot(d: Dictionary, line: number, column: number): void {
  const row = lineAt(d, line);
  const by = at(row, column);
  for (let j = 0; j < row.length; j++) row[j] = j === column ? 1 / by : -at(row, j) / by;
  for (let i = 0; i < d.lines.length; i++) {
    if (i === line) continue;
    const other = lineAt(d, i);
    const part = at(other, column);
    if (part === 0) continue;
    for (let j = 0; j < other.length; j++) other[j] = (j === column ? 0 : at(other, j)) + part * at(row, j);
  }
  const out = at(d.basic, line);
  d.basic[line] = at(d.free, column);
  d.free[column] = out;
}

/** Moves a column as far as it goes; tells how far that was. */
function move(d: Dictionary, column: number): number {
  const variable = at(d.free, column);
  const { step, line, bound } = leaving(d, column);
  const by = d.high[variable] ? -step : step;
  for (let i = 0; i < d.lines.length; i++) {
    const moved = at(d.basic, i);
    d.value[moved] = at(d.value, moved) + by * at(lineAt(d, i), column);
  }
  if (line === undefined || bound === undefined) {
    d.high[variable] = !d.high[variable];
    d.value[variable] = d.high[variable] ? at(d.most, variable) : at(d.least, variable);
    return step;
  }
  d.value[variable] = at(d.value, variable) + by;
  const out = at(d.basic, line);
  d.value[out] = bound;
  d.high[out] = bound === at(d.most, out);
  pivot(d, line, column);
  return step;
}

/**
 * x of a small dense linear programme by the simplex method for bounded variables (Dantzig; as in Chvátal, Linear
 * Programming, 1983, chapter 8). While a row misses its bounds, the sum of the misses is minimised, then the objective.
 *
 * From a move that led nowhere until one that leads on, Bland's rule (New finite pivoting rules for the simplex method,
 * Mathematics of Operations Research 2, 1977) holds, so that no basis comes twice; a cap on the moves holds it should
 * rounding undo that. Meant for rows and variables of about 1.
 *
 * @returns x, or undefined where nothing keeps all bounds (to 1e-9); a `no-answer` refusal at the cap.
 */
export function linearProgramme(
  programme: Programme,
  mostMoves = MOST_MOVES,
): Result<readonly number[] | undefined> {
  const count = programme.least.length;
  const d = begin(programme);
  const prices = d.value.map((_, variable) => programme.objective[variable] ?? 0);
  const misses = prices.map(() => 0);
  let stuck = false;
  for (let moves = 0; moves <= mostMoves; moves++) {
    misses.fill(0);
    for (const variable of d.basic) misses[variable] = side(d, variable);
    const missing = misses.some((miss) => miss !== 0);
    const column = entering(d, missing ? misses : prices, stuck);
    if (column === undefined) return missing ? undefined : d.value.slice(0, count);
    stuck = move(d, column) <= STILL;
  }
  return fail('no-answer', `No answer was found in ${mostMoves} steps: leave out a head or a point.`);
}
