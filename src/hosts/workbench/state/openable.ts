import type { IWorkbookData, IWorksheetData } from '@univerjs/core';
import { MOST_COLUMNS, MOST_ROWS } from '../../../formula/areaText';
import { usualSize } from '../book/snapshotSheet';

const isSize = (size: unknown, most: number): size is number =>
  Number.isInteger(size) && (size as number) > 0 && (size as number) <= most;

/** A sheet as large as it can be. One that says something else is as large as what it holds, and some more. */
function sized(sheet: Partial<IWorksheetData>): Partial<IWorksheetData> {
  const { rowCount, columnCount, cellData = {} } = sheet;
  if (isSize(rowCount, MOST_ROWS) && isSize(columnCount, MOST_COLUMNS)) return sheet;
  const rows = Object.keys(cellData).map(Number);
  const columns = Object.values(cellData).flatMap((row) => Object.keys(row ?? {}).map(Number));
  const last = (indexes: readonly number[], most: number): number =>
    indexes.reduce((found, index) => (index < most ? Math.max(found, index) : found), -1);
  const usual = usualSize(last(rows, MOST_ROWS) + 1, last(columns, MOST_COLUMNS) + 1);
  return {
    ...sheet,
    rowCount: isSize(rowCount, MOST_ROWS) ? rowCount : usual.rowCount,
    columnCount: isSize(columnCount, MOST_COLUMNS) ? columnCount : usual.columnCount,
  };
}

/** A workbook without what would keep the grid from opening it, wherever it comes from. */
export const openable = (snapshot: IWorkbookData): IWorkbookData => ({
  ...snapshot,
  sheets: Object.fromEntries(Object.entries(snapshot.sheets).map(([id, sheet]) => [id, sized(sheet)])),
});
