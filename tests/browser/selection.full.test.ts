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
