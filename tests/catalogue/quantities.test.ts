import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import { Q, type Quantity } from '../../src/catalogue/quantities';
import { type AnyRow, type Arg, isQuantity } from '../../src/catalogue/types';
import { whatItMeasures } from '../../src/cells/units';
import { formatOf } from '../../src/sheets/formats';

const quantities = Object.entries(Q) as [string, Quantity][];

describe('the entry of a quantity', () => {
  test.each(quantities)('%s is shown in its own unit', (_, { shown, unit, one, title }) => {
    const words = [...`${shown.input}${shown.result}`.matchAll(/"([^"]*)"/g)].map(([, word]) => word?.trim());
    const signs: Readonly<Record<string, string>> = { 'f-number': 'f/', 'a ratio': ':1' };
    const own = [unit, one, signs[unit], signs[title]];
    expect(words.filter((word) => !own.includes(word))).toEqual([]);
  });
  test.each(quantities)('%s is preset as text where it is typed as one, and then alone', (_, { shown }) =>
    expect(shown.input === '@').toBe(shown.text),
  );
  test.each(quantities)('%s has the same looks on a sheet', (name, { shown, unit }) =>
    expect(formatOf(name)).toEqual({ ...shown, unit }),
  );
  test.each(quantities)('%s has unit words of which it can be said what they measure', (_, { units }) => {
    for (const word of Object.keys(units ?? {})) expect(whatItMeasures(word), word).toBeDefined();
  });
  test.each(quantities.filter(([, { limits }]) => limits))(
    '%s reads the fractions that a spreadsheet makes something else of',
    (_, { fraction, limits }) => {
      expect(limits?.date).toMatch(/^1\/\d+$/);
      expect(fraction).toBe(true);
      expect(limits?.clock ?? '3:1').toMatch(/^\d:\d$/);
    },
  );
});

/** The signs of the arguments of one cell, as a formula may use them. */
const signsOf = (row: AnyRow): string[] =>
  (row.args as readonly Arg[])
    .filter(({ takes }) => takes === 'one')
    .flatMap(({ sign, kind }) => sign ?? (isQuantity(kind) ? (kind.sign ?? []) : []));

test('a sign in the formula of a row stands for one of its arguments, and no more', () => {
  const doubled = CATALOGUE.flatMap((row) => {
    const words: string[] = row.formula.match(/\p{L}[\p{L}\d₀-₉]*/gu) ?? [];
    const used = signsOf(row).filter((sign) => words.includes(sign));
    return used.length === new Set(used).size ? [] : [`${row.id}: ${used.join()}`];
  });
  expect(doubled).toEqual([]);
});

const SRC = join(import.meta.dirname, '../../src');
const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter((file) => /\.tsx?$/.test(file));
const filesWith = (text: RegExp): string[] =>
  files.filter((file) => text.test(readFileSync(join(SRC, file), 'utf8'))).sort();

describe('what is known of a quantity stands in its entry', () => {
  test('functions name quantities, and so do the views of sheets; nobody else', () =>
    expect(filesWith(/\bQ\.\w/).filter((file) => !file.startsWith('catalogue/rows/'))).toEqual([
      'sheets/formats.ts',
    ]));
  test('nobody looks at a name or unit to tell which quantity it is', () =>
    expect(filesWith(/\.(?:unit|title) [!=]== '[^']/)).toEqual([]));
});
