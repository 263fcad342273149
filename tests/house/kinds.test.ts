import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { CHECKS, KINDS } from '../../src/book/kinds';
import type { Check, Kind } from '../../src/book/kinds/kind';

const SRC = resolve(import.meta.dirname, '../../src');
const FOLDER = join(SRC, 'book/kinds');
/** What all kinds share. */
const COMMON = ['index.ts', 'kind.ts', 'axisFaults.ts'];
const files = readdirSync(FOLDER).filter((file) => !COMMON.includes(file));

const HOOKS: readonly (keyof Kind)[] = [
  'settled',
  'look',
  'conditions',
  'series',
  'points',
  'page',
  'slots',
  'across',
];
const isKind = (value: unknown): value is Kind => HOOKS.some((hook) => hook in Object(value));
const isCheck = (value: unknown): value is Check => 'shape' in Object(value);

test.each(files)('%s is listed once, with how it is asked for', async (file) => {
  const said = Object.values((await import(join(FOLDER, file))) as Record<string, unknown>);
  const [kinds, checks] = [said.filter(isKind), said.filter(isCheck)];
  expect([kinds.length, checks.length]).toEqual([1, 1]);
  expect(KINDS.filter((kind) => kinds.includes(kind))).toHaveLength(1);
  expect(CHECKS.filter((check) => checks.includes(check))).toHaveLength(1);
});

test('no part of a template has two kinds by one property', () => {
  const asked = CHECKS.flatMap(({ property, of }) => of.map((part) => `${part} ${property}`));
  expect(asked.filter((one, i) => asked.indexOf(one) !== i)).toEqual([]);
  expect([KINDS.length, CHECKS.length]).toEqual([files.length, files.length]);
});

test('nobody but their list knows a kind by its file', () => {
  const all = readdirSync(SRC, { withFileTypes: true, recursive: true })
    .filter((file) => file.isFile() && /\.[cm]?[jt]s$/.test(file.name))
    .map((file) => join(file.parentPath, file.name))
    .filter((file) => file !== join(FOLDER, 'index.ts'));
  const kinds = files.map((file) => file.replace(/\.ts$/, ''));
  const known = all.flatMap((file) =>
    [...readFileSync(file, 'utf8').matchAll(/from '(?:[^']*\/kinds|\.)\/(\w+)'/g)]
      .filter(([, name = '']) => kinds.includes(name))
      .map(([, name]) => `${relative(SRC, file)} knows ${name}`),
  );
  expect(known).toEqual([]);
});
