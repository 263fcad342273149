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

/** The fill of a cell as the grid paints it, at its left edge, where a number leaves room. */
const fillOf = (a1: string): Promise<string> =>
  sheet.page.evaluate((at) => {
    const { x, y } = window.sweeptable.place(at);
    const painted = [...document.querySelectorAll('canvas')].find((canvas) => {
      const { left, right, top, bottom } = canvas.getBoundingClientRect();
      return left <= x && x <= right && top <= y && y <= bottom;
    });
    if (!painted) throw new Error('The grid is not there.');
    const { left, top, width } = painted.getBoundingClientRect();
    const scale = painted.width / width;
    const copy = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true });
    copy?.drawImage(painted, -(x - 40 - left) * scale, -(y - top) * scale);
    const pixel = copy?.getImageData(0, 0, 1, 1).data ?? [];
    return `#${[...pixel].slice(0, 3).map((part) => part.toString(16).padStart(2, '0')).join('')}`;
  }, a1); // prettier-ignore

/** The least is as light as paper, the most as dark as the scale goes. */
async function isColoured(): Promise<void> {
  await expect.poll(() => fillOf('B6')).toBe('#fbf8f1');
  await expect.poll(() => fillOf('C7')).toBe('#88cfc7');
}

it('colours a map, also when it is saved and opened again', async () => {
  await sheet.insert('Kinds');
  await isColoured();
  await saveAndOpen();
  await sheet.sheet('Kinds');
  await isColoured();
});

it('looks a column up in the sheet that is there, also when both are saved and opened again', async () => {
  await sheet.insert('Partner');
  await sheet.insert('Kinds');
  const rig = ['B13', 'C13', 'B14', 'C14', 'B15', 'C15'];
  const found = [1200, '', '', 'not known', '', 'not known'];
  for (const [i, cell] of rig.entries()) await sheet.shows(cell, found[i]);
  await saveAndOpen();
  await sheet.sheet('Partner');
  await sheet.enter('B8', '400');
  await sheet.sheet('Kinds');
  await sheet.shows('B13', 1200);
  await sheet.shows('B14', 400);
  await isColoured();
});

it('takes the demo’s values where the other sheet comes later', async () => {
  await sheet.insert('Kinds');
  await sheet.insert('Partner');
  await sheet.sheet('Kinds');
  await sheet.shows('B13', 1000);
  expect((await sheet.cell('B13')).formula ?? '').toBe('');
});
