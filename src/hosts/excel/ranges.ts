import { address } from '../../formula/address';
import type { Area } from '../../formula/area';

export const excelRange = (sheet: Excel.Worksheet, { row, column, rows, columns }: Area): Excel.Range =>
  sheet.getRangeByIndexes(row, column, rows, columns);

export const topLeft = ({ row, column }: Area): string => address({ row, column });
export const bottomRight = ({ row, column, rows, columns }: Area): string =>
  address({ row: row + rows - 1, column: column + columns - 1 });

/** Neighbours that are alike, as one area: every range is worth several requests to Excel. */
export interface Patch<T> {
  readonly first: T;
  readonly area: Area;
}

type Single = Pick<Area, 'row' | 'column'>;

/** Joins cells that are alike: along their rows first, then rows of equal width downwards. */
export function patches<T extends Single>(cells: readonly T[], kindOf: (cell: T) => string): Patch<T>[] {
  const done: Patch<T>[] = [];
  for (const strip of strips(cells, kindOf)) {
    const above = done.findIndex(
      ({ first, area }) =>
        area.row + area.rows === strip.area.row &&
        area.column === strip.area.column &&
        area.columns === strip.area.columns &&
        kindOf(first) === kindOf(strip.first),
    );
    const joined = done[above];
    if (joined) done[above] = { ...joined, area: { ...joined.area, rows: joined.area.rows + 1 } };
    else done.push(strip);
  }
  return done;
}

function strips<T extends Single>(cells: readonly T[], kindOf: (cell: T) => string): Patch<T>[] {
  const inOrder = [...cells].sort((a, b) => a.row - b.row || a.column - b.column);
  const found: Patch<T>[] = [];
  for (const cell of inOrder) {
    const last = found[found.length - 1];
    const continues =
      last &&
      last.area.row === cell.row &&
      last.area.column + last.area.columns === cell.column &&
      kindOf(last.first) === kindOf(cell);
    if (continues)
      found[found.length - 1] = { ...last, area: { ...last.area, columns: last.area.columns + 1 } };
    else found.push({ first: cell, area: { row: cell.row, column: cell.column, rows: 1, columns: 1 } });
  }
  return found;
}
