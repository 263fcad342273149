import type { IRange } from '@univerjs/core';
import type { Area } from '../formula/area';

/** An area as the grid and its engine have it. */
export const gridRange = ({ row, column, rows, columns }: Area): IRange => ({
  startRow: row,
  endRow: row + rows - 1,
  startColumn: column,
  endColumn: column + columns - 1,
});

export const areaOfGridRange = ({ startRow, endRow, startColumn, endColumn }: IRange): Area => ({
  row: startRow,
  column: startColumn,
  rows: endRow - startRow + 1,
  columns: endColumn - startColumn + 1,
});

export const holdsCell = (
  { startRow, endRow, startColumn, endColumn }: IRange,
  row: number,
  column: number,
): boolean => startRow <= row && row <= endRow && startColumn <= column && column <= endColumn;
