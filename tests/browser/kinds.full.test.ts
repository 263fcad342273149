import { mkdtemp, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import webpack, { type Configuration } from 'webpack';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { Workbench } from './workbench';

const require = createRequire(import.meta.url);
const serve: (
  folder: string,
) => Promise<{ url: string; close(): Promise<void> }> = require('../../src/build/serve.cjs');
const configuration = require('../../src/build/webpack-workbench.cjs') as (
  env: Readonly<Record<string, string>>,
  argv: Readonly<Record<string, string>>,
) => Configuration;
const KINDS = resolve(import.meta.dirname, '../sheets/kinds');

let place: Awaited<ReturnType<typeof serve>>;
let sheet: Workbench;
let folder: string;

/** A workbench that offers the sheets of this test as well. */
function build(into: string): Promise<void> {
  const made = configuration({ templates: KINDS }, { mode: 'development' });
  const compiler = webpack({ ...made, output: { ...made.output, path: into } });
  return new Promise((done, failed) =>
    compiler?.run((error, stats) =>
      error || stats?.hasErrors() ? failed(error ?? new Error(stats?.toString('errors-only'))) : done(),
    ),
  );
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'kinds-'));
  await build(join(folder, 'site'));
  place = await serve(join(folder, 'site'));
}, 300_000);
afterAll(async () => {
  await place?.close();
  await rm(folder, { recursive: true });
});
beforeEach(async () => {
  sheet = await Workbench.open({ url: place.url });
});
afterEach(async () => {
  expect(sheet.complaints).toEqual({ errors: [], outside: [] });
  await sheet.page.close();
});

/** Saves the workbook, gives everything else up, and opens the file. */
async function saveAndOpen(): Promise<void> {
  const [download] = await Promise.all([sheet.page.waitForEvent('download'), sheet.command('Save as .xlsx')]);
  const file = join(folder, download.suggestedFilename());
  await download.saveAs(file);
  expect(await sheet.notice.innerText()).toMatch(/is saved/);
  await sheet.startOver();
  const [chooser] = await Promise.all([sheet.page.waitForEvent('filechooser'), sheet.command('Open .xlsx')]);
  await chooser.setFiles(file);
  await sheet.dialog.getByRole('button', { name: 'Open', exact: true }).click();
  await expect.poll(() => sheet.notice.innerText()).toMatch(/is open/);
}

it('a sheet with every kind of thing comes in, is saved, and opens again', async () => {
  await sheet.insert('Kinds');
  expect(await sheet.texts('B6', 'C7', 'A13')).toEqual(['86%', '100%', 'Birch 1200']);
  await saveAndOpen();
  await sheet.sheet('Kinds');
  expect(await sheet.texts('B6', 'C7', 'A13')).toEqual(['86%', '100%', 'Birch 1200']);
});
