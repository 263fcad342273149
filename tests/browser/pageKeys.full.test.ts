import { expect, it } from 'vitest';
import { readXlsx } from '../../src/xlsx/read';
import { downloaded } from './downloaded';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

it('F1 opens the help beside the page, which keeps what is being typed', async () => {
  const { page } = sheet;
  await sheet.click('G12');
  await page.keyboard.type('12');
  const [help] = await Promise.all([page.context().waitForEvent('page'), page.keyboard.press('F1')]);
  expect(help.url()).toMatch(/\/help\.html$/);
  await help.close();
  await page.keyboard.type('5');
  await page.keyboard.press('Enter');
  await sheet.shows('G12', 125);
  // while something is asked, too
  await sheet.command('Start over');
  const [again] = await Promise.all([page.context().waitForEvent('page'), page.keyboard.press('F1')]);
  await again.close();
  await sheet.dialog.getByRole('button', { name: 'Cancel' }).click();
});

it('Ctrl+S saves a file with what is being typed', async () => {
  await sheet.click('G12');
  await sheet.page.keyboard.type('4711');
  const [file] = await Promise.all([
    sheet.page.waitForEvent('download'),
    sheet.page.keyboard.press('Control+s'),
  ]);
  expect(file.suggestedFilename()).toMatch(/\.xlsx$/);
  const { book } = await readXlsx(await downloaded(file));
  const [first] = book.sheets;
  expect(first?.cells.find(({ row, column }) => row === 11 && column === 6)?.value).toBe(4711);
});

it('leaves Ctrl+P to the browser, which asks the page for what it prints', async () => {
  await sheet.click('B7');
  await sheet.page.evaluate(() => {
    addEventListener('keydown', ({ defaultPrevented }) => {
      document.title = String(defaultPrevented);
    });
  });
  await sheet.page.keyboard.press('Control+p');
  await expect.poll(() => sheet.page.title()).toBe('false');
});

it('types into the chosen cell of a sheet whose name was clicked on, and into a name that was clicked on twice', async () => {
  const { page } = sheet;
  await sheet.insert('Mains plan');
  await sheet.sheet('Pops build');
  await page.keyboard.type('16');
  await page.keyboard.press('Enter');
  await sheet.shows('B5', 16);
  expect(await page.evaluate(() => window.sweeptable.selected())).toBe('B6');
  // the name of the sheet in view
  await page.locator('#grid').getByText('Pops build', { exact: true }).last().click();
  await page.keyboard.type('32');
  await page.keyboard.press('Enter');
  await sheet.shows('B6', 32);
  await page.locator('#grid').getByText('Pops build', { exact: true }).last().dblclick();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('Pops');
  await page.keyboard.press('Enter');
  await expect.poll(() => sheet.sheets()).toEqual(['Pops', 'Mains plan']);
  await sheet.shows('B6', 32);
});
