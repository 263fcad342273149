import { describe, expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import { axeFaults, LOOKS, openAll } from './paneChecks';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

it.each(['light', 'dark'] as const)('what is ours has no fault in the %s', async (look) => {
  const { page } = sheet;
  await page.emulateMedia(LOOKS[look]);
  await sheet.command('Start over');
  expect(await axeFaults(page, 'dialog')).toEqual([]);
  await sheet.dialog.getByRole('button', { name: 'Start over' }).click();
  await expect.poll(() => sheet.notice.innerText()).toBe('This is a new workbook.');
  // Answers of ours, with their steps to explain.
  await sheet.click('B20');
  for (const tab of ['Sheets', 'Functions', 'Explain']) {
    await sheet.pane.getByRole('tab', { name: tab }).click();
    await openAll(page);
    for (const part of ['.bar', '#notice', '#pane', '.charts'])
      expect(await axeFaults(page, part), part).toEqual([]);
  }
});

describe('the keyboard is the grid’s', () => {
  const type = async (text: string): Promise<void> => {
    await sheet.page.keyboard.type(text);
    await sheet.page.keyboard.press('Enter');
  };

  it('at once after starting over, and after taking that back', async () => {
    await sheet.enter('B6', '22');
    await sheet.command('Start over');
    await sheet.dialog.getByRole('button', { name: 'Start over' }).click();
    await expect.poll(() => sheet.notice.innerText()).toBe('This is a new workbook.');
    await type('11');
    await sheet.shows('B5', 11);
    await sheet.page.getByRole('button', { name: 'Take back' }).click();
    await sheet.shows('B6', 22);
    const at = await sheet.page.evaluate(() => window.sweeptable.selected());
    await type('32');
    await sheet.shows(at, 32);
    expect(await sheet.dialog.count()).toBe(0);
  });

  it('after a dialog behind which the page was drawn in other colours', async () => {
    await sheet.command('Start over');
    await sheet.page.emulateMedia(LOOKS.forced);
    await sheet.page.evaluate(
      () => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))),
    );
    await sheet.page.keyboard.press('Escape');
    await expect.poll(() => sheet.dialog.count()).toBe(0);
    await sheet.enter('H5', '22');
    await sheet.shows('H5', 22);
  });
});
