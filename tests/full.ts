/**
 * Two ways to run the tests: `npm test`, for every commit, and `npm run test:full`, the rest. What only the second runs stands
 * in files named `*.full.test.ts`; a file that draws cases, or has more of them in full, takes their number and seed from
 * here and runs in both.
 */
export const FULL = process.env['SWEEPTABLE_FULL'] === '1';

/** The seed of this run in full, which prints it so that it can be repeated; 0 where each test has its own. */
const FRESH = FULL ? Number(process.env['SWEEPTABLE_SEED'] ?? 0) : 0;
if (!(Number.isInteger(FRESH) && FRESH >= 0 && FRESH < 1e6))
  throw new Error('SWEEPTABLE_SEED must be a whole number from 0 below a million.');

/** A fifth of the cases for every commit, half of them in full, others each time. */
export const runs = (all: number): number => Math.ceil(all / (FULL ? 2 : 5));

/** What a generator starts from: the test's own number for every commit, another for each run in full. */
export const seedOf = (own: number): number => FRESH * 1000 + own;

/** How fast-check draws: from what seed, and how often. */
export const trials = (own: number, all = 100): { readonly seed: number; readonly numRuns: number } => ({
  seed: seedOf(own),
  numRuns: runs(all),
});

/** Of listed cases the first of every so many for every commit; in full half of the others, the other half in another run. */
export const drawn = <T>(cases: readonly T[], oneIn = 5): readonly T[] => {
  if (!FULL) return cases.filter((_, i) => i % oneIn === 0);
  const others = cases.filter((_, i) => i % oneIn !== 0);
  return others.length < 2 ? cases : others.filter((_, i) => i % 2 === oneOf(2));
};

/** The numbers of cases that are drawn each from its own: 1, 2, 3 … for every commit, others for each run in full. */
export const caseNumbers = (all: number): number[] =>
  Array.from({ length: runs(all) }, (_, i) => FRESH * 100_000 + i + 1);

/** Of cases that take long one, which is another in another run in full. */
export const inTurn = <T>(all: readonly T[]): readonly T[] => all.filter((_, i) => i === oneOf(all.length));

/** One of so many, from 0: the first for every commit, another for each run in full. */
export const oneOf = (count: number): number => FRESH % count;
