import { expect, it } from 'vitest';
import type { BookSheet } from '../../src/book/book';
import { readXlsx } from '../../src/xlsx/read';
import { downloaded } from './downloaded';
import { eachItsWorkbook } from './onePage';
import { status, tab } from './paneChecks';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

const prepare = async () => {
  await tab(sheet.page, 'Sheets').click();
  await sheet.pane.getByRole('button', { name: 'Prepare the client page' }).click();
};
const said = () => expect.poll(() => status(sheet.page).innerText());

it('prepares the page of an estimate for a client, as a file that holds nothing else', async () => {
  await prepare();
  await said().toMatch('Insert “Client page” beside the Estimate.');
  await sheet.insert('Estimate');
  await sheet.insert('Client page');
  // 8756.74, as tests/sheets/estimate.test.ts works it by hand
  await sheet.shows('B15', 'EUR 8,756.74');
  await sheet.enter('B6', 'A client of ours');
  const [download] = await Promise.all([sheet.page.waitForEvent('download'), prepare()]);
  expect(download.suggestedFilename()).toBe('Estimate.xlsx');
  const { book } = await readXlsx(await downloaded(download));
  expect(book.sheets.map(({ name }) => name)).toEqual(['Estimate']);
  expect(book.names).toEqual([]);
  const { cells, merges } = book.sheets[0] as BookSheet;
  // the place for a logo, beside the lines from the studio's name on
  expect(merges).toEqual([{ row: 1, column: 3, rows: 6, columns: 1 }]);
  expect(cells.filter(({ formula, note }) => formula !== undefined || note !== undefined)).toEqual([]);
  const shown = cells.map(({ value }) => value);
  // the prices of its shots, worked there too
  for (const words of ['A client of ours', 'EUR 8,756.74', 'EUR 4,696.67', 'EUR 2,092.42', 'EUR 696.94'])
    expect(shown).toContain(words);
  expect(shown.join(' ')).not.toMatch(/Photographer|mark-up|Birch|Type what/);
  expect(cells.find(({ value }) => value === 'A client of ours')?.style?.fill).toBeUndefined();
});

it('prints the page of an estimate for a client, and nothing else', async () => {
  await sheet.insert('Estimate');
  await sheet.insert('Client page');
  await sheet.shows('B15', 'EUR 8,756.74');
  const title = await sheet.page.title();
  const tell = (event: string) => sheet.page.evaluate((name) => dispatchEvent(new Event(name)), event);
  // what a browser does while its dialog is open
  await sheet.page.evaluate(() => {
    window.print = () => dispatchEvent(new Event('beforeprint'));
  });
  await tab(sheet.page, 'Sheets').click();
  await sheet.pane.getByRole('button', { name: 'Print the client page' }).click();
  await said().toMatch('Look it over before you send it.');
  await sheet.page.emulateMedia({ media: 'print' });
  const paper = sheet.page.locator('.paper');
  const text = await paper.innerText();
  for (const words of [
    'Studio North Light',
    'EUR 8,756.74',
    'EUR 696.94',
    '2026-07-15',
    'Two years from delivery',
  ])
    expect(text).toContain(words);
  expect(text).not.toMatch(/Photographer|mark-up|Birch|Type what|From the Estimate|Client page|Nr|Page 1/);
  expect(await sheet.page.locator('body > :not(.paper)').filter({ visible: true }).count()).toBe(0);
  expect(await sheet.page.title()).toBe('Estimate');
  await sheet.page.emulateMedia({ media: null });
  await tell('afterprint');
  expect([await paper.count(), await sheet.page.title()]).toEqual([0, title]);
  // from then on the sheet in view is printed again
  await tell('beforeprint');
  expect(await paper.innerText()).toContain('What does the client read?');
  await tell('afterprint');
});

it('begins another estimate with the prices of the one that there is', async () => {
  await sheet.insert('Estimate');
  await sheet.enter('B20', '33');
  await tab(sheet.page, 'Sheets').click();
  await sheet.pane.getByRole('button', { name: 'New estimate from this one' }).click();
  await said().toMatch('It has the prices, currencies and terms of “Estimate”: type its shots and dates.');
  await expect.poll(() => sheet.sheets()).toEqual(['Pops build', 'Estimate', 'Estimate (2)']);
  await sheet.shows('S11', 'Photographer');
  await sheet.shows('B20', 33);
  await sheet.shows('B17', 'EUR');
  expect((await sheet.cell('B24')).value ?? '').toBe('');
});
