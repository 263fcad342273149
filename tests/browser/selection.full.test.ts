import { expect, it } from 'vitest';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
allInOneWorkbook((fresh) => {
  sheet = fresh;
});
const selected = () => sheet.page.evaluate(() => window.sweeptable.selected());

it('what is selected is selected again after a reload', async () => {
  await sheet.enter('G10', '1');
  await sheet.click('G21');
  await sheet.reload();
  expect(await selected()).toBe('G21');
  await sheet.page.keyboard.type('5');
  await sheet.page.keyboard.press('Enter');
  await sheet.shows('G21', 5);
});

it('a name that is typed into the field for it takes the place of the one there', async () => {
  await sheet.click('G12');
  await sheet.page.getByLabel('Name of the chosen cells').click();
  await sheet.page.keyboard.type('H20');
  await sheet.page.keyboard.press('Enter');
  await expect.poll(selected).toBe('H20');
});
