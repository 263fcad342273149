import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

/** The tests that a changed line of the pure code can make fail, without those of hosts, sheets and pages. */
export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  test: {
    include: [`tests/${process.env['MUTANT_TESTS'] ?? '{exposure,cells,catalogue,published}'}/**/*.test.ts`],
    testTimeout: 300_000,
  },
});
