import { TableManager } from '@univerjs/preset-sheets-table';
import { holdsCell } from '../../../engine/gridRange';
import type { Grid } from './grid';
import { inside, unitId } from './inside';

export type GridTable = ReturnType<TableManager['getTablesBySubunitId']>[number];

export const tablesOn = (grid: Grid, sheetId: string): readonly GridTable[] =>
  inside(grid).get(TableManager).getTablesBySubunitId(unitId(grid), sheetId);

/** What stands above the columns of a table, as a person has typed it; where nothing does, the name that the table has for it. */
export function headingsOf(grid: Grid, table: GridTable): readonly string[] {
  const { startRow, startColumn } = table.getRange();
  const sheet = grid.api.getActiveWorkbook()?.getSheetBySheetId(table.getSubunitId())?.getSheet();
  return table.toJSON().columns.map(({ displayName }, i) => {
    const typed = String(sheet?.getCellRaw(startRow, startColumn + i)?.v ?? '');
    return typed.trim() === '' ? displayName : typed;
  });
}

/** The table that the chosen cell is in. */
export function tableOfCell(grid: Grid): GridTable | undefined {
  const workbook = grid.api.getActiveWorkbook();
  const cell = workbook?.getActiveCell();
  if (!workbook || !cell) return undefined;
  const [row, column] = [cell.getRow(), cell.getColumn()];
  return tablesOn(grid, workbook.getActiveSheet().getSheetId()).find((table) =>
    holdsCell(table.getRange(), row, column),
  );
}
