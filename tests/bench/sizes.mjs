import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';

/**
 * Bytes of what a browser loads, raw and packed: of what it waits for beside the figures of sizes.json, and of every file.
 * With `--check` only the first, and the end is 1 where one is above its figure and what may come on top of that. Who needs
 * more raises the figure in the same commit, and says there what it buys.
 */
const DIST = resolve(import.meta.dirname, '../../dist');
const FIGURES = JSON.parse(readFileSync(resolve(import.meta.dirname, 'sizes.json'), 'utf8'));
const ON_TOP = 1.03;
const OTHERS = /^(?:command|bench|accuracy|tested-add-in)/;

function sizeOf(files) {
  const contents = files.map((name) => readFileSync(join(DIST, name)));
  const sum = (lengths) => lengths.reduce((all, length) => all + length, 0);
  return {
    bytes: sum(contents.map(({ length }) => length)),
    gzip: sum(contents.map((content) => gzipSync(content).length)),
  };
}

for (const [what, { files, ...figure }] of Object.entries(FIGURES)) {
  const size = sizeOf(files);
  const beside = { 'committed bytes': figure.bytes, 'committed gzip': figure.gzip };
  console.log(JSON.stringify({ measure: `size of ${what}`, ...size, ...beside }));
  for (const unit of ['bytes', 'gzip'])
    if (size[unit] > figure[unit] * ON_TOP && process.argv.includes('--check')) {
      console.error(`${what}: ${size[unit]} (${unit}) is more than 3 % above ${figure[unit]}.`);
      process.exitCode = 1;
    }
}

if (!process.argv.includes('--check'))
  for (const name of readdirSync(DIST, { recursive: true })) {
    if (OTHERS.test(name) || !/\.(?:js|css|html)$/.test(name) || !statSync(join(DIST, name)).isFile())
      continue;
    console.log(JSON.stringify({ measure: `size of ${name}`, ...sizeOf([name]) }));
  }
