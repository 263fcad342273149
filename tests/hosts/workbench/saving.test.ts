import type { IWorkbookData } from '@univerjs/core';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { Saving } from '../../../src/hosts/workbench/state/saving';

const storage = vi.hoisted(() => ({
  /** What was given to be stored, each with how its storing ends. */
  asked: [] as { readonly snapshot: unknown; readonly end: (reason?: Error) => void }[],
  leftBehind: [] as unknown[],
}));
vi.mock('../../../src/hosts/workbench/state/memory', () => ({
  remember: (snapshot: unknown) =>
    new Promise<number>((resolve, reject) => {
      const time = storage.asked.length + 1;
      storage.asked.push({ snapshot, end: (reason) => (reason ? reject(reason) : resolve(time)) });
    }),
}));
vi.mock('../../../src/hosts/workbench/state/lastMinute', () => ({
  leaveBehind: (snapshot: unknown) => storage.leftBehind.push(snapshot),
}));

let told: string[];
let looked: number;
let saving: Saving;

/** What a workbook with so many changes is stored as. */
const afterChanges = (count: number) => ({ name: `after ${count}` }) as IWorkbookData;
let changes: number;
function change(): void {
  changes += 1;
  saving.changed();
}
async function ends(which: number, reason?: Error): Promise<void> {
  storage.asked[which]?.end(reason);
  await vi.advanceTimersByTimeAsync(0);
}
const stored = () => storage.asked.map(({ snapshot }) => (snapshot as IWorkbookData).name);

beforeEach(() => {
  vi.useFakeTimers();
  storage.asked.length = 0;
  storage.leftBehind.length = 0;
  [told, changes, looked] = [[], 0, 0];
  saving = new Saving(
    () => {
      looked += 1;
      return afterChanges(changes);
    },
    { failed: (reason) => told.push(String(reason)), stored: () => told.push('stored') },
  );
});
afterEach(() => vi.useRealTimers());

it('stores once for all changes of half a second', async () => {
  change();
  await vi.advanceTimersByTimeAsync(300);
  change();
  await vi.advanceTimersByTimeAsync(499);
  expect(stored()).toEqual([]);
  await vi.advanceTimersByTimeAsync(1);
  expect(stored()).toEqual(['after 2']);
  await ends(0);
  expect(saving.known).toBe(1);
  await vi.advanceTimersByTimeAsync(60_000);
  expect(await saving.now()).toBe(true);
  expect(stored()).toHaveLength(1);
});

it('holds work until it is stored, not only until storing begins', async () => {
  expect(saving.holdsWork).toBe(false);
  saving.changed({ byHand: false });
  expect(saving.holdsWork).toBe(false);
  change();
  void saving.now();
  expect(saving.holdsWork).toBe(true);
  await ends(0);
  expect(saving.holdsWork).toBe(false);
  change();
  saving.keptInFile();
  expect(saving.holdsWork).toBe(false);
  change();
  expect(saving.holdsWork).toBe(true);
});

it('leaves the last change behind while an earlier one and it are both on their way', async () => {
  change();
  void saving.now();
  change();
  void saving.now();
  await ends(0);
  saving.close();
  expect(storage.leftBehind).toEqual([afterChanges(2)]);
  await ends(1);
});

it('leaves nothing behind when all is stored', async () => {
  change();
  void saving.now();
  await ends(0);
  saving.close();
  expect(storage.leftBehind).toEqual([]);
});

it('looks at the workbook once when it closes with a change', () => {
  change();
  saving.close();
  expect(storage.leftBehind).toEqual([afterChanges(1)]);
  expect(stored()).toEqual(['after 1']);
  expect(looked).toBe(1);
});

it('tries again what could not be stored, and asks before closing over it', async () => {
  change();
  expect(saving.wouldLoseWork).toBe(false);
  const done = saving.now();
  await ends(0, new Error('full'));
  expect(await done).toBe(false);
  expect(told).toEqual(['Error: full']);
  expect(saving.wouldLoseWork).toBe(true);
  await vi.advanceTimersByTimeAsync(5_000);
  expect(stored()).toEqual(['after 1', 'after 1']);
  expect(saving.wouldLoseWork).toBe(true);
  await ends(1);
  expect(told).toEqual(['Error: full', 'stored']);
  expect(saving.wouldLoseWork).toBe(false);
});

it('waits longer after a failure, however much is changed', async () => {
  change();
  void saving.now();
  await ends(0, new Error('full'));
  change();
  await vi.advanceTimersByTimeAsync(4_999);
  expect(stored()).toHaveLength(1);
  await vi.advanceTimersByTimeAsync(1);
  expect(stored()).toEqual(['after 1', 'after 2']);
});

it('is stored where an earlier storing fails and a later one does not', async () => {
  change();
  void saving.now();
  change();
  const later = saving.now();
  await ends(0, new Error('broken off'));
  await ends(1);
  expect(await later).toBe(true);
  expect(saving.wouldLoseWork).toBe(false);
  expect(told.at(-1)).toBe('stored');
});

it('stores nothing while another tab has the workbook, and all when it has it again', async () => {
  change();
  saving.leave();
  change();
  await vi.advanceTimersByTimeAsync(60_000);
  saving.close();
  expect(await saving.now()).toBe(false);
  expect([stored(), storage.leftBehind]).toEqual([[], []]);
  expect(saving.wouldLoseWork).toBe(true);
  saving.takeOver();
  await vi.advanceTimersByTimeAsync(0);
  expect(stored()).toEqual(['after 2']);
  expect(saving.isMine).toBe(true);
});
