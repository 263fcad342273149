/** Heads that a pattern may be asked for. */
export const PATTERN_HEADS = { least: 1, most: 24, whole: true } as const;

/**
 * Sizes of the groups: threes, and fours for what threes leave over. Five heads are neither, and are one group.
 */
function groupSizes(heads: number): number[] {
  if (heads <= 5) return [heads];
  const fours = heads % 3;
  return [
    ...Array.from({ length: (heads - 4 * fours) / 3 }, () => 3),
    ...Array.from({ length: fours }, () => 4),
  ];
}

/** Heads lit in each measurement of a group: the first with each of the others, then the others without it. */
function groupRows(first: number, size: number): number[][] {
  if (size === 1) return [[first]];
  const others = Array.from({ length: size - 1 }, (_, i) => first + 1 + i);
  if (size === 2) return [[first, ...others], [first]];
  return [...others.map((other) => [first, other]), others];
}

/**
 * What to light, measurement by measurement, when heads cannot be fired one at a time: as many measurements as heads (fewer
 * never suffice, as n unknowns take n equations), at least two heads lit in each where there are three heads or more.
 *
 * The heads are taken in groups of three (four where threes leave some over, five for five). In a group the first is lit
 * with each of the others in turn, then the others together without the first. With two heads: both, then the first.
 *
 * Why: a meter is off by a part of a stop of all the light it sees. The more heads are lit, the more of the other heads'
 * light is mistaken for the one sought, so the fewer the better; this turns the usual advice for weighing (Hotelling 1944,
 * Yates 1935: put many on the scale) around, as a balance is off by the same amount whatever lies on it. Standard deviation
 * of the worst of n equal heads, as a multiple of that of one reading (0.029 stop for one rounded to a tenth):
 *
 * | design | worked out | n = 3 | 4 | 5 | 7 | 8 | 12 | 24 |
 * |---|---|---|---|---|---|---|---|---|
 * | these groups | 3: √3, 4: √(11/3), 5: 2 | 1.7 | 1.9 | 2 | 1.9 | 1.9 | 1.7 | 1.7 |
 * | half lit, from a Hadamard matrix (S-matrix) | √n, n = 4t − 1 | 1.7 | | | 2.6 | | | |
 * | one off at a time | √(n² − 3n + 3) | 1.7 | 2.6 | 3.6 | 5.6 | 6.6 | 10.5 | 22.5 |
 * | all lit, then one off, but for the last | √((n − 1)³ + n²(n − 2)²) | 4.1 | 9.5 | 17 | 38 | 51 | 125 | 539 |
 *
 * No pattern of n measurements for 3, 4 or 5 heads has a smaller worst deviation (all were tried), and a long search for 6
 * to 9 found none. ± of LIGHTUNMIX is 0.1 stop for groups of three, 0.11 for four and five.
 *
 * @param heads - whole number from 1 to 24.
 * @param ambient - adds a column of ones for the ambient light, and a last row with no head lit: an ambient reading needs no
 *   flash, and any pattern that lights heads in each row knows the ambient light far worse (three equal heads and ambient
 *   of the same strength: 9.5 times the deviation of one reading instead of 1, and 5 instead of 2.6 for the heads).
 * @returns rows of 1 (lit) and 0 (off), one column a head, ready for LIGHTUNMIX.
 */
export function measurementPattern(heads: number, ambient = false): readonly (readonly number[])[] {
  const count = Math.round(heads);
  const lit: number[][] = [];
  let first = 0;
  for (const size of groupSizes(count)) {
    lit.push(...groupRows(first, size));
    first += size;
  }
  if (ambient) lit.push([]);
  return lit.map((row) => [
    ...Array.from({ length: count }, (_, h) => (row.includes(h) ? 1 : 0)),
    ...(ambient ? [1] : []),
  ]);
}
