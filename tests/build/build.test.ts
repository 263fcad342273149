import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import { type BuiltAddIn, buildAddIn, keptAddIn, LONGEST_BUILD } from '../hosts/excel/support/built-add-in';

const require = createRequire(import.meta.url);
const { inBuild, manifestFaults } = require('../../src/build/manifest-rules.cjs') as {
  inBuild: (folder: string) => (name: string) => Buffer | undefined;
  manifestFaults: (xml: string, look: (name: string) => Buffer | undefined) => string[];
};
const { listedIn } = require('../../src/build/licence-texts.cjs') as {
  listedIn: (text: string) => { readonly name: string; readonly licence: string }[];
};
const LIBRARY = join(dirname(require.resolve('@microsoft/office-js/package.json')), 'dist');
const OFFICE_ADDRESS = 'https://appsforoffice.microsoft.com/lib/1/hosted/office.js';
const ORIGIN = 'https://studio.example/sweep/';
const FILES = [
  'functions.js',
  'functions.json',
  'help.html',
  'licences.txt',
  'long-sheets.js',
  'manifest.xml',
  'privacy.html',
  'support.html',
  'taskpane.css',
  'taskpane.html',
  'taskpane.js',
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

  test('has a manifest in order, with every file that it names', () => {
    expect(manifestFaults(read('manifest.xml'), inBuild(built.folder))).toEqual([]);
    expect(read('manifest.xml')).toContain(`<SupportUrl DefaultValue="${ORIGIN}support.html"/>`);
  });

  test('leads from every function to its help at that address', () => {
    const { functions } = JSON.parse(read('functions.json')) as { functions: { helpUrl: string }[] };
    expect(functions.map(({ helpUrl }) => helpUrl)).toEqual(
      CATALOGUE.map(({ id }) => `${ORIGIN}help.html#${id.toLowerCase()}`),
    );
  });

  test('says nothing of the computer that it was built on', () => {
    for (const name of FILES) expect(read(name), name).not.toMatch(/localhost|127\.0\.0\.1/);
  });

  test('takes office.js from Microsoft, and forbids it nothing', () => {
    expect(read('taskpane.html')).toContain(`src="${OFFICE_ADDRESS}"`);
    expect(read('taskpane.html')).not.toContain('Content-Security-Policy');
  });

  test('has our licence, and no package built in: Excel draws the charts', () => {
    const text = read('licences.txt');
    expect(text).toContain(readFileSync(join(import.meta.dirname, '../../LICENSE'), 'utf8').trim());
    expect(listedIn(text)).toEqual([]);
  });

  test('says who helps', () => expect(read('support.html')).toContain('Studio desk, extension 41'));
});

describe('a build for a closed network', () => {
  let built: BuiltAddIn;
  beforeAll(async () => {
    built = await keptAddIn();
  }, LONGEST_BUILD);

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

test.each(['http://studio.example/', 'studio.example', 'https://studio.example/?a', ''])(
  'no build is made for %s',
  (origin) => expect(buildAddIn({ origin })).rejects.toThrow('origin must be an https address'),
);
test.each([true, ' '])('no build is made with the contact %j', (contact) =>
  expect(buildAddIn({ contact })).rejects.toThrow('contact must say who helps'),
);
