import { createRequire } from 'node:module';
import { readFile } from 'node:fs/promises';
import { Workbook } from '@cj-tech-master/excelts';
import { installChartSupport } from '@cj-tech-master/excelts/chart';
import { beforeAll, expect, it } from 'vitest';
import { withValues } from '../../src/book/cells';
import type { Template } from '../../src/sheets/template';
import { readXlsx } from '../../src/xlsx/read';
import { writeXlsx } from '../../src/xlsx/write';
import { calculated } from '../sheets/support';
import { chartCalled, covers, numbersOf } from './chartsOnSheet';
import { TALL } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import { choose, open, saved } from './openedFile';
import type { Workbench } from './workbench';

const { readTemplate } = createRequire(import.meta.url)('../../src/build/templates.cjs') as {
  readTemplate: (file: string, text: string) => Template;
};

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
}, TALL);
beforeAll(installChartSupport);

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
  await open(sheet, Buffer.from(await book.xlsx.writeBuffer()));
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

  const again = await readXlsx(await saved(sheet));
  const cells = (column: number) => ({ cells: { row: 2, column, rows: 3, columns: 1 } });
  expect(again.book.sheets[0]?.charts).toMatchObject([
    { kind: 'line', title: 'Energy', x: cells(0), series: [{ values: cells(1) }], place: { row: 2, column: 3, rows: 12, columns: 6 } }, // prettier-ignore
  ]);
});

it('shows a constant line and a marked point of a sheet that was inserted elsewhere, and saves them', async () => {
  const template = readTemplate('chart.json', await readFile('tests/sheets/kinds/chart.json', 'utf8'));
  const { plan, values } = await calculated(template);
  const made = await writeXlsx({ sheets: [withValues(plan, values)], names: [] });
  await open(sheet, Buffer.from(made));
  const chart = chartCalled(sheet, 'Reading against pops');
  await expect
    .poll(() => chart.locator('.keys li').allInnerTexts())
    .toEqual(['At the film', 'Wanted', 'Now']);
  const last = async () => (await numbersOf(chart)).at(-1);
  // f/16 and six pops: 16 · √6 = 39.19; nine pops: 48.
  await expect.poll(last).toEqual(['6', '–', '–', 'f/39.2']);
  await sheet.enter('B7', '9');
  await expect.poll(last).toEqual(['9', '–', '–', 'f/48.0']);

  const [before, after] = await Promise.all([readXlsx(made), readXlsx(await saved(sheet))]);
  expect(after.book.sheets[0]?.charts).toEqual(before.book.sheets[0]?.charts);
});

it('opens nothing when the question is answered with Cancel', async () => {
  const file = { name: 'in.xlsx', mimeType: '', buffer: await saved(sheet) };
  await sheet.enter('B6', '22');
  await choose(sheet, file);
  await sheet.dialog.getByRole('button', { name: 'Cancel' }).click();
  await sheet.shows('B6', 22);
});

it('keeps text that begins like a formula as text', async () => {
  const book = new Workbook();
  const made = book.addWorksheet('Brought in');
  const texts = ['=1+1', '+1', '-1+2', '@SUM(A1)', '=SWEEP.STOPDIFF(8,11)'];
  for (const [i, text] of texts.entries()) made.getCell(i + 1, 1).value = text;
  made.getCell('B1').value = { formula: '1+1', result: 2 };
  const buffer = Buffer.from(await book.xlsx.writeBuffer());
  await open(sheet, buffer);
  await sheet.shows('B1', 2);
  expect(await sheet.values('A1', 'A2', 'A3', 'A4', 'A5')).toEqual(texts);
  for (const cell of ['A1', 'A2', 'A3', 'A4', 'A5']) expect((await sheet.cell(cell)).formula).toBe('');
  // Opened and left again, it still is one.
  await sheet.click('A1');
  await sheet.page.keyboard.press('F2');
  await sheet.page.keyboard.press('Enter');
  await sheet.shows('A1', '=1+1');
  expect((await sheet.cell('A1')).formula).toBe('');

  const again = await saved(sheet);
  await open(sheet, again);
  expect(await sheet.values('A1', 'A2', 'A3', 'A4', 'A5')).toEqual(texts);
});

it('says what of a file it did not understand', async () => {
  const book = new Workbook();
  const made = book.addWorksheet('Brought in');
  made.getCell('A1').value = { formula: "'[other.xlsx]Sheet1'!A1", result: 5 };
  const buffer = Buffer.from(await book.xlsx.writeBuffer());
  await open(sheet, buffer);
  await expect.poll(() => sheet.dialog.innerText()).toMatch(/Not all of it was understood/);
  expect(await sheet.dialog.getByRole('listitem').count()).toBeGreaterThan(0);
  await sheet.dialog.getByRole('button', { name: 'Close' }).click();
});
