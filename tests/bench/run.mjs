import { spawnSync } from 'node:child_process';
import { cpus } from 'node:os';
import { resolve } from 'node:path';

/** Prints every measurement, one JSON line each: medians of five runs on this machine. Nothing here is asserted. */
const MEASUREMENTS = ['first-value.mjs', 'insert.mjs'];

console.log(
  JSON.stringify({ node: process.version, cores: cpus().length, processor: cpus()[0]?.model ?? 'unknown' }),
);
for (const file of MEASUREMENTS) {
  const { status } = spawnSync(process.execPath, [resolve(import.meta.dirname, file)], { stdio: 'inherit' });
  if (status !== 0) process.exitCode = 1;
}
