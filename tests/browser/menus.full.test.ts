import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

const selected = () => sheet.page.evaluate(() => window.sweeptable.selected());
const isAtCells = () =>
  expect
    .poll(() => sheet.page.evaluate(() => document.activeElement?.getAttribute('data-u-comp')))
    .toBe('editor');
const menuAt = async (a1: string): Promise<void> => {
  await sheet.click(a1);
  const { x, y } = await sheet.page.evaluate((at) => window.sweeptable.place(at), a1);
  await sheet.page.mouse.click(x, y, { button: 'right' });
};

it('a line of a menu that is clicked on shows what it has opened, and Escape leads back to the cells', async () => {
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
  await isAtCells();
  await sheet.page.keyboard.type('7');
  await sheet.page.keyboard.press('Enter');
  await sheet.shows('H6', 7);
});

it('the menu of what is chosen is opened, gone through and chosen from by keys', async () => {
  const { keyboard } = sheet.page;
  const at = (words: string) =>
    expect.poll(() => sheet.page.evaluate(() => document.activeElement?.textContent)).toBe(words);
  await sheet.enterDown('H6', ['7', '8', '9']);
  await sheet.click('H7');
  await keyboard.press('Shift+F10');
  await at('Copy');
  for (let n = 0; n < 3; n++) await keyboard.press('ArrowDown');
  await at('Copy as');
  for (const words of ['Paste only', 'Clear']) {
    await keyboard.press('ArrowDown');
    await at(words);
  }
  await keyboard.press('ArrowRight');
  await at('What they hold');
  await keyboard.press('ArrowLeft');
  await at('Clear');
  // nothing happens to the cells meanwhile
  await keyboard.press('Delete');
  await sheet.shows('H7', 8);
  await keyboard.press('Escape');
  await isAtCells();
  expect(await selected()).toBe('H7');

  await keyboard.press('ContextMenu');
  await at('Copy');
  await keyboard.press('ArrowUp');
  await at('Delete');
  await keyboard.press('Enter');
  for (const words of ['Delete these columns', 'Delete these rows']) {
    await at(words);
    await keyboard.press('ArrowDown');
  }
  await keyboard.press('ArrowUp');
  await keyboard.press('Enter');
  await sheet.shows('H7', 9);
  await isAtCells();
});

it('what a line has opened by keys goes with its menu', async () => {
  const { keyboard } = sheet.page;
  const opened = sheet.page.locator('[data-u-context-menu-submenu]').filter({ visible: true });
  const into = async (line: string): Promise<void> => {
    await sheet.click('H7');
    await keyboard.press('Shift+F10');
    const led = () => sheet.page.evaluate(() => document.activeElement?.textContent);
    await expect.poll(led).toBe('Copy');
    for (let n = 0; n < 10 && (await led()) !== line; n++) await keyboard.press('ArrowDown');
    await keyboard.press('ArrowRight');
    await expect.poll(() => opened.count()).toBe(1);
    await expect.poll(led).not.toBe(line);
  };
  await into('Insert');
  await keyboard.press('Escape');
  await expect.poll(() => opened.count()).toBe(0);
  await into('Insert');
  // within the number of columns
  await keyboard.press('ArrowDown');
  await keyboard.press('Tab');
  await keyboard.press('Escape');
  await expect.poll(() => opened.count()).toBe(0);
  await into('Clear');
  await keyboard.press('Enter');
  await expect.poll(() => opened.count()).toBe(0);
});
