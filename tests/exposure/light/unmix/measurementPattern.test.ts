import { inverse, Matrix, SingularValueDecomposition } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { lightUnmix } from '../../../../src/exposure/light/unmix/lightUnmix';
import { measurementPattern } from '../../../../src/exposure/light/unmix/measurementPattern';
import { expectNear, itKeepsItsRanges, refusal, value } from '../../support';
import { random } from '../../random';

const COUNTS = Array.from({ length: 24 }, (_, i) => i + 1);
const rank = (rows: readonly (readonly number[])[]): number =>
  new SingularValueDecomposition(new Matrix(rows.map((row) => [...row])), { autoTranspose: true }).rank;
const lit = (row: readonly number[]): number => row.reduce((a, b) => a + b, 0);

/**
 * Standard deviation of each head where all give the same light and each reading is off by one same share of itself: by
 * the inverse of a general library. The rows may hold the ambient light.
 */
const deviations = (rows: readonly (readonly number[])[]): number[] =>
  inverse(new Matrix(rows.map((row) => row.map((share) => share / lit(row)))))
    .to2DArray()
    .map((row) => Math.hypot(...row));
const worst = (rows: readonly (readonly number[])[]): number => Math.max(...deviations(rows));

describe('the measurements proposed', () => {
  it('are as many as the heads, and one more for ambient light', () => {
    for (const heads of COUNTS) {
      expect(measurementPattern(heads).map((row) => row.length)).toEqual(
        Array.from({ length: heads }, () => heads),
      );
      const ambient = measurementPattern(heads, true);
      expect(ambient).toHaveLength(heads + 1);
      for (const row of ambient) {
        expect(row).toHaveLength(heads + 1);
        expect(row.at(-1)).toBe(1);
      }
      expect(lit(ambient.at(-1) ?? [])).toBe(1);
    }
  });

  it('light two heads or more each, from three heads on', () => {
    for (const heads of COUNTS.slice(2))
      for (const row of measurementPattern(heads)) expect(lit(row)).toBeGreaterThanOrEqual(2);
  });

  it('of one and two heads: the one; both, then one', () => {
    expect(measurementPattern(1)).toEqual([[1]]);
    expect(measurementPattern(2)).toEqual([
      [1, 1],
      [1, 0],
    ]);
  });

  it('tell every head from the others, whatever each gives', () => {
    const next = random(11);
    for (const heads of COUNTS)
      for (const ambient of [false, true]) {
        const pattern = measurementPattern(heads, ambient);
        const lights = Array.from({ length: pattern.length }, () => 2 ** (6 + 2 * next()));
        const readings = pattern.map((row) =>
          Math.sqrt(row.reduce((sum, share, j) => sum + share * (lights[j] as number), 0)),
        );
        value(lightUnmix(pattern, readings)).forEach(({ reading }, j) =>
          expectNear((reading as number) ** 2, lights[j] as number, 1e-11),
        );
      }
  });

  it('cannot be fewer: without any one of them the rank, by a general library, is less than the heads', () => {
    for (const heads of [1, 2, 3, 4, 5, 6, 7, 8, 12, 23, 24]) {
      const pattern = measurementPattern(heads);
      expect(rank(pattern)).toBe(heads);
      if (heads === 1) continue;
      pattern.forEach((_, i) => {
        const fewer = pattern.filter((__, k) => k !== i);
        expect(rank(fewer)).toBe(heads - 1);
        expect(refusal(lightUnmix(fewer, fewer.map(() => 8))).message).toContain('fewer measurements'); // prettier-ignore
      });
    }
  });

  it('have the smallest worst ± of all patterns of three, four and five heads with two or more lit', () => {
    for (const heads of [3, 4, 5]) {
      const rows = Array.from({ length: 2 ** heads }, (_, bits) =>
        Array.from({ length: heads }, (__, h) => (bits >> h) & 1),
      ).filter((row) => lit(row) >= 2);
      let best = Infinity;
      let tried = 0;
      const chosen: number[][] = [];
      const choose = (from: number): void => {
        if (chosen.length === heads) {
          tried++;
          best = Math.min(best, worstOf(chosen));
          return;
        }
        for (let i = from; i <= rows.length - (heads - chosen.length); i++) {
          chosen.push(rows[i] as number[]);
          choose(i + 1);
          chosen.pop();
        }
      };
      choose(0);
      // 4 rows of three heads: 4 patterns at most of 3; 11 over 4; 26 over 5
      expect(tried).toBe({ 3: 4, 4: 330, 5: 65780 }[heads]);
      expectNear(worst(measurementPattern(heads)), best, 1e-9);
    }
  });

  it('have the deviations that the document states, and those of the other designs are what it states', () => {
    const groups = { 3: Math.sqrt(3), 4: Math.sqrt(11 / 3), 5: 2, 6: Math.sqrt(3), 7: Math.sqrt(11 / 3), 8: Math.sqrt(11 / 3), 12: Math.sqrt(3), 24: Math.sqrt(3) }; // prettier-ignore
    for (const [heads, wanted] of Object.entries(groups)) {
      const n = Number(heads);
      expectNear(worst(measurementPattern(n)), wanted, 1e-9);
      const each = (row: (i: number, h: number) => boolean): number[][] =>
        Array.from({ length: n }, (_, i) => Array.from({ length: n }, (__, h) => (row(i, h) ? 1 : 0)));
      const oneOff = worst(each((i, h) => i !== h));
      expectNear(oneOff, Math.sqrt(n * n - 3 * n + 3), 1e-9);
      const allThenOneOff = worst(each((i, h) => i === 0 || i - 1 !== h));
      expectNear(allThenOneOff, Math.sqrt((n - 1) ** 3 + n * n * (n - 2) ** 2), 1e-9);
      expect(wanted).toBeLessThan(allThenOneOff);
      expect(wanted).toBeLessThanOrEqual(oneOff + 1e-9);
    }
    // S-matrix of 7, from the quadratic residues 1, 2, 4 of 7: four heads lit in each row
    const seven = Array.from({ length: 7 }, (_, i) =>
      Array.from({ length: 7 }, (__, h) => ([0, 3, 5, 6].includes((h - i + 7) % 7) ? 1 : 0)),
    );
    expectNear(worst(seven), Math.sqrt(7), 1e-9);
  });

  it('know ambient light from a reading without flash, and far better than from rows with heads lit', () => {
    const proposed = deviations(measurementPattern(3, true));
    expectNear(proposed[3] as number, 1, 1e-9);
    expectNear(proposed[0] as number, Math.sqrt(7), 1e-9);
    const others = deviations([
      [1, 1, 0, 1],
      [1, 0, 1, 1],
      [0, 1, 1, 1],
      [1, 1, 1, 1],
    ]);
    expectNear(others[3] as number, Math.sqrt(91), 1e-9);
    expectNear(others[0] as number, 5, 1e-9);
  });

  it('give ± of 0.1 stop for groups of three, 0.11 for four and five', () => {
    for (const [heads, stops] of [
      [3, 0.1],
      [12, 0.1],
      [24, 0.1],
      [4, 0.11],
      [5, 0.11],
      [8, 0.11],
    ] as const) {
      // prettier-ignore
      const pattern = measurementPattern(heads);
      const answers = value(lightUnmix(pattern, pattern.map((row) => 8 * Math.sqrt(lit(row))))); // prettier-ignore
      const most = Math.max(...answers.map(({ plusMinus }) => plusMinus as number));
      expect(Math.round(most * 100) / 100).toBe(stops);
    }
  });

  itKeepsItsRanges('LIGHTPATTERN', { heads: [3, 'heads'] });
});

/** The same as `worst`, by plain elimination: quick enough for all patterns. Singular ones are endlessly bad. */
function worstOf(rows: readonly (readonly number[])[]): number {
  const n = rows.length;
  const a = rows.map((row, i) => {
    const all = lit(row);
    return [...row.map((share) => share / all), ...rows.map((_, k) => (k === i ? 1 : 0))];
  });
  for (let c = 0; c < n; c++) {
    let p = c;
    for (let i = c + 1; i < n; i++) if (Math.abs(a[i]?.[c] as number) > Math.abs(a[p]?.[c] as number)) p = i;
    [a[c], a[p]] = [a[p] as number[], a[c] as number[]];
    const pivot = a[c] as number[];
    const by = pivot[c] as number;
    if (Math.abs(by) < 1e-9) return Infinity;
    for (let j = 0; j < 2 * n; j++) pivot[j] = (pivot[j] as number) / by;
    for (const row of a) {
      const part = row[c] as number;
      if (row === pivot || part === 0) continue;
      for (let j = 0; j < 2 * n; j++) row[j] = (row[j] as number) - part * (pivot[j] as number);
    }
  }
  return Math.max(...a.map((row) => Math.hypot(...row.slice(n))));
}
