import { aroundLights } from './readAround';
import { columnsOf, headingFaults, lightIn } from './readLight';
import type { SetUp } from './setUp';
import { labelledCells, type SheetAsRead } from './sheetAsRead';
import type { Tell } from './told';

/** A set as a sheet has it, and what of it could not be read, in sentences. */
export interface ReadSet {
  readonly setUp: SetUp;
  readonly unread: readonly string[];
}

/** Whether a sheet has a table with places of lights. */
export const hasPlaces = (sheet: SheetAsRead): boolean =>
  sheet.tables.some((table) => columnsOf(sheet, table) !== undefined);

/** The set that a sheet has written down; undefined where it has no table with places. */
export function readSet(sheet: SheetAsRead): ReadSet | undefined {
  const unread: string[] = sheet.unread === undefined ? [] : [sheet.unread];
  const tell: Tell = (sentence) => void unread.push(sentence);
  for (const table of sheet.tables) {
    const columns = columnsOf(sheet, table);
    if (!columns) continue;
    unread.push(...headingFaults(sheet, table));
    const lights = Array.from({ length: table.rows - 1 }, (_, i) => table.row + 1 + i).flatMap((row) =>
      lightIn(sheet, table, row, columns, tell),
    );
    return { setUp: { lights, ...aroundLights(labelledCells(sheet), tell) }, unread };
  }
  return undefined;
}
