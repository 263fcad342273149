import { beforeAll, describe, expect, it } from 'vitest';
import { caseNumbers, runs, seedOf } from '../../full';
import { linearProgramme, type Programme } from '../../../src/exposure/balance/linearProgramme';
import { refusal, value } from '../support';
import { random } from '../random';
import { type Highs, highsLibrary } from './highs';

let highs: Highs;
beforeAll(async () => {
  highs = await highsLibrary();
});

const sum = (row: readonly number[], x: readonly number[]): number =>
  row.reduce((all, a, j) => all + a * (x[j] as number), 0);

/** The least that the library finds, undefined where nothing fits. */
function byLibrary({ objective, rows, rowLeast, rowMost, least, most }: Programme): number | undefined {
  const terms = (row: readonly number[]): string =>
    row.map((a, j) => `${a < 0 ? '-' : '+'} ${Math.abs(a)} x${j}`).join(' ');
  const conditions = rows.flatMap((row, i) => [
    `l${i}: ${terms(row)} >= ${rowLeast[i]}`,
    `u${i}: ${terms(row)} <= ${rowMost[i]}`,
  ]);
  const bounds = least.map((low, j) => `${low} <= x${j} <= ${most[j]}`);
  const solved = highs.solve(
    `Minimize\n ${terms(objective)}\nSubject To\n ${conditions.join('\n ')}\nBounds\n ${bounds.join('\n ')}\nEnd\n`,
    { primal_feasibility_tolerance: 1e-10, dual_feasibility_tolerance: 1e-10 },
  );
  if (solved.Status === 'Infeasible') return undefined;
  if (solved.Status !== 'Optimal') throw new Error(`the library came to ${solved.Status}`);
  return solved.ObjectiveValue;
}

/** Numbers of about 1, or small whole ones, which make many corners meet in one point. */
function draw(seed: number): Programme {
  const next = random(seed);
  const variables = 1 + Math.floor(12 * next());
  const conditions = 1 + Math.floor(25 * next());
  const wholes = next() < 0.5;
  const number = (): number => (wholes ? Math.floor(5 * next()) - 2 : 4 * next() - 2);
  const list = (count: number, x: () => number): number[] => Array.from({ length: count }, x);
  const rows = list(conditions, () => 0).map(() => list(variables, number));
  const least = list(variables, () => (next() < 0.5 ? 0 : -next()));
  const most = least.map((low) => low + (next() < 0.1 ? 0 : wholes ? 1 : 2 * next()));
  const inside = least.map((low, j) => low + next() * ((most[j] as number) - low));
  // half of them round a point that fits, a quarter of the conditions equalities there
  const about = next() < 0.7 ? rows.map((row) => sum(row, inside)) : list(conditions, number);
  const loose = (): number => (next() < 0.25 ? 0 : wholes ? Math.floor(2 * next()) : next());
  return {
    objective: list(variables, number),
    rows,
    rowLeast: about.map((x) => x - loose()),
    rowMost: about.map((x) => x + loose()),
    least,
    most,
  };
}

describe('a small linear programme', () => {
  it('has the least that a general library finds, or fits nothing where it says so', () => {
    let fit = 0;
    let none = 0;
    for (const seed of caseNumbers(150)) {
      const programme = draw(seed);
      const wanted = byLibrary(programme);
      const x = value(linearProgramme(programme));
      if (wanted === undefined || x === undefined) {
        expect(x, `programme ${seed}`).toBe(wanted);
        none++;
        continue;
      }
      fit++;
      const { objective, rows, rowLeast, rowMost, least, most } = programme;
      expect(Math.abs(sum(objective, x) - wanted), `programme ${seed}`).toBeLessThan(1e-7);
      x.forEach((xj, j) => {
        expect(xj).toBeGreaterThanOrEqual((least[j] as number) - 1e-8);
        expect(xj).toBeLessThanOrEqual((most[j] as number) + 1e-8);
      });
      rows.forEach((row, i) => {
        expect(sum(row, x)).toBeGreaterThanOrEqual((rowLeast[i] as number) - 1e-8);
        expect(sum(row, x)).toBeLessThanOrEqual((rowMost[i] as number) + 1e-8);
      });
    }
    expect(fit).toBeGreaterThan(runs(150) / 3);
    expect(none).toBeGreaterThan(runs(150) / 10);
  });

  it('ends where the simplex method without care goes round for ever: the example of Beale (1955), from memory', () => {
    // minimise −3/4·a + 150·b − 1/50·c + 6·d: the least is −1/20
    const beale: Programme = {
      objective: [-0.75, 150, -0.02, 6],
      rows: [
        [0.25, -60, -0.04, 9],
        [0.5, -90, -0.02, 3],
      ],
      rowLeast: [-1e6, -1e6],
      rowMost: [0, 0],
      least: [0, 0, 0, 0],
      most: [1e4, 1e4, 1, 1e4],
    };
    const x = value(linearProgramme(beale)) as readonly number[];
    expect(sum(beale.objective, x)).toBeCloseTo(-0.05, 10);
    expect(byLibrary(beale)).toBeCloseTo(-0.05, 8);
  });

  it('ends where all corners meet in one point: conditions through 0, hundreds of them', () => {
    const next = random(seedOf(99));
    for (let n = 0; n < runs(300); n++) {
      const rows = Array.from({ length: 25 }, () =>
        Array.from({ length: 12 }, () => Math.floor(3 * next()) - 1),
      );
      const programme: Programme = {
        objective: rows[0]?.map(() => Math.floor(5 * next()) - 2) ?? [],
        rows,
        rowLeast: rows.map(() => (next() < 0.1 ? 0 : -20)),
        rowMost: rows.map(() => 0),
        least: rows[0]?.map(() => 0) ?? [],
        most: rows[0]?.map(() => 1) ?? [],
      };
      const x = value(linearProgramme(programme)) as readonly number[];
      if (n < 50) expect(sum(programme.objective, x)).toBeCloseTo(byLibrary(programme) as number, 7);
    }
  });

  it('worked by hand: 1 + 1 at most 1.5 of two, the dearer of them saved', () => {
    const programme = {
      objective: [-2, -1],
      rows: [[1, 1]],
      rowLeast: [0],
      rowMost: [1.5],
      least: [0, 0],
      most: [1, 1],
    };
    expect(linearProgramme(programme)).toEqual([1, 0.5]);
    expect(linearProgramme({ ...programme, rowLeast: [2.5], rowMost: [3] })).toBeUndefined();
    expect(linearProgramme({ ...programme, rows: [], rowLeast: [], rowMost: [] })).toEqual([1, 1]);
  });

  it('is refused at the cap, not left to run', () => {
    const { fail, message } = refusal(linearProgramme(draw(4), 1));
    expect(fail).toBe('no-answer');
    expect(message).toContain('No answer was found in 1 steps');
  });
});
