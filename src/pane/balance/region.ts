import type { Area } from '../../formula/area';
import type { Place } from '../../formula/address';

/** The area that a line of cells beside it would join, on one side. */
const SIDES = [
  { rows: -1, columns: 0 },
  { rows: 1, columns: 0 },
  { rows: 0, columns: -1 },
  { rows: 0, columns: 1 },
] as const;

/** The line of cells just outside an area on one side, with those at its corners. */
function beside({ row, column, rows, columns }: Area, side: (typeof SIDES)[number]): Area {
  if (side.rows !== 0)
    return { row: side.rows < 0 ? row - 1 : row + rows, column: column - 1, rows: 1, columns: columns + 2 };
  return {
    row: row - 1,
    column: side.columns < 0 ? column - 1 : column + columns,
    rows: rows + 2,
    columns: 1,
  };
}

const grown = (area: Area, side: (typeof SIDES)[number]): Area => ({
  row: area.row - (side.rows < 0 ? 1 : 0),
  column: area.column - (side.columns < 0 ? 1 : 0),
  rows: area.rows + Math.abs(side.rows),
  columns: area.columns + Math.abs(side.columns),
});

/**
 * The filled cells around a cell, as far as no row and no column between them is empty; undefined where the cell and all its
 * neighbours are.
 *
 * @param isFilled - whether something stands in a cell; of one that is not on the sheet, nothing does.
 */
export function regionAround(
  place: Place,
  isFilled: (row: number, column: number) => boolean,
): Area | undefined {
  const hasAny = ({ row, column, rows, columns }: Area): boolean => {
    for (let r = row; r < row + rows; r++)
      for (let c = column; c < column + columns; c++) if (isFilled(r, c)) return true;
    return false;
  };
  let area: Area = { row: place.row, column: place.column, rows: 1, columns: 1 };
  for (
    let side = SIDES.find((one) => hasAny(beside(area, one)));
    side;
    side = SIDES.find((one) => hasAny(beside(area, one)))
  )
    // prettier-ignore
    area = grown(area, side);
  if (!hasAny(area)) return undefined;
  return trimmed(area, hasAny);
}

/** Without empty lines at its edges: the cell that it began from may have been one. */
function trimmed(area: Area, hasAny: (area: Area) => boolean): Area {
  let { row, column, rows, columns } = area;
  while (rows > 1 && !hasAny({ row, column, rows: 1, columns })) [row, rows] = [row + 1, rows - 1];
  while (rows > 1 && !hasAny({ row: row + rows - 1, column, rows: 1, columns })) rows--;
  while (columns > 1 && !hasAny({ row, column, rows, columns: 1 }))
    [column, columns] = [column + 1, columns - 1];
  while (columns > 1 && !hasAny({ row, column: column + columns - 1, rows, columns: 1 })) columns--;
  return { row, column, rows, columns };
}

/** The table that a cell is in, or else the one right above it: below its last row is where typing ends. */
export function tableAt(tables: readonly Area[], { row, column }: Place): Area | undefined {
  const isAcross = (table: Area): boolean => column >= table.column && column < table.column + table.columns;
  const isIn = (table: Area): boolean => row >= table.row && row < table.row + table.rows;
  const isBelow = (table: Area): boolean => row === table.row + table.rows;
  return (
    tables.find((one) => isAcross(one) && isIn(one)) ?? tables.find((one) => isAcross(one) && isBelow(one))
  );
}
