import type { IWorkbookData } from '@univerjs/core';
import { beforeEach, expect, it } from 'vitest';
import { downloaded } from './downloaded';
import { eachItsWorkbook } from './onePage';
import { forget, isStored, put, records, storedWorkbook } from './stored';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});
beforeEach(async () => {
  await forget(sheet.page);
  await sheet.enter('B6', '22');
  await isStored(sheet.page, 'B6', 22);
  // What follows is stored by hand, and by nobody else.
  await sheet.page.evaluate(() => dispatchEvent(new Event('pagehide')));
});

type Sheet = IWorkbookData['sheets'][string];

/** Puts the stored workbook back with something else in its first sheet, and loads the page anew. */
async function reloadWith(change: (first: Record<keyof Sheet, unknown>) => void): Promise<unknown> {
  const snapshot = (await storedWorkbook(sheet.page)) as IWorkbookData;
  change(snapshot.sheets[snapshot.sheetOrder[0] ?? ''] as Record<keyof Sheet, unknown>);
  const record = { format: 1, saved: Date.now() + 60_000, snapshot };
  await put(sheet.page, 'now', record);
  await sheet.reload();
  return record;
}
const aside = async (): Promise<unknown[]> =>
  Object.entries(await records(sheet.page)).flatMap(([key, record]) =>
    key.startsWith('aside') ? [record] : [],
  );

it('finds the work again where its sheet is stored without measure', async () => {
  await reloadWith((first) => {
    first.rowCount = 1e9;
    first.columnCount = -1;
  });
  await sheet.shows('B6', 22);
  expect(await sheet.sheets()).toEqual(['Pops build']);
  expect(await aside()).toEqual([]);
});

it('puts aside what cannot be opened, says so, and keeps it until it is removed', async () => {
  const record = await reloadWith((first) => {
    first.mergeData = [null];
  });
  await sheet.page.waitForFunction(() => history.state === null && document.documentElement.dataset['pane']);
  await sheet.shows('B20', 5);
  expect(await sheet.notice.innerText()).toMatch(/could not be opened.*put aside/);
  expect(await aside()).toEqual([record]);
  // The page that could not go on said so to those who look for it, and to nobody else.
  expect(sheet.complaints.errors.splice(0).length).toBeGreaterThan(0);

  await sheet.enter('B6', '16');
  await sheet.page.getByRole('button', { name: 'Show what was put aside' }).click();
  await sheet.dialog.getByRole('button', { name: /^Open: .*Pops build/ }).click();
  await expect.poll(() => sheet.notice.innerText()).toMatch(/could not be opened, and this one is as it was/);
  await sheet.shows('B6', 16);
  expect(await aside()).toEqual([record]);

  await sheet.command('Put aside');
  const [download] = await Promise.all([
    sheet.page.waitForEvent('download'),
    sheet.dialog.getByRole('button', { name: /^Save as file/ }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^Sweeptable put aside .*\.json$/);
  expect(JSON.parse(String(await downloaded(download)))).toEqual(record);

  await sheet.command('Put aside');
  await sheet.dialog.getByRole('button', { name: /^Remove/ }).click();
  await sheet.dialog.getByRole('button', { name: 'Remove', exact: true }).click();
  await expect.poll(aside).toEqual([]);
});

it('puts aside what ended the pages before, and has it back when it is opened from there', async () => {
  await sheet.page.evaluate(() => localStorage.setItem('sweeptable opening', '2'));
  await sheet.reload();
  await sheet.shows('B20', 5);
  expect(await sheet.notice.innerText()).toMatch(/could not be opened.*put aside/);
  expect(await aside()).toHaveLength(1);

  await sheet.command('Put aside');
  await sheet.dialog.getByRole('button', { name: /^Open/ }).click();
  await expect.poll(() => sheet.notice.innerText()).toMatch(/that was put aside is open/);
  await sheet.shows('B6', 22);
  await expect.poll(aside).toEqual([]);
  await sheet.reload();
  await sheet.shows('B6', 22);
});
