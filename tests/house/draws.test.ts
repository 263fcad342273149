import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const TESTS = resolve(import.meta.dirname, '..');

/** How many properties of fast-check a text states, and how many of them say from what seed and how often to draw. */
function properties(text: string): { stated: number; settled: number } {
  const count = (sign: RegExp): number => text.match(sign)?.length ?? 0;
  return {
    stated: count(/(?:\bfc\.|(?<![.\w]))(?:assert|check)\((?=\s*(?:fc\.)?(?:async)?property\(|\s*$)/gim),
    settled: count(/^\s*(?:trials\([\d_, ]+\)|RUNS),?$/gm),
  };
}

/** What draws for others, or has its properties stated by the oracle. */
const mayStateNone = (name: string, text: string): boolean =>
  !name.endsWith('.test.ts') || text.includes("from './decimal'");

test('every property draws a fifth for every commit and all from a fresh seed in full', () => {
  const found = readdirSync(TESTS, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => ({ name, text: readFileSync(join(TESTS, name), 'utf8') }))
    .filter(({ text }) => /^import [^;]* from 'fast-check'/m.test(text))
    .map(({ name, text }) => ({ name, isFree: mayStateNone(name, text), ...properties(text) }));
  expect(found.filter(({ stated }) => stated > 0).length).toBeGreaterThan(30);
  expect(
    found.filter(({ isFree, stated, settled }) => (stated === 0 && !isFree) || stated !== settled),
  ).toEqual([]);
});

test('and the check finds one that does not', () => {
  const bare = 'fc.assert(\n  fc.property(fc.nat(), (n) => n >= 0),\n';
  expect(properties(`${bare});`)).toEqual({ stated: 1, settled: 0 });
  expect(properties(`${bare}  { seed: 1, numRuns: 9 },\n);`)).toEqual({ stated: 1, settled: 0 });
  expect(properties(`${bare}  trials(1, 9),\n);`)).toEqual({ stated: 1, settled: 1 });
});
