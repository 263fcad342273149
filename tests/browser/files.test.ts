import { createRequire } from 'node:module';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Workbook } from '@cj-tech-master/excelts';
import { installChartSupport } from '@cj-tech-master/excelts/chart';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { withValues } from '../../src/book/cells';
import type { Template } from '../../src/sheets/template';
import { readXlsx } from '../../src/xlsx/read';
import { writeXlsx } from '../../src/xlsx/write';
import { calculated } from '../sheets/support';
import { chartCalled, covers, numbersOf } from './chartsOnSheet';
import { TALL, enterAmbient } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

const { readTemplate } = createRequire(import.meta.url)('../../src/build/templates.cjs') as {
  readTemplate: (file: string, text: string) => Template;
};

let sheet: Workbench;
let folder: string;
eachItsWorkbook((fresh) => {
  sheet = fresh;
}, TALL);

beforeAll(async () => {
  installChartSupport();
  folder = await mkdtemp(join(tmpdir(), 'workbench-'));
});
afterAll(() => rm(folder, { recursive: true }));

/** Saves the workbook as a person does, and gives the file. */
async function save(): Promise<string> {
  const [download] = await Promise.all([sheet.page.waitForEvent('download'), sheet.command('Save as .xlsx')]);
  const file = join(folder, download.suggestedFilename());
  await download.saveAs(file);
  return file;
}

async function choose(file: string | { name: string; mimeType: string; buffer: Buffer }): Promise<void> {
  const [chooser] = await Promise.all([sheet.page.waitForEvent('filechooser'), sheet.command('Open .xlsx')]);
  await chooser.setFiles(file);
}

async function open(file: Parameters<typeof choose>[0]): Promise<void> {
  await choose(file);
  await sheet.dialog.getByRole('button', { name: 'Open', exact: true }).click();
  await expect.poll(() => sheet.notice.innerText()).toMatch(/is open/);
}

const NUMBERS = ['T9', 'Q33', 'O34', 'Y35', 'AA36', 'AC33', 'AD37', 'AG37', 'AF6', 'AF7', 'B13'];

it('gives the same workbook back after it was saved and everything else was given up', async () => {
  await sheet.insert('Lights on set');
  await enterAmbient(sheet, 39, '16');
  await sheet.enterDown('I18', ['=SEQUENCE(3)']);
  await sheet.enter('J18', '=IF(TRUE,"kept")');
  await sheet.showsNear('X39', 256);
  await sheet.shows('I20', 3);
  const [numbers, texts, tables] = [
    await sheet.values(...NUMBERS),
    await sheet.texts('B5', 'B8', 'C17', 'C33', 'AG37', 'A39'),
    await sheet.tables(),
  ];

  const file = await save();
  expect(file).toMatch(/Pops build\.xlsx$/);
  expect(await sheet.notice.innerText()).toMatch(/is saved/);
  await sheet.command('Start over');
  await sheet.dialog.getByRole('button', { name: 'Start over' }).click();
  await expect.poll(() => sheet.sheets()).toEqual(['Pops build']);
  await open(file);

  expect(await sheet.sheets()).toEqual(['Pops build', 'Lights on set']);
  expect(await sheet.tables()).toEqual(tables);
  await sheet.shows('B20', 5);
  await sheet.sheet('Lights on set');
  await sheet.showsNear('X39', 256);
  for (const [i, cell] of NUMBERS.entries()) await sheet.showsNear(cell, numbers[i] as number);
  expect(await sheet.texts('B5', 'B8', 'C17', 'C33', 'AG37', 'A39')).toEqual(texts);
  expect(await sheet.values('I18', 'I19', 'I20', 'J18')).toEqual([1, 2, 3, 'kept']);

  // Its rules, warnings and charts came along.
  await sheet.enter('M33', '-3');
  await sheet.told('Metres from the front of the light to the subject, above 0 and up to 20.');
  await expect.poll(() => numbersOf(chartCalled(sheet, 'Share of the light at the subject'))).toHaveLength(7);

  await sheet.page.locator('#notice').getByRole('button', { name: 'Take back' }).click();
  await expect.poll(() => sheet.sheets()).toEqual(['Pops build']);
});

it('writes values, tables, notes and rules that another reader finds', async () => {
  const book = new Workbook();
  await book.xlsx.load(await readFile(await save()));
  const written = book.getWorksheet('Pops build');
  expect(written?.getCell('B20').result).toBe(5);
  expect(written?.getCell('B13').value).toBe('2 s');
  expect(written?.getCell('B7').numFmt).toBe('0" mm"');
  expect(written?.getCell('B5').note).toBeTruthy();
  expect(written?.getCell('B7').dataValidation).toMatchObject({ type: 'decimal' });
  expect(written?.getTables().map(({ name }) => name)).toEqual(['Tally', 'Build']);
  expect(written?.getColumn(1).width).toBeCloseTo(26, 0);
});

it('keeps text that begins like a formula as text', async () => {
  const book = new Workbook();
  const made = book.addWorksheet('Brought in');
  const texts = ['=1+1', '+1', '-1+2', '@SUM(A1)', '=SWEEP.STOPDIFF(8,11)'];
  for (const [i, text] of texts.entries()) made.getCell(i + 1, 1).value = text;
  made.getCell('B1').value = { formula: '1+1', result: 2 };
  const buffer = Buffer.from(await book.xlsx.writeBuffer());
  await open({ name: 'in.xlsx', mimeType: '', buffer });
  await sheet.shows('B1', 2);
  expect(await sheet.values('A1', 'A2', 'A3', 'A4', 'A5')).toEqual(texts);
  for (const cell of ['A1', 'A2', 'A3', 'A4', 'A5']) expect((await sheet.cell(cell)).formula).toBe('');
  // Opened and left again, it still is one.
  await sheet.click('A1');
  await sheet.page.keyboard.press('F2');
  await sheet.page.keyboard.press('Enter');
  await sheet.shows('A1', '=1+1');
  expect((await sheet.cell('A1')).formula).toBe('');

  const again = await save();
  await open(again);
  expect(await sheet.values('A1', 'A2', 'A3', 'A4', 'A5')).toEqual(texts);
});

it('shows a chart over plain cells of a file from elsewhere, and saves it', async () => {
  const book = new Workbook();
  const made = book.addWorksheet('Brought in');
  made.addRows([
    ['Head', 'Ws'],
    ['Alder', 300],
    ['Birch', 600],
  ]);
  const [categories, values] = ["'Brought in'!$A$2:$A$3", "'Brought in'!$B$2:$B$3"];
  made.addLineChart({ title: 'Energy', series: [{ name: 'Energy set', categories, values }] }, 'D2:I12');
  await open({ name: 'in.xlsx', mimeType: '', buffer: Buffer.from(await book.xlsx.writeBuffer()) });
  const chart = chartCalled(sheet, 'Energy');
  const numbers = () => numbersOf(chart);
  await expect.poll(numbers).toEqual([['Alder', '300'], ['Birch', '600']]); // prettier-ignore
  await covers(sheet, 'D2', 'I12');
  // A row above its cells moves both; one among them is drawn as well.
  await sheet.rowMenu(2, 'rows above');
  await covers(sheet, 'D3', 'I13');
  await sheet.rowMenu(4, 'rows above');
  await sheet.enter('A4', 'Hazel');
  await sheet.enter('B4', '400');
  await expect.poll(numbers).toEqual([['Alder', '300'], ['Hazel', '400'], ['Birch', '600']]); // prettier-ignore
  await covers(sheet, 'D3', 'I14');

  const again = await readXlsx(await readFile(await save()));
  const cells = (column: number) => ({ cells: { row: 2, column, rows: 3, columns: 1 } });
  expect(again.book.sheets[0]?.charts).toMatchObject([
    { kind: 'line', title: 'Energy', x: cells(0), series: [{ values: cells(1) }], place: { row: 2, column: 3, rows: 12, columns: 6 } }, // prettier-ignore
  ]);
});

it('shows a constant line and a marked point of a sheet that was inserted elsewhere, and saves them', async () => {
  const template = readTemplate('chart.json', await readFile('tests/sheets/kinds/chart.json', 'utf8'));
  const { plan, values } = await calculated(template);
  const made = await writeXlsx({ sheets: [withValues(plan, values)], names: [] });
  await open({ name: 'in.xlsx', mimeType: '', buffer: Buffer.from(made) });
  const chart = chartCalled(sheet, 'Reading against pops');
  await expect
    .poll(() => chart.locator('.keys li').allInnerTexts())
    .toEqual(['At the film', 'Wanted', 'Now']);
  const last = async () => (await numbersOf(chart)).at(-1);
  // f/16 and six pops: 16 · √6 = 39.19; nine pops: 48.
  await expect.poll(last).toEqual(['6', '–', '–', 'f/39.2']);
  await sheet.enter('B7', '9');
  await expect.poll(last).toEqual(['9', '–', '–', 'f/48.0']);

  const [before, after] = await Promise.all([readXlsx(made), readXlsx(await readFile(await save()))]);
  expect(after.book.sheets[0]?.charts).toEqual(before.book.sheets[0]?.charts);
});

it('says what of a file it did not understand', async () => {
  const book = new Workbook();
  const made = book.addWorksheet('Brought in');
  made.getCell('A1').value = { formula: "'[other.xlsx]Sheet1'!A1", result: 5 };
  const buffer = Buffer.from(await book.xlsx.writeBuffer());
  await open({ name: 'in.xlsx', mimeType: '', buffer });
  await expect.poll(() => sheet.dialog.innerText()).toMatch(/Not all of it was understood/);
  expect(await sheet.dialog.getByRole('listitem').count()).toBeGreaterThan(0);
  await sheet.dialog.getByRole('button', { name: 'Close' }).click();
});

it.each([
  ['a picture', Buffer.from('\x89PNG not a workbook')],
  ['nothing', Buffer.alloc(0)],
])('refuses %s that calls itself a workbook, and changes nothing', async (_, buffer) => {
  await sheet.enter('B6', '22');
  await choose({ name: 'wrong.xlsx', mimeType: '', buffer });
  await expect.poll(() => sheet.dialog.innerText()).toMatch(/was not opened/);
  await sheet.dialog.getByRole('button', { name: 'Close' }).click();
  await sheet.shows('B6', 22);
});

it('opens nothing when the question is answered with Cancel', async () => {
  const file = await save();
  await sheet.enter('B6', '22');
  await choose(file);
  await sheet.dialog.getByRole('button', { name: 'Cancel' }).click();
  await sheet.shows('B6', 22);
});
