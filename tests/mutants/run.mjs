import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { buildSync } from 'esbuild';

/**
 * Changes the code in one place after the other, runs the tests that reach it, and tells which changes none of them
 * notices: `npm run mutate`, or with `-- --mutate 'src/exposure/light/*.ts'` of some files alone. What explained.json gives
 * a reason for is not told.
 */
const ROOT = resolve(import.meta.dirname, '../..');
const given = process.argv.slice(2);
// a range of lines shows a part of a file: explanations of its other lines are not stale
const inPart = given.some((argument) => /:\d+/.test(argument));

const stryker = resolve(
  dirname(fileURLToPath(import.meta.resolve('@stryker-mutator/core/package.json'))),
  'bin/stryker.js',
);
const json = (path) => JSON.parse(readFileSync(path, 'utf8'));

/** Each part is tried with the tests that are about it: all others would run for every change that they do not notice. */
const PARTS = [
  { name: 'cells', code: 'src/cells/**/*.ts,src/catalogue/**/*.ts', tests: '{cells,catalogue,published}' },
  { name: 'exposure', code: 'src/exposure/**/*.ts', tests: '{exposure,published}' },
];
const runs = given.includes('--mutate')
  ? [{ options: given, tests: undefined }]
  : PARTS.map(({ name, code, tests }) => ({
      options: ['--mutate', code, '--incrementalFile', `dist/mutants/known-${name}.json`, ...given],
      tests,
    }));

function filesOf({ options, tests }) {
  const { status } = spawnSync(process.execPath, [stryker, 'run', 'tests/stryker.config.json', ...options], {
    cwd: ROOT,
    stdio: 'inherit',
    env: { ...process.env, ...(tests && { MUTANT_TESTS: tests }) },
  });
  if (status !== 0) process.exit(status ?? 1);
  return json(resolve(ROOT, 'dist/mutants/report.json')).files;
}

const start = Date.now();
const files = Object.assign({}, ...runs.map(filesOf));
const seconds = Math.round((Date.now() - start) / 1000);

const outfile = resolve(ROOT, 'dist/mutants/survivors.mjs');
buildSync({
  entryPoints: [resolve(import.meta.dirname, 'survivors.ts')],
  format: 'esm',
  outfile,
  logLevel: 'error',
});
const { findingsOf } = await import(pathToFileURL(outfile).href);
const { counted, noticed, explained, unexplained, stale } = findingsOf(
  { files },
  json(resolve(import.meta.dirname, 'explained.json')),
);

const share = (part) => `${((100 * part) / Math.max(1, counted)).toFixed(1)} %`;
console.log(
  `\n${seconds} s. ${noticed} of ${counted} changes noticed: ${share(noticed)}; with ${explained} explained, ${share(noticed + explained)}.`,
);
for (const { file, at, line, became } of unexplained) console.log(`\n${file}:${at}\n  ${line}\n  ${became}`);
if (!inPart)
  for (const { file, line, became } of stale)
    console.log(`\n${file}: no longer to be explained\n  ${line}\n  ${became}`);
