import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { buildSync } from 'esbuild';

/**
 * Prints how near the trace and the solvers come to what is known from outside: `npm run accuracy`, or with names of the
 * parts wanted. The tests assert what the tables promise.
 */
const PARTS = ['trace', 'plan', 'unmix', 'balance'];
const ROOT = resolve(import.meta.dirname, '../..');

const wanted = process.argv.slice(2).filter((name) => PARTS.includes(name));
for (const name of wanted.length > 0 ? wanted : PARTS) {
  const outfile = resolve(ROOT, `dist/accuracy/${name}.cjs`);
  buildSync({
    entryPoints: [resolve(import.meta.dirname, `${name}.ts`)],
    bundle: true,
    platform: 'node',
    external: ['highs'],
    outfile,
    logLevel: 'error',
  });
  console.log(`\n${name}`);
  const { status } = spawnSync(process.execPath, [outfile], { stdio: 'inherit' });
  if (status !== 0) process.exitCode = 1;
}
