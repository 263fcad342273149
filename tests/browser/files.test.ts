import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Workbook } from '@cj-tech-master/excelts';
import { installChartSupport } from '@cj-tech-master/excelts/chart';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { chartCalled, numbersOf } from './chartsOnSheet';
import { TALL, enterAmbient } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import { choose, open } from './openedFile';
import type { Workbench } from './workbench';

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
  await open(sheet, file);

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

it('refuses what is no workbook, and changes nothing', async () => {
  await sheet.enter('B6', '22');
  await choose(sheet, { name: 'wrong.xlsx', mimeType: '', buffer: Buffer.from('\x89PNG not a workbook') });
  await expect.poll(() => sheet.dialog.innerText()).toMatch(/was not opened/);
  await sheet.dialog.getByRole('button', { name: 'Close' }).click();
  await sheet.shows('B6', 22);
});
