import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { cpus } from 'node:os';
import { resolve } from 'node:path';
import { build } from 'esbuild';

const require = createRequire(import.meta.url);
const { GRID, withPlainFields } = require('../../src/build/plain-fields-loader.cjs');
const { readTemplates } = require('../../src/build/templates.cjs');

/**
 * Prints every measurement, one JSON line each, and keeps them in dist/bench/results.json with machine and commit: medians
 * of five runs. Nothing here is asserted. Names of measurements as arguments choose among them.
 */
const ROOT = resolve(import.meta.dirname, '../..');
const FOLDER = resolve(ROOT, 'dist/bench');
const MEASUREMENTS = [
  'ratios',
  'runtime',
  'hidden-pane',
  'solvers',
  'plan',
  'plain',
  'depths',
  'first-value',
  'insert',
  'recalculation',
  'charts',
  'sizes',
];

/** The packages of the grid as the builds have them. */
const plainFields = {
  name: 'plain-fields',
  setup: ({ onLoad }) =>
    onLoad({ filter: GRID }, ({ path }) => ({ contents: withPlainFields(readFileSync(path, 'utf8')) })),
};

/** Measurements of our own modules are bundled first; the others drive a browser or look at files. */
async function programOf(name) {
  const source = resolve(import.meta.dirname, `${name}.ts`);
  if (!existsSync(source)) return resolve(import.meta.dirname, `${name}.mjs`);
  const outfile = resolve(FOLDER, `${name}.cjs`);
  await build({
    entryPoints: [source],
    bundle: true,
    platform: 'node',
    external: ['highs'],
    // a bundle for Node knows its own place by another name
    define: { 'import.meta.url': 'ADDRESS', SWEEPTABLE_TEMPLATES: JSON.stringify(readTemplates()) },
    banner: { js: "const ADDRESS = require('node:url').pathToFileURL(__filename).href;" },
    loader: { '.css': 'empty' },
    plugins: [plainFields],
    outfile,
    logLevel: 'error',
  });
  return outfile;
}

function commit() {
  try {
    return execFileSync('git', ['rev-parse', '--short', 'HEAD'], { cwd: ROOT, encoding: 'utf8' }).trim();
  } catch {
    return 'not in a repository';
  }
}

mkdirSync(FOLDER, { recursive: true });
const machine = {
  node: process.version,
  cores: cpus().length,
  processor: cpus()[0]?.model ?? 'unknown',
  commit: commit(),
};
console.log(JSON.stringify(machine));
const asked = process.argv.slice(2).filter((name) => MEASUREMENTS.includes(name));
const results = [];
for (const name of asked.length > 0 ? asked : MEASUREMENTS) {
  const { status, stdout } = spawnSync(process.execPath, [await programOf(name)], {
    stdio: ['ignore', 'pipe', 'inherit'],
    encoding: 'utf8',
  });
  process.stdout.write(stdout);
  const lines = stdout.split('\n').filter((line) => line.startsWith('{'));
  results.push(...lines.map((line) => JSON.parse(line)));
  if (status !== 0) process.exitCode = 1;
}
writeFileSync(resolve(FOLDER, 'results.json'), `${JSON.stringify({ ...machine, results }, null, 2)}\n`);
