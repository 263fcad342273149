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
    await sheet.shows('B16', 36);
    expect(await sheet.notice.innerText()).toMatch(said);
    const aside = Object.entries(await records(sheet.page)).filter(([key]) => key.startsWith('aside'));
    expect(aside.map(([, value]) => value)).toEqual([record]);
  });
}
