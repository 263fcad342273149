import { spawnSync } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * Runs what `npm test` leaves out: the tests named `*.full.test.ts`, and all cases of those that draw them, from a seed that
 * is another each time. Arguments go to vitest: `npm run test:full -- balance`.
 */
const ROOT = resolve(import.meta.dirname, '..');
const vitest = resolve(dirname(fileURLToPath(import.meta.resolve('vitest/package.json'))), 'vitest.mjs');

const seed = process.env.SWEEPTABLE_SEED ?? String(randomInt(1, 1_000_000));
const told = `Seed ${seed}: the same cases again with SWEEPTABLE_SEED=${seed}.`;
console.log(told);
const { status } = spawnSync(
  process.execPath,
  [vitest, 'run', '--config', 'tests/vitest.config.mts', ...process.argv.slice(2)],
  { cwd: ROOT, stdio: 'inherit', env: { ...process.env, SWEEPTABLE_FULL: '1', SWEEPTABLE_SEED: seed } },
);
if (status !== 0) console.log(told);
process.exitCode = status ?? 1;
