/**
 * Two ways to run the tests: `npm test`, for every commit, and `npm run test:full`, the rest. What only the second runs stands
 * in files named `*.full.test.ts`; a file that draws cases takes their number and seed from here and runs in both.
 */
export const FULL = process.env['SWEEPTABLE_FULL'] === '1';

/** A fifth of the cases for every commit, all of them in full. */
export const runs = (all: number): number => (FULL ? all : Math.ceil(all / 5));

const fresh = Number(process.env['SWEEPTABLE_SEED'] ?? NaN);

/** The seed of a test's own for every commit; in full the one of this run, which `npm run test:full` prints. */
export const seed = (own: number): number => (FULL && Number.isFinite(fresh) ? (fresh + own) | 0 : own);
