import type { Area } from '../../formula/area';
import { excelRange } from './ranges';

/** Excel on the web gives five megabytes at once, and a formula may be long. */
const CELLS_AT_ONCE = 50_000;

export interface UsedPart {
  readonly sheet: Excel.Worksheet;
  readonly name: string;
  readonly area: Area;
}

/** Parts of an area, one below the other, of no more cells than Excel gives at once. */
export function slices(area: Area): Area[] {
  const rows = Math.max(1, Math.floor(CELLS_AT_ONCE / area.columns));
  return Array.from({ length: Math.ceil(area.rows / rows) }, (_, i) => ({
    ...area,
    row: area.row + i * rows,
    rows: Math.min(rows, area.rows - i * rows),
  }));
}

/** Gathers neighbours as long as they are no more together than Excel takes at once. */
export function batches<T>(all: readonly T[], sizeOf: (one: T) => number, most: number): T[][] {
  const made: T[][] = [];
  let room = 0;
  for (const one of all) {
    const size = sizeOf(one);
    if (size > room) {
      made.push([]);
      room = most;
    }
    made[made.length - 1]?.push(one);
    room -= size;
  }
  return made;
}

export const areaOfRange = (used: Excel.Range): Area => ({
  row: used.rowIndex,
  column: used.columnIndex,
  rows: used.rowCount,
  columns: used.columnCount,
});
export const AREA = 'rowIndex,columnIndex,rowCount,columnCount';

/** Everything in the workbook that is in use. */
async function usedParts(context: Excel.RequestContext): Promise<UsedPart[]> {
  const { worksheets } = context.workbook;
  worksheets.load('items/name');
  await context.sync();
  const used = worksheets.items.map((sheet) => sheet.getUsedRangeOrNullObject(true).load(AREA));
  await context.sync();
  return worksheets.items.flatMap((sheet, i) => {
    const range = used[i];
    if (!range || range.isNullObject) return [];
    return slices(areaOfRange(range)).map((area) => ({ sheet, name: sheet.name, area }));
  });
}

/** Reads the formulas of the whole workbook, part by part, and gives what is found in each. */
export async function findInFormulas<T>(
  context: Excel.RequestContext,
  find: (part: UsedPart, formulas: readonly (readonly unknown[])[]) => readonly T[],
): Promise<T[]> {
  const found: T[] = [];
  const size = ({ area }: UsedPart): number => area.rows * area.columns;
  for (const batch of batches(await usedParts(context), size, CELLS_AT_ONCE)) {
    const ranges = batch.map(({ sheet, area }) => excelRange(sheet, area).load('formulas'));
    await context.sync();
    found.push(...batch.flatMap((part, i) => find(part, ranges[i]?.formulas ?? [])));
  }
  return found;
}

/** Cells that are asked for one by one on the way to Excel. */
const READS_AT_ONCE = 500;

/** Those among cells that are as is meant, by what is loaded of each. */
export async function among<T extends { readonly sheet: string; readonly cell: string }>(
  context: Excel.RequestContext,
  cells: readonly T[],
  properties: string,
  isMeant: (range: Excel.Range, cell: T) => boolean,
): Promise<T[]> {
  const found: T[] = [];
  for (const batch of batches(cells, () => 1, READS_AT_ONCE)) {
    const asked = batch.map((cell) => ({
      cell,
      range: context.workbook.worksheets.getItem(cell.sheet).getRange(cell.cell).load(properties),
    }));
    await context.sync();
    found.push(...asked.filter(({ range, cell }) => isMeant(range, cell)).map(({ cell }) => cell));
  }
  return found;
}
