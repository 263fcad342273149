import { expect } from 'vitest';
import type { Workbench } from './workbench';

/** Of Freeze check: the head's power lies above what still freezes where its column C says so. */
export const POWERS = ['C54', 'C55', 'C56', 'C57'];
export const oneDown = (a1: string) => a1.replace(/\d+/, (row) => String(Number(row) + 1));

/** The colours of cells. */
export const fills = (sheet: Workbench, cells: readonly string[]) =>
  Promise.all(
    cells.map(async (a1) => (await sheet.page.evaluate((at) => window.sweeptable.look(at), a1)).fill),
  );

/** Inserts Freeze check, and gives the colours of its powers once some are warned of. */
export async function warnedPowers(sheet: Workbench): Promise<(string | undefined)[]> {
  await sheet.insert('Freeze check');
  await expect.poll(async () => new Set(await fills(sheet, POWERS)).size).toBe(2);
  return fills(sheet, POWERS);
}

/** A row that comes in above takes the warnings along with their heads, and undo brings them back. */
export async function checkWarnings(
  sheet: Workbench,
  before: readonly (string | undefined)[],
  row: number,
): Promise<void> {
  await sheet.rowMenu(row, 'rows above');
  await expect.poll(() => fills(sheet, POWERS.map(oneDown))).toEqual(before);
  // What came in holds no head: nothing there is worth a warning.
  const [warned] = before;
  expect((await fills(sheet, [`C${row}`]))[0]).not.toBe(warned);
  await sheet.undo('A3');
  await expect.poll(() => fills(sheet, POWERS)).toEqual(before);
}
