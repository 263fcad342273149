import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';

const require = createRequire(import.meta.url);
const { checkPlaces, PLACES } = require('../../src/build/mended-engine-loader.cjs') as {
  checkPlaces: (source: string, file: string) => string;
  PLACES: Readonly<Record<string, Readonly<Record<string, readonly (readonly [string, number])[]>>>>;
};

describe.each(Object.entries(PLACES))('%s', (name, mends) => {
  const file = require.resolve(`@univerjs/${name}`).replace('cjs', 'es');
  const source = readFileSync(file, 'utf8');

  test('reads as it did when its mends were made, and is built in as it is', () => {
    expect(checkPlaces(source, file)).toBe(source);
  });

  test.each(Object.entries(mends).flatMap(([mend, words]) => words.map(([word]) => [mend, word] as const)))(
    'no build is made with one that lacks a place of %s: %s',
    (mend, word) => {
      expect(existsSync(new URL(`../../src/engine/mends/${mend}.ts`, import.meta.url))).toBe(true);
      const at = source.indexOf(word);
      const without = source.slice(0, at) + source.slice(at + word.length);
      expect(() => checkPlaces(without, file)).toThrow(`See src/engine/mends/`);
    },
  );
});
