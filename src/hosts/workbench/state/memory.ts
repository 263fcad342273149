import type { IWorkbookData } from '@univerjs/core';
import { read, write } from './database';
import { type Found, found, store } from './stored';

const NOW = 'now';
const BEFORE = 'before';

/** Where a record that cannot be read is kept, unchanged, until somebody can. */
const aside = (): string => `aside ${new Date().toISOString()}`;

/** The workbook of the last visit. One that cannot be read is put aside and stays in the browser. */
export async function remembered(): Promise<Found> {
  const record = await read(NOW);
  const what = found(record);
  if (what.kind === 'unreadable') await write({ [aside()]: record, [NOW]: undefined });
  return what;
}

/** Puts the workbook of the last visit aside, for one that looked right and could not be opened. */
export async function putAside(): Promise<void> {
  await write({ [aside()]: await read(NOW), [NOW]: undefined });
}

export const remember = (snapshot: IWorkbookData): Promise<void> => write({ [NOW]: store(snapshot) });

/** The workbook that another one has taken the place of, for taking it back. */
export async function rememberedBefore(): Promise<IWorkbookData | undefined> {
  const what = found(await read(BEFORE));
  return what.kind === 'workbook' ? what.snapshot : undefined;
}
export const rememberBefore = (snapshot: IWorkbookData | undefined): Promise<void> =>
  write({ [BEFORE]: snapshot && store(snapshot) });
