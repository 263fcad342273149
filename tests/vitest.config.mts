import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

const { readTemplates } = createRequire(import.meta.url)('../src/build/templates.cjs') as {
  readTemplates: () => unknown;
};

export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  define: { SWEEPTABLE_TEMPLATES: JSON.stringify(readTemplates()) },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          testTimeout: 30_000,
          hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
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
