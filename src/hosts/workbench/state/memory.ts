import type { IWorkbookData } from '@univerjs/core';
import { read, readAll, write } from './database';
import { forgetLeft, leftBehind } from './lastMinute';
import { type Found, found, store } from './stored';

const NOW = 'now';
const BEFORE = 'before';

const ASIDE = 'aside ';

/** Where a record that cannot be read is kept, unchanged, until somebody can. */
const aside = (): string => `${ASIDE}${new Date().toISOString()}`;

/** The later of what was stored and what was left when the page closed. */
async function latest(): Promise<unknown> {
  const [stored, left] = [await read(NOW), leftBehind()];
  const [known, late] = [found(stored), found(left)];
  if (late.kind !== 'workbook' || known.kind === 'unreadable') return stored;
  return known.kind === 'workbook' && (known.saved ?? 0) >= (late.saved ?? 0) ? stored : left;
}

/** The workbook of the last visit. One that cannot be read is put aside and stays in the browser. */
export async function remembered(): Promise<Found> {
  const record = await latest();
  const what = found(record);
  if (what.kind === 'unreadable') await write({ [aside()]: record, [NOW]: undefined });
  return what;
}

/** Puts the workbook of the last visit aside, for one that looked right and could not be opened. */
export async function putAside(): Promise<void> {
  await write({ [aside()]: await latest(), [NOW]: undefined });
  forgetLeft();
}

/** A record that was put aside: nothing takes it away but its owner. */
export interface Aside {
  readonly key: string;
  /** When it was put aside. */
  readonly when: Date;
  readonly record: unknown;
  /** What it holds for the page as it is now. */
  readonly found: Found;
}

/** All that was put aside, the latest first. */
export async function allAside(): Promise<readonly Aside[]> {
  const records = await readAll(ASIDE);
  return [...records]
    .map(([key, record]) => ({ key, when: new Date(key.slice(ASIDE.length)), record, found: found(record) }))
    .reverse();
}
export const forgetAside = (key: string): Promise<void> => write({ [key]: undefined });

/** Stores the open workbook, and gives when. */
export async function remember(snapshot: IWorkbookData): Promise<number> {
  const record = store(snapshot);
  await write({ [NOW]: record });
  forgetLeft();
  return record.saved;
}

/** The workbook that another one has taken the place of, for taking it back. */
export async function rememberedBefore(): Promise<IWorkbookData | undefined> {
  const what = found(await read(BEFORE));
  return what.kind === 'workbook' ? what.snapshot : undefined;
}
export const rememberBefore = (snapshot: IWorkbookData | undefined): Promise<void> =>
  write({ [BEFORE]: snapshot && store(snapshot) });
