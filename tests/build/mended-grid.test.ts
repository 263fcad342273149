import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';

const require = createRequire(import.meta.url);
const { mended } = require('../../src/build/mended-grid-loader.cjs') as {
  mended: (source: string) => string;
};
const source = readFileSync(require.resolve('@univerjs/sheets-ui').replace('cjs', 'es'), 'utf8');

test('the grid is built in with its mends', () => {
  expect(mended(source)).not.toBe(source);
});

test('no build is made with a grid that is mended already, or otherwise', () => {
  expect(() => mended(mended(source))).toThrow(
    /is not as it was: "const nextSelection .* stands there 0 times/,
  );
});
