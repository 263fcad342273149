import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { availableParallelism } from 'node:os';
import { join, relative, resolve, sep } from 'node:path';
import { defineConfig } from 'vitest/config';

/** As in full.ts. */
const FULL = process.env['SWEEPTABLE_FULL'] === '1';

const require = createRequire(import.meta.url);
const { readTemplates } = require('../src/build/templates.cjs') as { readTemplates: () => unknown };
/** Read once: each project below reads this file anew. */
const shared: { sweeptableTemplates?: string } = globalThis as object;
const TEMPLATES = (shared.sweeptableTemplates ??= JSON.stringify(readTemplates()));
const { GRID, withPlainFields } = require('../src/build/plain-fields-loader.cjs') as {
  GRID: RegExp;
  withPlainFields: (source: string) => string;
};

const ROOT = resolve(import.meta.dirname, '..');
const FULL_ONLY = 'tests/**/*.full.test.ts';
const BROWSER = 'tests/browser/**';

/** The tests whose text says something, as paths from the root. */
const testsThat = (say: RegExp): string[] =>
  readdirSync(import.meta.dirname, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => join(import.meta.dirname, name))
    .filter((path) => say.test(readFileSync(path, 'utf8')))
    .map((path) => relative(ROOT, path).replaceAll(sep, '/'));

/** Those that draw cases, or take more of them in full. */
const GROWING = testsThat(/from '(\.\.?\/)+full'/);
/** Those that put something else in a module's place: every other file would find it there too. */
const REPLACING = testsThat(/^vi\.mock\(/m);

const only = (folder: string): string[] =>
  FULL
    ? [`${folder}/**/*.full.test.ts`, ...GROWING.filter((path) => path.startsWith(`${folder}/`))]
    : [`${folder}/**/*.test.ts`];
const left = FULL ? [] : [FULL_ONLY];
// a busy computer takes its time; in full a test has five times as many cases, or more
const unit = {
  testTimeout: FULL ? 300_000 : 120_000,
  hookTimeout: 120_000,
  // a loop over nothing, or an `if` that never holds, would pass
  expect: { requireAssertions: true },
};

export default defineConfig({
  root: ROOT,
  // the packages of the grid as the builds have them
  plugins: [
    {
      name: 'plain-fields',
      enforce: 'pre',
      transform: (code, id) => (GRID.test(id) ? { code: withPlainFields(code), map: null } : undefined),
    },
  ],
  define: { SWEEPTABLE_TEMPLATES: TEMPLATES },
  test: {
    reporters: ['default', 'tests/slowest.ts'],
    // one more than there are cores: the grid's engine and the library of Excel rest between their answers
    maxWorkers: availableParallelism() + 1,
    // the grid's engine makes much that lives for one formula: with more room, less of it is copied before it is thrown away
    execArgv: ['--max-semi-space-size=64'],
    // of tests that say so, side by side in one file
    maxConcurrency: 12,
    projects: [
      {
        extends: true,
        test: {
          ...unit,
          name: 'unit',
          include: only('tests'),
          exclude: [BROWSER, ...REPLACING, ...left],
          // the files share a process and its modules: to load the grid's engine for each of them would take as long as the tests
          isolate: false,
        },
      },
      {
        extends: true,
        test: { ...unit, name: 'unit-alone', include: FULL ? [] : REPLACING },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: only('tests/browser'),
          exclude: left,
          // Its files take one page after the other, so they share a worker and what it holds.
          isolate: false,
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
          globalSetup: ['tests/browser/browsers.setup.ts'],
          testTimeout: 90_000,
          hookTimeout: 90_000,
          // a busy computer takes its time until a page shows what it will
          expect: { poll: { timeout: 10_000, interval: 20 } },
        },
      },
    ],
  },
});
