import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

it('the list of a cell is opened, gone through and chosen from by keys, and closed without a choice', async () => {
  const { page } = sheet;
  const list = page.getByRole('listbox');
  const open = () => page.locator('[data-u-comp="sheets-dropdown-list"]');
  const entry = (name: string) => list.getByRole('option', { name, exact: true, selected: true });
  const selected = () => page.evaluate(() => window.sweeptable.selected());
  await sheet.insert('Mains plan');
  // the curve of a breaker: B, C, D, K or Z
  await sheet.click('B12');
  await page.keyboard.press('Alt+ArrowDown');
  await open().waitFor();
  // from the one that the cell holds
  await page.keyboard.press('ArrowDown');
  await entry('C').waitFor();
  await page.keyboard.press('ArrowDown');
  await entry('D').waitFor();
  await page.keyboard.press('Enter');
  await sheet.shows('B12', 'D');
  await open().waitFor({ state: 'detached' });
  expect(await selected()).toBe('B12');

  await page.keyboard.press('Alt+ArrowDown');
  await open().waitFor();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  await entry('C').waitFor();
  await page.keyboard.press('Escape');
  await open().waitFor({ state: 'detached' });
  await sheet.shows('B12', 'D');

  // what the cell holds may be chosen again, by a key and by a click
  await page.keyboard.press('Alt+ArrowDown');
  await open().waitFor();
  await page.keyboard.press('ArrowDown');
  await entry('D').waitFor();
  await page.keyboard.press('Enter');
  await open().waitFor({ state: 'detached' });
  await sheet.shows('B12', 'D');
  await page.keyboard.press('Alt+ArrowDown');
  await open().getByText('D', { exact: true }).click();
  await open().waitFor({ state: 'detached' });
  await sheet.shows('B12', 'D');

  // any other key goes on to the cells
  await page.keyboard.press('Alt+ArrowDown');
  await open().waitFor();
  await page.keyboard.press('Tab');
  await open().waitFor({ state: 'detached' });
  expect(await selected()).not.toBe('B12');
  await sheet.click('B11');
  await page.keyboard.press('Alt+ArrowDown');
  expect(await selected()).toBe('B11');
});

it('an entry is taken in small letters and with blanks around it, in a cell, in the formula bar and from elsewhere', async () => {
  const { keyboard } = sheet.page;
  await sheet.insert('Mains plan');
  // of the curves B, C, D, K or Z, above those of the circuits in a table
  await sheet.enter('B12', 'd');
  await sheet.shows('B12', 'D');
  await sheet.click('B12');
  await sheet.page.locator('[data-u-comp="formula-bar"] canvas').first().click();
  await keyboard.press('Control+a');
  await keyboard.type(' k ');
  await keyboard.press('Enter');
  await sheet.shows('B12', 'K');
  await sheet.paste('B12', 'z');
  await sheet.shows('B12', 'Z');
  await sheet.undo('B12');
  await sheet.shows('B12', 'K');
  expect(await sheet.refusal.count()).toBe(0);

  await sheet.enter('B12', 'e');
  await sheet.refusal.waitFor();
  await keyboard.press('Escape');
  await sheet.shows('B12', 'K');
});
