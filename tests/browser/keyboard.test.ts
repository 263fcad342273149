import type { Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import { tab } from './paneChecks';
import type { Workbench } from './workbench';

let sheet: Workbench;
const take = (fresh: Workbench): void => {
  sheet = fresh;
};
const selected = () => sheet.page.evaluate(() => window.sweeptable.selected());

describe('after a sheet came in from the pane', () => {
  eachItsWorkbook(take);

  it('what is typed is typed into it, and Ctrl+Z takes it away as the pane says', async () => {
    await sheet.insert('Lights on set', { filled: false });
    const cell = await selected();
    await sheet.page.keyboard.type('8');
    await sheet.page.keyboard.press('Enter');
    await sheet.shows(cell, 8);
    expect(await sheet.sheets()).toEqual(['Pops build', 'Lights on set']);
    // the 8, and the sheet
    await sheet.page.keyboard.press('Control+z');
    await sheet.shows(cell, null);
    await sheet.page.keyboard.press('Control+z');
    await expect.poll(() => sheet.sheets()).toEqual(['Pops build']);
  });
});

describe('the keyboard', () => {
  eachItsWorkbook(take);

  it('is led by Ctrl+F6 from the cells to the nearest table’s foot, to the pane, and back', async () => {
    const hasKeyboard = (place: Locator) =>
      expect.poll(() => place.evaluate((element) => element === document.activeElement)).toBe(true);
    const foot = (table: string) => sheet.page.getByRole('button', { name: `Add a row to ${table}` });
    await sheet.click('G12');
    await sheet.page.keyboard.press('Control+F6');
    await hasKeyboard(foot('Tally'));
    await sheet.page.keyboard.press('Control+F6');
    await hasKeyboard(tab(sheet.page, 'Sheets'));
    await sheet.page.keyboard.press('Control+F6');
    await sheet.page.keyboard.type('7');
    await sheet.page.keyboard.press('Enter');
    await sheet.shows('G12', 7);
  });
});
