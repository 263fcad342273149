import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { buildSync } from 'esbuild';

/**
 * Changes the code in one place after the other, runs the tests about it, and tells which changes none of them notices:
 * `npm run mutate`, or with `-- light trace` of some parts alone, or with `-- --mutate 'src/exposure/light/*.ts'` of some
 * files. What explained.json gives a reason for is not told: it names the code and what that became, as they are told here,
 * so that lines may move. Where the code has changed, or stands more or less often, the explanation is told as lost.
 */
const ROOT = resolve(import.meta.dirname, '../..');
const given = process.argv.slice(2);
// a range of lines shows a part of a file: changes of its other lines are explained, but not made
const inPart = given.some((argument) => /:\d+/.test(argument));

const stryker = resolve(
  dirname(fileURLToPath(import.meta.resolve('@stryker-mutator/core/package.json'))),
  'bin/stryker.js',
);
const json = (path) => JSON.parse(readFileSync(path, 'utf8'));

/** Each part is tried with the tests that are about it: all others would run for every change that they do not notice. */
const CELLS = '{catalogue,formula,cells,explain,published}';
const exposure = readdirSync(resolve(ROOT, 'src/exposure'), { withFileTypes: true }).filter((entry) =>
  entry.isDirectory(),
);
const PARTS = [
  { name: 'cells', code: 'src/cells/**/*.ts', tests: CELLS },
  { name: 'formula', code: 'src/formula/**/*.ts', tests: CELLS },
  { name: 'explain', code: 'src/explain/**/*.ts', tests: CELLS },
  { name: 'catalogue', code: 'src/catalogue/**/*.ts', tests: CELLS },
  ...exposure.map(({ name }) => ({
    name,
    code: `src/exposure/${name}/**/*.ts`,
    // what all folders use is tried by those that use it most
    tests:
      name === 'core'
        ? '{exposure/{core,distance,light,loss,metering,stops},published}'
        : `{exposure/${name},published}`,
  })),
];

function runsOf() {
  if (given.includes('--mutate')) return [{ name: 'files', options: given }];
  const wanted = given.length === 0 ? PARTS : PARTS.filter(({ name }) => given.includes(name));
  return wanted.map(({ name, code, tests }) => ({
    name,
    options: ['--mutate', code, '--incrementalFile', `dist/mutants/known-${name}.json`],
    tests,
  }));
}

function filesOf({ options, tests }) {
  const { status } = spawnSync(process.execPath, [stryker, 'run', 'tests/stryker.config.json', ...options], {
    cwd: ROOT,
    stdio: 'inherit',
    // with all cases that the tests draw, from the seeds of their own
    env: { ...process.env, SWEEPTABLE_FULL: '1', ...(tests && { MUTANT_TESTS: tests }) },
  });
  if (status !== 0) process.exit(status ?? 1);
  return json(resolve(ROOT, 'dist/mutants/report.json')).files;
}

const outfile = resolve(ROOT, 'dist/mutants/survivors.mjs');
buildSync({
  entryPoints: [resolve(import.meta.dirname, 'survivors.ts')],
  bundle: true,
  format: 'esm',
  outfile,
  logLevel: 'error',
});
const { findingsOf } = await import(pathToFileURL(outfile).href);
const explanations = json(resolve(import.meta.dirname, 'explained.json'));

/** Says what became of the changes of some files, in so many seconds. */
function tell(name, files, seconds) {
  const { counted, noticed, explained, unexplained, lost, stale } = findingsOf({ files }, explanations);
  const share = (part) => `${((100 * part) / Math.max(1, counted)).toFixed(1)} %`;
  console.log(
    `\n${name}: ${seconds} s. ${noticed} of ${counted} changes noticed: ${share(noticed)}; with ${explained} explained, ${share(noticed + explained)}.`,
  );
  const say = (head, { code, place, became }) =>
    console.log(`\n${head}\n  ${code}${place ? `\n  (${place})` : ''}\n  ${became}`);
  for (const change of unexplained) say(`${change.file}:${change.at}`, change);
  for (const change of lost) say(`${change.file}: an explanation is lost, ${change.lost}`, change);
  if (!inPart) for (const change of stale) say(`${change.file}: no longer to be explained`, change);
}

const secondsSince = (start) => Math.round((Date.now() - start) / 1000);
const begun = Date.now();
const all = {};
const runs = runsOf();
if (runs.length === 0) {
  console.error(`The parts are ${PARTS.map(({ name }) => name).join(', ')}.`);
  process.exit(1);
}
for (const run of runs) {
  const start = Date.now();
  const files = filesOf(run);
  Object.assign(all, files);
  tell(run.name, files, secondsSince(start));
}
if (runs.length > 1) tell('All', all, secondsSince(begun));
