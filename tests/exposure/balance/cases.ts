import { type Highs } from './highs';
import { random } from '../random';

/** A lighting to balance, in the numbers that a photographer has. */
export interface Case {
  readonly readings: readonly (readonly (number | undefined)[])[];
  readonly powers: readonly number[];
  readonly targets: readonly number[];
  readonly least: readonly number[];
  readonly most: readonly number[];
}

/** Lightings drawn at random: heads of several sizes, some that do not reach all points, even or graded light wanted. */
export function drawCase(seed: number, heads: number, points: number): Case {
  const next = random(seed);
  const list = (count: number, x: (i: number) => number): number[] =>
    Array.from({ length: count }, (_, i) => x(i));
  const most = list(heads, () => [400, 600, 1200, 2400][Math.floor(4 * next())] as number);
  const range = list(heads, () => 2 + Math.floor(5 * next()));
  const present = list(heads, (h) => Math.floor(10 * (range[h] as number) * next()) / 10);
  const graded = next() < 0.5 ? 0 : 1;
  // heads that light the points much alike, and heads that do not
  const spread = next() < 0.5 ? 0.8 : 2.5;
  // about what the heads give together at their present powers, and up to two stops either way
  const wanted = 2.75 + Math.log2(heads) / 2 + 2 * next() - 1;
  return {
    readings: list(points, () => 0).map((_, p) =>
      Array.from({ length: heads }, (__, h) => {
        const reading = 2 ** (2.75 + spread * (next() - 0.5));
        return next() < 0.2 && h !== p % heads ? undefined : reading;
      }),
    ),
    powers: list(heads, (h) => (most[h] as number) * 2 ** -(present[h] as number)),
    targets: list(points, () => 2 ** (wanted + graded * (next() - 0.5))),
    least: list(heads, (h) => (most[h] as number) * 2 ** -(range[h] as number)),
    most,
  };
}

/** Light that each watt-second of a head brings to a point, as a share of what is wanted there. */
export const lightPerPower = ({ readings, powers, targets }: Case): number[][] =>
  readings.map((row, p) =>
    row.map((n, h) => (n === undefined ? 0 : (n / (targets[p] as number)) ** 2 / (powers[h] as number))),
  );

/** Worst miss in stops, by the definition. */
export const missOf = (light: readonly (readonly number[])[], powers: readonly number[]): number =>
  Math.max(
    ...light.map((row) => Math.abs(Math.log2(row.reduce((sum, a, h) => sum + a * (powers[h] as number), 0)))),
  );

/**
 * By what share the light must overstep a worst miss at the least, for powers in a range: 0 where the miss is in reach.
 * The linear programme is solved by a general library.
 */
export function oversteps(
  highs: Highs,
  light: readonly (readonly number[])[],
  stops: number,
  least: readonly number[],
  most: readonly number[],
): number {
  const sum = (row: readonly number[]): string => row.map((a, h) => `+ ${a} x${h}`).join(' ');
  const rows = light.flatMap((row, p) => [
    `u${p}: ${sum(row)} - ${2 ** stops} v <= ${2 ** stops}`,
    `l${p}: ${sum(row)} + ${2 ** -stops} v >= ${2 ** -stops}`,
  ]);
  const bounds = least.map((low, h) => `${low} <= x${h} <= ${most[h]}`);
  const solved = highs.solve(
    `Minimize\n v\nSubject To\n ${rows.join('\n ')}\nBounds\n ${bounds.join('\n ')}\nEnd\n`,
    { primal_feasibility_tolerance: 1e-10, dual_feasibility_tolerance: 1e-10 },
  );
  if (solved.Status !== 'Optimal') throw new Error(`the library came to ${solved.Status}`);
  return solved.ObjectiveValue;
}

/**
 * Whether the library finds a smallest worst miss to a millionth of a stop: less is not in reach, and what it takes to
 * reach it is less than two millionths more.
 */
export function isSmallest(
  highs: Highs,
  light: readonly (readonly number[])[],
  stops: number,
  least: readonly number[],
  most: readonly number[],
): boolean {
  const less = Math.max(0, stops - 1e-6);
  const over = oversteps(highs, light, less, least, most);
  return (over > 1e-9 || less === 0) && less + Math.log2(1 / (1 - over)) <= stops + 1e-6;
}
