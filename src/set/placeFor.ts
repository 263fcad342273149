import type { Place } from '../formula/address';
import type { Area } from '../formula/area';
import type { SheetAsRead } from './sheetAsRead';

/** Where the rows and columns of a sheet begin, in any unit. */
export interface Starts {
  readonly row: (row: number) => number;
  readonly column: (column: number) => number;
}
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** No picture reaches over more rows or columns: those that are hidden have no length. */
const MOST = 500;
/** The title of a sheet and the line below it stand in its first rows. */
const HEADED = 2;

/** As many rows or columns from one on as are so long together. */
function lengthFrom(from: number, long: number, start: (index: number) => number): number {
  let to = from + 1;
  while (to - from < MOST && start(to) - start(from) < long) to++;
  return to - from;
}

const overlap = (from: number, count: number, otherFrom: number, otherCount: number): boolean =>
  from < otherFrom + otherCount && otherFrom < from + count;

/** Whether nothing stands in an area, and no table comes down into it when it grows. */
function isFree({ cells, tables }: SheetAsRead, { row, column, rows, columns }: Area): boolean {
  const grows = tables.some(
    (table) => table.row < row + rows && overlap(column, columns, table.column, table.columns),
  );
  if (grows) return false;
  return cells
    .slice(row, row + rows)
    .every((line) => line.slice(column, column + columns).every((value) => (value ?? '') === ''));
}

/**
 * Where a picture of a size goes: from a cell on where nothing stands under it, or else to the free place that is nearest to the
 * head of the sheet.
 */
export function placeFor(sheet: SheetAsRead, from: Place, { width, height }: Size, starts: Starts): Area {
  const area = ({ row, column }: Place): Area => ({
    row,
    column,
    rows: lengthFrom(row, height, starts.row),
    columns: lengthFrom(column, width, starts.column),
  });
  const wanted = area(from);
  if (isFree(sheet, wanted)) return wanted;
  const far = ({ row, column }: Area): number => starts.row(row) + starts.column(column);
  const columns = sheet.cells.reduce((most, line) => Math.max(most, line.length), 0);
  let found: Area | undefined;
  for (let row = HEADED; row <= Math.max(HEADED, sheet.cells.length); row++)
    for (let column = 0; column <= columns; column++) {
      const place = area({ row, column });
      if (found && far(place) >= far(found)) break;
      if (isFree(sheet, place)) found = place;
    }
  return found ?? wanted;
}
