import type { IWorkbookData } from '@univerjs/core';
import { store } from './stored';

const KEY = 'sweeptable last minute';

/**
 * Keeps the workbook of a page that closes. A large record goes to the database by a way that ends with the page; this one
 * is taken at once, but has room for some megabytes only, so that it stands in for the other until that is written.
 */
export function leaveBehind(snapshot: IWorkbookData): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(store(snapshot)));
  } catch {
    // Too large, or forbidden: the database is asked as well.
  }
}

/** The record that a page left when it closed. */
export function leftBehind(): unknown {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? 'null') ?? undefined;
  } catch {
    return undefined; // forbidden, or not ours
  }
}

export function forgetLeft(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    // Where it is forbidden there is nothing.
  }
}
