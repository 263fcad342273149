import { spawnSync } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * Runs what `npm test` leaves out: how all files are formatted, the tests named `*.full.test.ts`, and all cases of those that
 * draw them, from a seed that is another each time. Arguments go to vitest, and nothing else is run then:
 * `npm run test:full -- balance`.
 */
const ROOT = resolve(import.meta.dirname, '..');
const binary = (name, file) =>
  resolve(dirname(fileURLToPath(import.meta.resolve(`${name}/package.json`))), file);
const vitest = binary('vitest', 'vitest.mjs');
const prettier = binary('prettier', 'bin/prettier.cjs');

const seed = process.env.SWEEPTABLE_SEED ?? String(randomInt(1, 1_000_000));
const told = `Seed ${seed}: the same cases again with SWEEPTABLE_SEED=${seed}.`;
console.log(told);
const args = process.argv.slice(2);
/** Runs a script of Node, and gives whether all went well. */
const run = (script, ...rest) =>
  spawnSync(process.execPath, [script, ...rest], {
    cwd: ROOT,
    stdio: 'inherit',
    env: { ...process.env, SWEEPTABLE_FULL: '1', SWEEPTABLE_SEED: seed },
  }).status === 0;

const isFormatted = args.length > 0 || run(prettier, '--check', '.');
const isGood = run(vitest, 'run', '--config', 'tests/vitest.config.mts', ...args);
if (!isGood) console.log(told);
process.exitCode = isFormatted && isGood ? 0 : 1;
