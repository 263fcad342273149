import type { Grid } from '../grid/grid';
import { beforeTab } from '../grid/tabKey';
import { type GridTable, tablesOn } from '../grid/tables';
import { addRow } from './addRow';

/** As in other spreadsheets, Tab in the last cell of a table leads into a new row of it. */
export function addRowByTab(grid: Grid, say: (words: string) => void): void {
  beforeTab(() => {
    const table = tableEndingAt(grid);
    const refused = table && addRow(grid, table);
    if (refused !== undefined) say(refused);
    return table !== undefined;
  });
}

/** The table whose last cell is the only one that is selected. */
function tableEndingAt(grid: Grid): GridTable | undefined {
  const workbook = grid.api.getActiveWorkbook();
  const range = workbook?.getActiveRange();
  if (!workbook || !range || range.getWidth() * range.getHeight() > 1) return undefined;
  return tablesOn(grid, workbook.getActiveSheet().getSheetId()).find((table) => {
    const { endRow, endColumn } = table.getRange();
    return range.getRow() === endRow && range.getColumn() === endColumn;
  });
}
