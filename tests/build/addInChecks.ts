import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';

const require = createRequire(import.meta.url);
const { inBuild, manifestFaults } = require('../../src/build/manifest-rules.cjs') as {
  inBuild: (folder: string) => (name: string) => Buffer | undefined;
  manifestFaults: (xml: string, look: (name: string) => Buffer | undefined) => string[];
};
const { listedIn } = require('../../src/build/licence-texts.cjs') as {
  listedIn: (text: string) => { readonly name: string; readonly licence: string }[];
};
const OFFICE_ADDRESS = 'https://appsforoffice.microsoft.com/lib/1/hosted/office.js';

/** What holds for the add-in that was built for an address, with Microsoft's own office.js. */
export function checkAddIn(folder: () => string, origin: string): void {
  const read = (name: string): string => readFileSync(join(folder(), name), 'utf8');

  test('has a manifest in order, with every file that it names', () => {
    expect(manifestFaults(read('manifest.xml'), inBuild(folder()))).toEqual([]);
    expect(read('manifest.xml')).toContain(`<SupportUrl DefaultValue="${origin}support.html"/>`);
  });

  test('leads from every function to its help at that address', () => {
    const { functions } = JSON.parse(read('functions.json')) as { functions: { helpUrl: string }[] };
    expect(functions.map(({ helpUrl }) => helpUrl)).toEqual(
      CATALOGUE.map(({ id }) => `${origin}help.html#${id.toLowerCase()}`),
    );
  });

  test('takes office.js from Microsoft, and forbids it nothing', () => {
    expect(read('taskpane.html')).toContain(`src="${OFFICE_ADDRESS}"`);
    expect(read('taskpane.html')).not.toContain('Content-Security-Policy');
  });

  test('has our licence, and of packages only what writes a file for a client: Excel draws the charts', () => {
    const text = read('licences.txt');
    expect(text).toContain(readFileSync(join(import.meta.dirname, '../../LICENSE'), 'utf8').trim());
    expect(listedIn(text).map(({ name }) => name)).toEqual(['@cj-tech-master/excelts']);
  });
}
