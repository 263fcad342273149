import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { buildSync } from 'esbuild';

/**
 * Calls every function with whatever a cell may hold, damages templates, opens hostile files and pastes recordings as
 * texts: `npm run hostile -- 2000` makes so many calls of each function; `--seed` and `--only` repeat what is told.
 */
const ROOT = resolve(import.meta.dirname, '../..');
// As deep as this folder: what is loaded by its place is found from there.
const outfile = resolve(ROOT, 'dist/hostile/main.mjs');
buildSync({
  entryPoints: [resolve(import.meta.dirname, 'main.ts')],
  bundle: true,
  platform: 'node',
  format: 'esm',
  outfile,
  logLevel: 'error',
});
const { status } = spawnSync(process.execPath, [outfile, ...process.argv.slice(2)], { stdio: 'inherit' });
process.exitCode = status ?? 1;
