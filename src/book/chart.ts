import { type Area, area } from '../formula/area';

/** Cells that a chart draws: a column of a table, whose rows may come and go, or plain cells. */
export type ChartCells = { readonly table: string; readonly column: string } | { readonly cells: Area };

export interface BookChart {
  readonly type: 'line' | 'column';
  readonly title: string;
  readonly xTitle: string;
  readonly yTitle: string;
  readonly x: Area;
  readonly series: readonly { readonly name: string; readonly values: Area }[];
  readonly place: Area;
}

/** What a chart has to know of a table. */
export interface TableShape {
  readonly name: string;
  /** Heading row and all rows below it. */
  readonly area: Area;
  readonly columns: readonly { readonly name: string }[];
}

/** Where the cells lie now; undefined where there is no such column. */
export function chartArea(from: ChartCells, tables: readonly TableShape[]): Area | undefined {
  if ('cells' in from) return from.cells;
  const table = tables.find(({ name }) => name === from.table);
  const index = table?.columns.findIndex(({ name }) => name === from.column) ?? -1;
  if (!table || index < 0) return undefined;
  const { row, column, rows } = table.area;
  return area({ row: row + 1, column: column + index }, rows - 1, 1);
}

/** Cells of a chart as a column, where they are all the rows of one; plain cells where they are not. */
export function byColumn(cells: Area, tables: readonly TableShape[]): ChartCells {
  for (const { name, area: all, columns } of tables) {
    const heading = columns[cells.column - all.column];
    if (heading && cells.columns === 1 && cells.row === all.row + 1 && cells.rows === all.rows - 1)
      return { table: name, column: heading.name };
  }
  return { cells };
}
