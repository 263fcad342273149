import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, relative, resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

/** As in full.ts. */
const FULL = process.env['SWEEPTABLE_FULL'] === '1';

const { readTemplates } = createRequire(import.meta.url)('../src/build/templates.cjs') as {
  readTemplates: () => unknown;
};

const ROOT = resolve(import.meta.dirname, '..');
const FULL_ONLY = 'tests/**/*.full.test.ts';

/** The tests that draw cases: fast-check's own, and those that take number or seed from `full.ts`. */
const drawing = (): string[] =>
  readdirSync(import.meta.dirname, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => join(import.meta.dirname, name))
    .filter((path) => /from '(fast-check|(\.\.?\/)+full)'/.test(readFileSync(path, 'utf8')))
    .map((path) => relative(ROOT, path));

const only = (folder: string) => (FULL ? [`${folder}/**/*.full.test.ts`] : [`${folder}/**/*.test.ts`]);
const left = FULL ? [] : [FULL_ONLY];

export default defineConfig({
  root: ROOT,
  define: { SWEEPTABLE_TEMPLATES: JSON.stringify(readTemplates()) },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: [...only('tests'), ...(FULL ? drawing() : [])],
          exclude: ['tests/browser/**', ...left],
          setupFiles: ['tests/properties.setup.ts'],
          testTimeout: 30_000,
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: only('tests/browser'),
          exclude: left,
          fileParallelism: false,
          testTimeout: 90_000,
          hookTimeout: 90_000,
          // a busy computer takes its time until a page shows what it will
          expect: { poll: { timeout: 10_000 } },
        },
      },
    ],
  },
});
