import type { Grid } from './grid';

/** What the cells of a sheet show, in the words and figures that a person reads. */
export function shownTexts(grid: Grid, sheetId: string): (row: number, column: number) => string {
  const sheet = grid.api.getActiveWorkbook()?.getSheetBySheetId(sheetId);
  return (row, column) => sheet?.getRange(row, column).getDisplayValue() ?? '';
}
