import type { Place } from './address';

export interface Area {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** The area of so many cells that begins at a place. */
export const area = ({ row, column }: Place, rows: number, columns: number): Area => ({
  row,
  column,
  rows,
  columns,
});
