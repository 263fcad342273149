import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

const menuAt = async (a1: string): Promise<void> => {
  await sheet.click(a1);
  const { x, y } = await sheet.page.evaluate((at) => window.sweeptable.place(at), a1);
  await sheet.page.mouse.click(x, y, { button: 'right' });
};

it('a line of a menu that is clicked on shows what it has opened', async () => {
  await menuAt('H6');
  const line = sheet.seen('Paste only').last();
  await line.hover();
  const opened = sheet.page.locator('[data-u-context-menu-submenu]').getByText('Values', { exact: true });
  await opened.waitFor();
  await line.click();
  // until what goes has gone
  await sheet.page.waitForTimeout(300);
  expect(await opened.isVisible()).toBe(true);
  await sheet.page.keyboard.press('Escape');
  await opened.waitFor({ state: 'detached' });
});
