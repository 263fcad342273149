import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';

/** Bytes of what a browser loads, raw and packed. */
const DIST = resolve(import.meta.dirname, '../../dist');
const OTHERS = /^(?:command|bench|accuracy)/;

for (const name of readdirSync(DIST, { recursive: true })) {
  const file = join(DIST, name);
  if (OTHERS.test(name) || !/\.(?:js|css|html)$/.test(name) || !statSync(file).isFile()) continue;
  const bytes = readFileSync(file);
  console.log(
    JSON.stringify({ measure: `size of ${name}`, bytes: bytes.length, gzip: gzipSync(bytes).length }),
  );
}
