import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import webpack, { type Configuration } from 'webpack';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { readXlsx } from '../../src/xlsx/read';
import { contrast } from '../sheets/contrast';
import { chartCalled, numbersOf } from './chartsOnSheet';
import { inTurn } from '../full';
import { LOOKS } from './paneChecks';
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

/** Saves the workbook, and says where. */
async function save(): Promise<string> {
  const [download] = await Promise.all([sheet.page.waitForEvent('download'), sheet.command('Save as .xlsx')]);
  const file = join(folder, download.suggestedFilename());
  await download.saveAs(file);
  expect(await sheet.notice.innerText()).toMatch(/is saved/);
  return file;
}

/** Saves the workbook, gives everything else up, and opens the file. */
async function saveAndOpen(): Promise<void> {
  const file = await save();
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

/** The least is as dark as the scale goes, the most as light as paper. */
async function isColoured(): Promise<void> {
  await expect.poll(() => fillOf('B6')).toBe('#88cfc7');
  await expect.poll(() => fillOf('C7')).toBe('#fbf8f1');
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

it('starts a page at the same table, and prints all rows, after rows came in above', async () => {
  const pages = async () => {
    const { book } = await readXlsx(new Uint8Array(await readFile(await save())));
    const { breaks, area } = book.sheets.find(({ name }) => name === 'Kinds')?.page ?? {};
    return { breaks, area };
  };
  await sheet.insert('Kinds');
  expect(await pages()).toEqual({ breaks: [10], area: { row: 0, column: 0, rows: 15, columns: 4 } });
  await sheet.rowMenu(7, 'rows above');
  await expect.poll(() => sheet.cell('A12')).toMatchObject({ value: 'Heads on set' });
  expect(await pages()).toEqual({ breaks: [11], area: { row: 0, column: 0, rows: 16, columns: 4 } });
});

/** A series as its key shows it, and how much of its chart is painted in its colour, in pixels. */
interface Seen {
  readonly name: string;
  readonly ink: string;
  readonly paper: string;
  /** What tells it apart where there are no colours. */
  readonly stroke: string;
  readonly painted: number;
}

/** The series of a chart on its sheet. */
const seriesSeen = (title: string): Promise<Seen[]> =>
  sheet.page.evaluate((wanted) => {
    const card = [...document.querySelectorAll('.chart')].find(
      (each) => each.querySelector('figcaption')?.textContent === wanted,
    );
    const canvas = card?.querySelector('canvas');
    if (!card || !canvas) return [];
    const { width, height } = canvas;
    const copy = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
    copy?.drawImage(canvas, 0, 0);
    const data = copy?.getImageData(0, 0, width, height).data ?? [];
    const rgb = (text: string): number[] => (text.match(/[\d.]+/g) ?? []).slice(0, 3).map(Number);
    const hex = (parts: number[]): string =>
      `#${parts.map((part) => Math.round(part).toString(16).padStart(2, '0')).join('')}`;
    const paper = hex(rgb(getComputedStyle(card).backgroundColor));
    return [...card.querySelectorAll('.keys li')].map((key) => {
      const mark = key.querySelector('.ink') as HTMLElement;
      const ink = rgb(getComputedStyle(mark).color);
      let painted = 0;
      for (let i = 0; i < data.length; i += 4)
        if (data[i + 3] === 255 && ink.every((part, c) => Math.abs(part - (data[i + c] ?? 0)) < 3)) painted++;
      // Behind it and its colour.
      const stroke = mark.className.split(' ').slice(2).join(' ');
      return { name: key.textContent, ink: hex(ink), paper, stroke, painted };
    });
  }, title);

/** Each series is on the chart, stands out from its paper, and is told apart in grey. */
async function isDrawn(title: string, names: readonly string[]): Promise<void> {
  await expect
    .poll(async () => (await seriesSeen(title)).map(({ painted }) => painted > 20), { message: title })
    .toEqual(names.map(() => true));
  const seen = await seriesSeen(title);
  expect(seen.map(({ name }) => name)).toEqual(names);
  expect(new Set(seen.map(({ stroke }) => stroke)).size, title).toBe(names.length);
  // WCAG 2.1, 1.4.11: what a picture is understood by has a contrast of 3 to 1.
  for (const { name, ink, paper } of seen) expect(contrast(ink, paper), name).toBeGreaterThanOrEqual(3);
}

it.each(inTurn(['light', 'dark', 'forced'] as const))(
  'draws a constant line and a marked point of a sheet that is inserted, in %s colours',
  async (look) => {
    await sheet.page.emulateMedia(LOOKS[look]);
    await sheet.insert('Chart kinds');
    await sheet.stretch(1700);
    await isDrawn('Reading against pops', ['At the film', 'Wanted', 'Now']);
    await isDrawn('Reading of each head', ['Reading', 'Least']);
    await isDrawn('Columns of each head', ['Reading', 'Least']);
    const now = async () => (await numbersOf(chartCalled(sheet, 'Reading against pops'))).at(-1);
    // f/16 and six pops: 16 · √6 = 39.19; nine pops: 48.
    await expect.poll(now).toEqual(['6', '–', '–', 'f/39.2']);
    await sheet.enter('B7', '9');
    await expect.poll(now).toEqual(['9', '–', '–', 'f/48.0']);
  },
);
