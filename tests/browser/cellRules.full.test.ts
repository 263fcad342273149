import { expect, it } from 'vitest';
import { lightsOnSet, TALL } from './lightsOnSet';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
allInOneWorkbook((fresh) => {
  sheet = fresh;
}, TALL);
lightsOnSet(() => sheet);

const list = () => sheet.page.getByText('Choose one', { exact: true });

async function openList(a1: string): Promise<void> {
  await sheet.click(a1);
  const [{ x, y }, { width }] = await sheet.page.evaluate(
    (at) => [window.sweeptable.place(at), window.sweeptable.room(at)] as const,
    a1,
  );
  await sheet.page.mouse.click(x + width / 2 - 8, y);
  await list().waitFor();
}

it('the list of a cell goes with Escape, and with the cell', async () => {
  const before = await sheet.values('B33', 'B34');
  await openList('B33');
  await sheet.page.keyboard.press('Escape');
  await list().waitFor({ state: 'detached' });
  // to a cell with a list of its own
  await openList('B33');
  await sheet.page.keyboard.press('ArrowDown');
  await list().waitFor({ state: 'detached' });
  await expect.poll(() => sheet.page.evaluate(() => window.sweeptable.selected())).toBe('B34');
  await openList('B33');
  await sheet.page.getByText('rim', { exact: true }).last().click();
  await sheet.shows('B33', 'rim');
  await sheet.undo('B33');
  await expect.poll(() => sheet.values('B33', 'B34')).toEqual(before);
});

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
