/** Numbers with more decimals than these are measured, and have marks wherever there is room. */
const MOST_DECIMALS = 2;
const POWERS = Array.from({ length: 9 }, (_, power) => [1, 2, 5].map((n) => n * 10 ** power)).flat();

const haveDecimals = (xs: readonly number[], decimals: number): boolean =>
  xs.every((x) => Math.abs(x * 10 ** decimals - Math.round(x * 10 ** decimals)) < 1e-9);

/**
 * Steps along an axis that are no finer than the figures of its numbers: there is no half of a pop, and no mark at 1.3075 between
 * 1.30 and 1.31. Nothing where the numbers have more decimals.
 */
export function figureSteps(xs: readonly number[]): { readonly incrs?: number[] } {
  for (let decimals = 0; decimals <= MOST_DECIMALS; decimals++)
    if (haveDecimals(xs, decimals)) return { incrs: POWERS.map((step) => step / 10 ** decimals) };
  return {};
}
