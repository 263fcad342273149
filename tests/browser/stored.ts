import type { IWorkbookData } from '@univerjs/core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

type Records = Readonly<Record<string, unknown>>;

interface Change {
  readonly added?: Records;
  readonly isCleared?: boolean;
}

/** Changes what this browser has stored, and gives all of it afterwards. */
const change = (page: Page, wanted: Change): Promise<Records> =>
  page.evaluate(
    ({ added, isCleared }) =>
      new Promise<Record<string, unknown>>((resolve, reject) => {
        const opening = indexedDB.open('sweeptable', 1);
        opening.addEventListener('error', () => reject(opening.error as Error));
        opening.addEventListener('success', () => {
          const transaction = opening.result.transaction('workbooks', 'readwrite');
          const store = transaction.objectStore('workbooks');
          const all: Record<string, unknown> = {};
          if (isCleared) store.clear();
          for (const [key, record] of Object.entries(added ?? {})) store.put(record, key);
          store.openCursor().addEventListener('success', (event) => {
            const cursor = (event.target as IDBRequest<IDBCursorWithValue | null>).result;
            if (!cursor) return;
            all[String(cursor.key)] = cursor.value;
            cursor.continue();
          });
          transaction.addEventListener('complete', () => {
            opening.result.close();
            resolve(all);
          });
        });
      }),
    wanted,
  );

/** The records of this browser's storage. */
export const records = (page: Page): Promise<Records> => change(page, {});

export async function put(page: Page, key: string, record: unknown): Promise<void> {
  await change(page, { added: { [key]: record } });
}

/** Takes all records away. */
export async function forget(page: Page): Promise<void> {
  await change(page, { isCleared: true });
}

/** The stored workbook, or what is missing of it. */
export async function storedWorkbook(page: Page): Promise<Partial<IWorkbookData>> {
  const { now } = (await records(page)) as { readonly now?: { readonly snapshot?: IWorkbookData } };
  return now?.snapshot ?? {};
}

/** Waits until a cell of the stored workbook, on any sheet, holds this. */
export async function isStored(page: Page, a1: string, value: number | string): Promise<void> {
  const row = Number(a1.slice(1)) - 1;
  const column = a1.charCodeAt(0) - 'A'.charCodeAt(0);
  await expect
    .poll(async () => {
      const sheets = Object.values((await storedWorkbook(page)).sheets ?? {});
      return sheets.map(({ cellData }) => cellData?.[row]?.[column]?.v);
    })
    .toContain(value);
}
