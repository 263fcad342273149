import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';

const require = createRequire(import.meta.url);
const { mended, MENDED } = require('../../src/build/mended-grid-loader.cjs') as {
  mended: (source: string, name: string) => string;
  MENDED: readonly string[];
};
const sourceOf = (name: string): string =>
  readFileSync(require.resolve(`@univerjs/${name}`).replace('cjs', 'es'), 'utf8');

describe.each(MENDED)('%s', (name) => {
  const source = sourceOf(name);

  test('the grid is built in with its mends', () => {
    expect(mended(source, name)).not.toBe(source);
  });

  test('no build is made with a grid that is mended already, or otherwise', () => {
    expect(() => mended(mended(source, name), name)).toThrow(/is not as it was: "[^]* stands there 0 times/);
  });
});
