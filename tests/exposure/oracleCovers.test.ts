import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import type { AnyRow } from '../../src/catalogue/types';

const TESTS = resolve(import.meta.dirname, '..');
const filesIn = (folder: string, name: RegExp): string[] =>
  readdirSync(resolve(TESTS, folder))
    .filter((file) => name.test(file))
    .map((file) => readFileSync(resolve(TESTS, folder, file), 'utf8'));

/** What works answers out a second time, without its imports: they call nothing. */
const ORACLE = [...filesIn('exposure', /^oracle(Of\w+)?\.test\.ts$/), ...filesIn('accuracy', /\.ts$/)]
  .map((text) => text.replaceAll(/^import [^;]+;$/gm, ''))
  .join('\n');

/** What the rows run that put an answer into rows, or read what they are given themselves. */
const INSIDE: Readonly<Record<string, string>> = {
  planned: 'popsPlan',
  unmixed: 'lightUnmix',
};

/** Whether the oracle calls the function of a row, or asks for it by its name in a formula. */
function isCalled({ id, run }: AnyRow): boolean {
  const name = INSIDE[run.name] ?? run.name;
  return ORACLE.includes(`'${id}'`) || (name !== '' && new RegExp(`\\b${name}\\(`).test(ORACLE));
}

test('every function has its line in the oracle', () =>
  expect(CATALOGUE.filter((row) => !isCalled(row)).map(({ id }) => id)).toEqual([]));

test('what a row runs inside is looked for where the row itself runs nothing of the library', () => {
  const run = new Set(CATALOGUE.map((row) => row.run.name));
  expect(Object.keys(INSIDE).filter((name) => !run.has(name))).toEqual([]);
});

test('a function that nothing calls is told', () => {
  expect(
    isCalled({ ...(CATALOGUE[0] as AnyRow), id: 'NEWFUNCTION', run: function newFunction() {} as never }),
  ).toBe(false);
  expect(ORACLE).not.toContain('import ');
});
