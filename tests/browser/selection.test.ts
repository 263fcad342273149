import { describe, expect, it } from 'vitest';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
const take = (fresh: Workbench): void => {
  sheet = fresh;
};
const selected = () => sheet.page.evaluate(() => window.sweeptable.selected());

describe('what is selected', () => {
  allInOneWorkbook(take);

  const press = async (...keys: string[]) => {
    for (const key of keys) await sheet.page.keyboard.press(key);
  };

  it('goes back with Shift+Tab and up with Shift+Enter', async () => {
    await sheet.click('D15');
    await press('Shift+Tab', 'Shift+Tab');
    await expect.poll(selected).toBe('B15');
    await sheet.click('D15');
    await press('Shift+Enter', 'Shift+Enter');
    await expect.poll(selected).toBe('D13');
    await press('Tab', 'Enter');
    // as many as Tab went on, Enter goes back
    await expect.poll(selected).toBe('D14');
  });

  it('stays several cells, and goes round in them', async () => {
    await sheet.click('G5');
    await press('Shift+ArrowDown', 'Shift+ArrowRight');
    await expect.poll(selected).toBe('G5:H6');
    await press('Shift+Tab');
    await sheet.page.keyboard.type('1');
    await press('Enter');
    // back from the first cell is the last one
    await sheet.shows('H6', 1);
    await expect.poll(selected).toBe('G5:H6');
  });
});
