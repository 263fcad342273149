import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type BuiltAddIn, buildAddIn, LONGEST_BUILD } from '../hosts/excel/support/built-add-in';
import { checkAddIn } from './addInChecks';

const require = createRequire(import.meta.url);
const LIBRARY = join(dirname(require.resolve('@microsoft/office-js/package.json')), 'dist');
const ORIGIN = 'https://studio.example/sweep/';
const FILES = [
  'balance-worker.js',
  'balance.js',
  'functions.js',
  'functions.json',
  'help.html',
  'licences.txt',
  'long-sheets.js',
  'manifest.xml',
  'privacy.html',
  'set-picture.js',
  'support.html',
  'taskpane.css',
  'taskpane.html',
  'taskpane.js',
  'write-file.js',
];

const filesIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .sort();

describe('a build for an address of a studio’s own', () => {
  let built: BuiltAddIn;
  const read = (name: string): string => readFileSync(join(built.folder, name), 'utf8');
  beforeAll(async () => {
    // the slash at the end is a thing to forget
    built = await buildAddIn({ origin: ORIGIN.slice(0, -1), contact: 'Studio desk, extension 41' });
  }, LONGEST_BUILD);
  afterAll(() => built?.remove());

  checkAddIn(() => built.folder, ORIGIN);

  test('has these files, by names that stay', () =>
    expect(filesIn(built.folder).filter((name) => !name.startsWith('icons'))).toEqual(FILES));

  test('has no file that the README does not say to host, but the manifest', () => {
    const readme = readFileSync(join(import.meta.dirname, '../../README.md'), 'utf8');
    const listed = /Put these files and folders of `dist\/`([\s\S]*?)\n\d\./.exec(readme)?.[1] ?? '';
    const named = [...listed.matchAll(/`([^`]+)`/g)].map(([, name]) => name as string);
    const first = new Set(filesIn(built.folder).map((name) => name.replace(/[\\/].*/, '/')));
    expect(named.filter((name) => name !== 'office-js/').sort()).toEqual(
      [...first].filter((name) => name !== 'manifest.xml').sort(),
    );
  });

  test('says nothing of the computer that it was built on', () => {
    for (const name of FILES) expect(read(name), name).not.toMatch(/localhost|127\.0\.0\.1/);
  });

  test('says who helps', () => expect(read('support.html')).toContain('Studio desk, extension 41'));
});

describe('a build for a closed network', () => {
  let built: BuiltAddIn;
  beforeAll(async () => {
    built = await buildAddIn({ officejs: true });
  }, LONGEST_BUILD);
  afterAll(() => built?.remove());

  test('has its own copy of office.js, unchanged', () => {
    const copied = filesIn(join(built.folder, 'office-js'));
    expect(copied).toContain('office.js');
    expect(copied.filter((name) => /^excel-(web|win32|mac)-/.test(name)).length).toBe(3);
    for (const name of copied)
      expect(
        readFileSync(join(built.folder, 'office-js', name)).equals(readFileSync(join(LIBRARY, name))),
        name,
      ).toBe(true);
  });

  test('names no other address to load from, and forbids all others', () => {
    const page = readFileSync(join(built.folder, 'taskpane.html'), 'utf8');
    expect(page).toContain('src="office-js/office.js"');
    expect(page).toContain(`content="default-src 'none'; script-src 'self';`);
    expect(page).not.toMatch(/https?:/);
  });
});
