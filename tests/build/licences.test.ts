import { createRequire } from 'node:module';
import { dirname, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

interface Installed {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  readonly author: string;
  readonly text: string;
}
const require = createRequire(import.meta.url);
const { isPermissive, licencesText, listedIn, packageIn } = require('../../src/build/licence-texts.cjs') as {
  isPermissive: (expression: string) => boolean;
  licencesText: (ours: string, packages: readonly Installed[]) => string;
  listedIn: (text: string) => Pick<Installed, 'name' | 'version' | 'licence'>[];
  packageIn: (folder: string) => Installed;
};

describe('whether a licence asks for no more than its text', () => {
  const GOOD = [
    'MIT',
    'Apache-2.0',
    'BSD-2-Clause',
    'BSD-3-Clause',
    'ISC',
    '0BSD',
    'CC0-1.0',
    '(MIT OR GPL-2.0)',
    'GPL-3.0-only OR MIT',
    'MIT AND ISC',
    // AND binds before OR in the expressions of SPDX (specification 2.3, annex D).
    'GPL-2.0 AND MIT OR ISC',
    '(MPL-2.0 OR (MIT AND ISC)) AND 0BSD',
  ];
  const OTHER = [
    'GPL-2.0',
    'MPL-2.0',
    'unknown',
    'UNLICENSED',
    'SEE LICENSE IN LICENSE',
    '',
    'MIT AND GPL-2.0',
    'MIT AND (GPL-2.0 OR MPL-2.0)',
    'ISC AND GPL-2.0 OR MPL-2.0',
    'MIT OR',
    '(MIT',
    'MIT)',
    'MIT ISC',
    'mit or gpl',
  ];
  for (const expression of GOOD) test(expression, () => expect(isPermissive(expression)).toBe(true));
  for (const expression of OTHER)
    test(`not ${expression || 'an empty text'}`, () => expect(isPermissive(expression)).toBe(false));
});

describe('the text that goes along with a build', () => {
  const small = (name: string, text: string): Installed => ({
    name,
    version: '1.2.3',
    licence: 'MIT',
    author: 'A. Maker',
    text,
  });
  const packages = [small('@set/flag', 'Permission'), small('gobo', ''), small('scrim', 'Permission')];
  const text = licencesText('MIT License, ours', packages);

  test('has our licence, and every text once, below the packages that it holds for', () => {
    expect(text).toContain('MIT License, ours');
    expect(text).toContain('* @set/flag 1.2.3: MIT\n* scrim 1.2.3: MIT\n\nPermission\n');
    expect(text.match(/Permission/g)).toHaveLength(1);
  });

  test('says so where a package brings no text', () =>
    expect(text).toContain('* gobo 1.2.3: MIT\n\nBy A. Maker. The package names its licence'));

  test('can be read back', () =>
    expect(listedIn(text).map(({ name, licence }) => [name, licence])).toEqual([
      ['@set/flag', 'MIT'],
      ['scrim', 'MIT'],
      ['gobo', 'MIT'],
    ]));

  test('is our licence alone where nothing else is built in', () =>
    expect(listedIn(licencesText('MIT License, ours', []))).toEqual([]));
});

describe('an installed package', () => {
  const folderOf = (name: string): string => dirname(require.resolve(`${name}/package.json`));

  test('has its licence with the text of it', () => {
    const { name, licence, text } = packageIn(folderOf('uplot'));
    expect([name, licence]).toEqual(['uplot', 'MIT']);
    expect(text).toMatch(/Permission is hereby granted/);
  });

  test('is known by that text where it names none', () =>
    expect(packageIn(resolve(import.meta.dirname, '../../node_modules/@univerjs/telemetry')).licence).toBe(
      'Apache-2.0',
    ));
});
