import { expect, it } from 'vitest';
import { forget, isStored, put, records } from './stored';
import type { Workbench } from './workbench';

/** A record that cannot be read: what it is called, the record, and what is said of it. */
type Unreadable = readonly [what: string, record: unknown, said: RegExp];

export const NEWER: Unreadable = ['newer', { format: 99, saved: 0, book: {} }, /newer version/];
export const DAMAGED: Unreadable = [
  'damaged',
  { format: 1, saved: 0, snapshot: { id: 'x', sheetOrder: ['a'], sheets: {} } },
  /could not be read/,
];
export const TORN: Unreadable = ['no record at all', 'torn', /could not be read/];

/** What becomes of such a record of the last visit. */
export function checkPutAside(all: readonly Unreadable[], of: () => Workbench): void {
  it.each(all)('puts aside what is %s, unchanged, and says so', async (_, record, said) => {
    const sheet = of();
    await forget(sheet.page);
    await sheet.enter('B6', '22');
    await isStored(sheet.page, 'B6', 22);
    await sheet.page.evaluate(() => dispatchEvent(new Event('pagehide')));
    await put(sheet.page, 'now', record);
    await sheet.reload();
    await sheet.shows('B20', 5);
    expect(await sheet.notice.innerText()).toMatch(said);
    const aside = Object.entries(await records(sheet.page)).filter(([key]) => key.startsWith('aside'));
    expect(aside.map(([, value]) => value)).toEqual([record]);
  });
}

/** Starts over when asked twice, and takes it back after the page was loaded anew. */
export async function startOverAndTakeBack(sheet: Workbench): Promise<void> {
  await sheet.enter('B6', '22');
  await sheet.insert('Lights on set');
  await sheet.command('Start over');
  await sheet.dialog.getByRole('button', { name: 'Cancel' }).click();
  expect(await sheet.sheets()).toHaveLength(2);

  await sheet.command('Start over');
  await sheet.dialog.getByRole('button', { name: 'Start over' }).click();
  await expect.poll(() => sheet.sheets()).toEqual(['Pops build']);
  await sheet.shows('B20', 5);
  await sheet.insert('Pops build');
  await sheet.shows('B20', 5);

  await sheet.reload();
  await sheet.page.getByRole('button', { name: 'Take back' }).click();
  await expect.poll(() => sheet.sheets()).toEqual(['Pops build', 'Lights on set']);
  await sheet.sheet('Pops build');
  await sheet.shows('B6', 22);
}
