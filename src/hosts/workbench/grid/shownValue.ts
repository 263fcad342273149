import type { CellValue } from '@univerjs/core';
import type { Grid } from './grid';
import { spilledCells } from './spills';

/** The exact value a cell shows. The grid's own read-out rounds, and leaves out spilled answers: those are kept beside the cells. */
export function shownValue(grid: Grid, sheetId: string, row: number, column: number): CellValue | null {
  const sheet = grid.api.getActiveWorkbook()?.getSheetBySheetId(sheetId);
  const own = sheet?.getRange(row, column).getRawValue();
  if (own !== undefined && own !== null) return own;
  return spilledCells(grid, sheetId)[row]?.[column]?.v ?? null;
}
