import { expect, it } from 'vitest';
import { lightsOnSet, TALL } from './lightsOnSet';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
allInOneWorkbook((fresh) => {
  sheet = fresh;
}, TALL);
lightsOnSet(() => sheet);

it('a rule that takes the place of another is told, and the other can be had back', async () => {
  const { page } = sheet;
  await sheet.click('M33');
  await page.locator('#grid [data-u-command="sheet.menu.data-validation"]').first().click();
  await page.getByText('Add a rule', { exact: true }).last().click();
  await expect.poll(() => sheet.notice.innerText()).toContain('A rule stood in these cells');
  expect(await sheet.notice.innerText()).toContain('above 0 and up to 20');
  await sheet.undo('C20');
  await sheet.enter('M33', '-5');
  await sheet.told('Metres from the front of the light');
});
