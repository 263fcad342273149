import { describe, expect, it } from 'vitest';
import { runs, seedOf } from '../../full';
import { linearProgramme, type Programme } from '../../../src/exposure/balance/linearProgramme';
import { random } from '../random';
import { refusal, value } from '../support';

const sum = (row: readonly number[], x: readonly number[]): number =>
  row.reduce((all, a, j) => all + a * (x[j] as number), 0);

/** One variable that cannot move, and one condition on it. */
const fixed = (x: number, least: number, most: number): Programme => ({
  objective: [1],
  rows: [[1]],
  rowLeast: [least],
  rowMost: [most],
  least: [x],
  most: [x],
});

describe('a bound of a small linear programme', () => {
  it('of 1 may be missed by a thousand-millionth, above and below', () => {
    expect(linearProgramme(fixed(1 + 0.9e-9, 0, 1))).toHaveLength(1);
    expect(linearProgramme(fixed(1 + 1.1e-9, 0, 1))).toBeUndefined();
    expect(linearProgramme(fixed(1 - 0.9e-9, 1, 2))).toHaveLength(1);
    expect(linearProgramme(fixed(1 - 1.1e-9, 1, 2))).toBeUndefined();
  });

  it('above 1 by no more, below 1 by the same share of it, and at 0 by a ten-thousandth of that', () => {
    for (const [bound, miss] of [
      [100, 1e-9],
      [0.01, 1e-11],
      [0, 1e-13],
      [-0.01, 1e-11],
    ] as const) {
      // prettier-ignore
      expect(linearProgramme(fixed(bound + 0.9 * miss, -200, bound)), `${bound}`).toHaveLength(1);
      expect(linearProgramme(fixed(bound + 1.1 * miss, -200, bound)), `${bound}`).toBeUndefined();
      expect(linearProgramme(fixed(bound - 0.9 * miss, bound, 200)), `${bound}`).toHaveLength(1);
      expect(linearProgramme(fixed(bound - 1.1 * miss, bound, 200)), `${bound}`).toBeUndefined();
    }
  });
});

describe('a variable of a small linear programme that is past its bound', () => {
  it('stops as it comes back to it: worked by hand', () => {
    // b is at most a, and 2·(a + c) at most 3·b: 2·(a + c) − b is 2·b at the most, which a = b = 1000 and c = 500 give
    const programme: Programme = {
      objective: [-2, 1, -2],
      rows: [
        [-3, 3, 0],
        [2, -3, 2],
      ],
      rowLeast: [-10_000, -10_000],
      rowMost: [0, 0],
      least: [0, 0, 0],
      most: [1000, 1000, 1000],
    };
    expect(linearProgramme(programme)).toEqual([1000, 1000, 500]);
  });
});

describe('the cap on the moves of a small linear programme', () => {
  const best = (objective: number, mostMoves: number) =>
    linearProgramme(
      { objective: [objective], rows: [], rowLeast: [], rowMost: [], least: [0], most: [1] },
      mostMoves,
    );

  it('lets through what is found in as many moves, and refuses what takes one more', () => {
    // at its start already
    expect(best(1, 0)).toEqual([0]);
    // a single move, to the other bound
    expect(best(-1, 1)).toEqual([1]);
    expect(refusal(best(-1, 0)).fail).toBe('no-answer');
  });
});

/** The point where some rows come to given sums while all but some variables stand still; undefined where there is none. */
function solve(rows: readonly (readonly number[])[], sums: readonly number[]): number[] | undefined {
  const lines = rows.map((row, i) => [...row, sums[i] as number]);
  for (let k = 0; k < lines.length; k++) {
    const size = (i: number): number => Math.abs(lines[i]?.[k] as number);
    let top = k;
    for (let i = k; i < lines.length; i++) if (size(i) > size(top)) top = i;
    if (size(top) < 1e-9) return undefined;
    const line = lines[top] as number[];
    [lines[top], lines[k]] = [lines[k] as number[], line];
    for (const other of lines) {
      if (other === line) continue;
      const part = (other[k] as number) / (line[k] as number);
      for (let j = k; j < other.length; j++) other[j] = (other[j] as number) - part * (line[j] as number);
    }
  }
  return lines.map((line, k) => (line[lines.length] as number) / (line[k] as number));
}
const subsets = (count: number, size: number, from = 0): number[][] =>
  size === 0
    ? [[]]
    : Array.from({ length: Math.max(0, count - from) }, (_, i) => from + i).flatMap((first) =>
        subsets(count, size - 1, first + 1).map((rest) => [first, ...rest]),
      );
/** Each way to take one of two. */
const sides = (low: readonly number[], high: readonly number[]): number[][] =>
  low.reduce<number[][]>(
    (all, x, i) =>
      all.flatMap((way) => [
        [...way, x],
        [...way, high[i] as number],
      ]),
    [[]],
  );
const pick = <T>(list: readonly T[], places: readonly number[]): T[] => places.map((i) => list[i] as T);

/** The least of a programme by trying all corners: as many variables are free as rows stand at a bound. */
function leastOfCorners({ objective, rows, rowLeast, rowMost, least, most }: Programme): number | undefined {
  let best: number | undefined;
  for (let size = 0; size <= Math.min(rows.length, least.length); size++)
    for (const free of subsets(least.length, size)) {
      const still = least.map((_, j) => j).filter((j) => !free.includes(j));
      for (const stand of sides(pick(least, still), pick(most, still)))
        for (const active of subsets(rows.length, size))
          for (const sums of sides(pick(rowLeast, active), pick(rowMost, active))) {
            const x = least.map(() => 0);
            still.forEach((j, i) => (x[j] = stand[i] as number));
            const left = active.map((r, i) => (sums[i] as number) - sum(rows[r] as number[], x));
            const found = solve(active.map((r) => pick(rows[r] as number[], free)), left); // prettier-ignore
            if (!found) continue;
            free.forEach((j, i) => (x[j] = found[i] as number));
            const within = (at: number, low: number, high: number): boolean =>
              at >= low - 1e-9 && at <= high + 1e-9;
            if (!x.every((xj, j) => within(xj, least[j] as number, most[j] as number))) continue;
            if (!rows.every((row, i) => within(sum(row, x), rowLeast[i] as number, rowMost[i] as number))) continue; // prettier-ignore
            best = Math.min(best ?? Infinity, sum(objective, x));
          }
    }
  return best;
}

describe('a small linear programme many of whose corners meet', () => {
  const list = (count: number, x: number): number[] => Array.from({ length: count }, () => x);
  /** Rows through 0, variables from 0 to `most`; a row is at most 0, or lies within bounds given. */
  const throughZero = (
    objective: readonly number[],
    rows: readonly (readonly number[])[],
    most = 1,
    rowLeast: readonly number[] = list(rows.length, -100),
    rowMost: readonly number[] = list(rows.length, 0),
  ): Programme => ({
    objective,
    rows,
    rowLeast,
    rowMost,
    least: list(objective.length, 0),
    most: list(objective.length, most),
  });
  // Each goes round for ever where one of the choices of the method is made another way: which of the columns is moved
  // after a move that led nowhere, or which of the lines that stop it at once.
  it.each([
    [
      'three rows of five',
      throughZero(
        [-3, 0, -2, 1, -1],
        [
          [-1, 3, -4, 2, 3],
          [-1, -1, 1, 3, 3],
          [4, 0, -3, -3, 2],
        ],
        10,
        [-1, 0, 0],
        [0, 100, 1],
      ),
    ],
    [
      'five rows of six',
      throughZero(
        [2, 1, -2, 2, -1, -2],
        [
          [-1, 2, -2, -2, 0, 1],
          [2, -1, -2, 0, 0, 2],
          [2, 2, 2, 0, 2, 2],
          [0, -2, -1, 0, 2, 0],
          [2, 2, -1, 1, -2, -2],
        ],
        10,
        [0, 0, 0, -1, 0],
        [1, 100, 100, 1, 0],
      ),
    ],
    [
      'two equalities and a row of six',
      throughZero(
        [-1, -0.5, 0.5, 0.5, 1, 0.5],
        [
          [-0.5, 0.5, 0.5, 0.5, -1, 0.5],
          [0.5, 0.5, -1, 1, -0.5, 1],
          [1, 0, 0, 0.5, -1, -0.5],
        ],
        1,
        [0, 0, -100],
      ),
    ],
    [
      'four rows of four',
      throughZero(
        [-1.125, 0.875, -0.125, -0.875],
        [
          [0.75, -0.875, -0.5, 0.875],
          [0.25, -0.375, 0.75, 0],
          [0.5, 0.25, 0.25, -0.75],
          [0.375, -0.625, -0.75, 0.5],
        ],
      ),
    ],
    [
      'an equality and a row of seven',
      throughZero(
        [0.75, 0.25, -0.125, 1, 0.5, 0.625, -1.375],
        [
          [-0.875, -1, -0.75, -1.25, 0.5, 1.25, 0.25],
          [1.25, -1.125, 1, 1.25, -0.5, -0.875, -0.5],
        ],
        1,
        [-100, 0],
      ),
    ],
  ])('comes to the least of all its corners, and does not go round for ever: %s', (_, programme) => {
    // prettier-ignore
    const x = value(linearProgramme(programme)) as readonly number[];
    expect(sum(programme.objective, x)).toBeCloseTo(leastOfCorners(programme) as number, 9);
  });

  it('comes to the least of all its corners, or fits nothing where there is none, hundreds of them', () => {
    const next = random(seedOf(77));
    const whole = (from: number, to: number): number => from + Math.floor((to - from + 1) * next());
    let none = 0;
    for (let n = 0; n < runs(300); n++) {
      const count = whole(1, 3);
      const rows = Array.from({ length: whole(1, 3) }, () => list(count, 0).map(() => whole(-2, 2)));
      const middle = rows.map(() => whole(-2, 2));
      const programme: Programme = {
        objective: list(count, 0).map(() => whole(-2, 2)),
        rows,
        rowLeast: middle.map((m) => m - whole(0, 1)),
        rowMost: middle.map((m) => m + whole(0, 1)),
        least: list(count, -1),
        most: list(count, 0).map(() => whole(-1, 1)),
      };
      const x = value(linearProgramme(programme));
      const wanted = leastOfCorners(programme);
      if (wanted === undefined) {
        none++;
        expect(x, `programme ${n}`).toBeUndefined();
      } else expect(x && sum(programme.objective, x), `programme ${n}`).toBeCloseTo(wanted, 9);
    }
    expect(none).toBeGreaterThan(runs(300) / 6);
    expect(none).toBeLessThan((5 / 6) * runs(300));
  });
});
