const WHOLE = Array.from({ length: 7 }, (_, power) => [1, 2, 5].map((n) => n * 10 ** power)).flat();

/** Steps along an axis of things that are counted, as there is no half of a pop; nothing where the numbers are not whole. */
export const wholeSteps = (xs: readonly number[]): { readonly incrs?: number[] } =>
  xs.every(Number.isInteger) ? { incrs: WHOLE } : {};
