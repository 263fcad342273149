import type { IWorkbookData } from '@univerjs/core';

/** Counts how the records below have changed: a page that is older than what it finds can tell, and leaves it alone. */
const FORMAT = 1;

/** A workbook as it is stored in the browser. */
export interface Stored {
  readonly format: number;
  /** When, in milliseconds since 1970. */
  readonly saved: number;
  readonly snapshot: IWorkbookData;
}

export const store = (snapshot: IWorkbookData): Stored => ({ format: FORMAT, saved: Date.now(), snapshot });

export type Found =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'workbook'; readonly snapshot: IWorkbookData; readonly saved: number | undefined }
  | { readonly kind: 'unreadable'; readonly why: 'newer' | 'damaged' | 'unopened' };

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function isSnapshot(value: unknown): value is IWorkbookData {
  if (!isRecord(value) || typeof value['id'] !== 'string' || !isRecord(value['sheets'])) return false;
  const { sheets, sheetOrder } = value;
  return (
    Array.isArray(sheetOrder) &&
    sheetOrder.length > 0 &&
    sheetOrder.every(
      (id) => typeof id === 'string' && isRecord(sheets[id]) && isRecord(sheets[id]['cellData']),
    )
  );
}

/** What a record holds. Nothing is trusted: an older page, another tab or a half-written disk may have made it. */
export function found(record: unknown): Found {
  if (record === undefined) return { kind: 'nothing' };
  if (!isRecord(record) || typeof record['format'] !== 'number')
    return { kind: 'unreadable', why: 'damaged' };
  if (record['format'] > FORMAT) return { kind: 'unreadable', why: 'newer' };
  const { snapshot, saved } = record;
  if (!isSnapshot(snapshot)) return { kind: 'unreadable', why: 'damaged' };
  return { kind: 'workbook', snapshot, saved: typeof saved === 'number' ? saved : undefined };
}
