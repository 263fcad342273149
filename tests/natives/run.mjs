import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { buildSync } from 'esbuild';

/**
 * Draws plain formulas, calculates them here and by LibreOffice, and prints where the two differ without a known reason:
 * `npm run natives -- 3000 --seed 1`. With `--unmended` the engine calculates without its mends, and what is told is which of
 * the known causes the formulas find. `--excused` prints the differences that are known, `--write FILE` keeps formulas with
 * the answers of their judges.
 */
const ROOT = resolve(import.meta.dirname, '../..');
// As deep as this folder: what is loaded by its place is found from there.
const outfile = resolve(ROOT, 'dist/natives/main.mjs');
buildSync({
  entryPoints: [resolve(import.meta.dirname, 'main.ts')],
  bundle: true,
  platform: 'node',
  format: 'esm',
  external: ['@cj-tech-master/excelts'],
  // the engine's build for pages, which is the one that is mended; what it requires is found from the bundle
  mainFields: ['module', 'main'],
  banner: {
    js: "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);",
  },
  loader: { '.css': 'empty' },
  outfile,
  logLevel: 'error',
});
const { status } = spawnSync(process.execPath, [outfile, ...process.argv.slice(2)], { stdio: 'inherit' });
process.exitCode = status ?? 1;
