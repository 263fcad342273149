import { expect, it } from 'vitest';
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
