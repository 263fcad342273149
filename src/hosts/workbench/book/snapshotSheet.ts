import { BY_HAND } from '../../../engine/filter/byHand';
import { gridRange } from '../../../engine/gridRange';
import {
  BooleanNumber,
  CellValueType,
  type ICellData,
  type IObjectArrayPrimitiveType,
  type IRowData,
  type IWorksheetData,
} from '@univerjs/core';
import { MOST_ROWS } from '../../../formula/areaText';
import { columnPixels } from '../../../book/widthsAndHeights';
import { PALETTE } from '../../../book/palette';
import type { BookCell, BookSheet } from '../../../book/book';
import { chartsInReach, extentOf } from '../charts/inReach';
import { keep } from './keptWithSheet';
import { LEAST_ROW, tallRow } from './measures';
import { gridStyle } from './styles';
import { TEXT_FORMAT } from '../tables/pastedCell';
import { heightsOfLines, lettersHere, widePixels } from './typeface';

const SPARE_ROWS = 60;
const LEAST_COLUMNS = 26;
/** Beginnings of texts that are read otherwise as they are typed, where 1/60 is kept and anywhere else. */
const IN_TEXTS = /^[=']/;
const ELSEWHERE = /^[=+\-@']/;

/**
 * A text carries its type: without it the grid reads "1/60" as a date. One that could be taken for a formula carries
 * the type that holds even when the cell is opened and left again, and so does one of no letters, which is no empty cell.
 */
export function content({ value, formula, style }: BookCell): ICellData {
  if (formula !== undefined) return { f: formula };
  if (value === null) return {};
  if (value === '') return { v: value, t: CellValueType.FORCE_STRING };
  if (typeof value === 'number') return { v: value, t: CellValueType.NUMBER };
  if (typeof value === 'boolean') return { v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  if (typeof value === 'object') return { v: value.error, t: CellValueType.STRING };
  const couldBeElse = (style?.format === TEXT_FORMAT ? IN_TEXTS : ELSEWHERE).test(value);
  return { v: value, t: couldBeElse ? CellValueType.FORCE_STRING : CellValueType.STRING };
}

const byIndex = <T>(
  record: Readonly<Record<number, number>>,
  make: (size: number, index: number) => T,
): Record<number, T> =>
  Object.fromEntries(Object.entries(record).map(([index, size]) => [index, make(size, Number(index))]));

function rowsOf(
  { heights, filteredRows = [], hiddenRows = [] }: BookSheet,
  tall: (height: number, row: number) => Partial<IRowData>,
): IObjectArrayPrimitiveType<Partial<IRowData>> {
  const rows: Record<number, Partial<IRowData>> = byIndex(heights, (height, row) => ({
    ...tall(height, row),
    ia: BooleanNumber.FALSE,
  }));
  for (const row of filteredRows) rows[row] = { ...rows[row], hd: BooleanNumber.TRUE };
  for (const row of hiddenRows)
    rows[row] = { ...rows[row], hd: BooleanNumber.TRUE, custom: { ...rows[row]?.custom, ...BY_HAND } };
  return rows;
}

/** How large a sheet is that holds so many rows and columns. */
export const usualSize = (
  rows: number,
  columns: number,
): Pick<IWorksheetData, 'rowCount' | 'columnCount'> => ({
  rowCount: Math.min(rows + SPARE_ROWS, MOST_ROWS),
  columnCount: Math.max(LEAST_COLUMNS, columns),
});

/** A sheet as the grid stores it; what the grid keeps beside the sheet is in `decorate.ts`. */
export function snapshotSheet(sheet: BookSheet, id: string): Partial<IWorksheetData> {
  const cellData: Record<number, Record<number, ICellData>> = {};
  let [rows, columns] = [0, 0];
  for (const cell of sheet.cells) {
    rows = Math.max(rows, cell.row + 1);
    columns = Math.max(columns, cell.column + 1);
    (cellData[cell.row] ??= {})[cell.column] = {
      ...content(cell),
      ...(cell.style ? { s: gridStyle(cell.style) } : {}),
    };
  }
  const { freeze } = sheet;
  const charts = chartsInReach(sheet.charts, { rows, columns });
  const [usual, covered] = [usualSize(rows, columns), extentOf(charts)];
  const columnData = byIndex(sheet.widths, (width) => ({ w: widePixels(columnPixels(width)) }));
  const needed = heightsOfLines(sheet.cells, (column) => columnData[column]?.w, sheet.merges);
  return {
    id,
    name: sheet.name,
    hidden: sheet.hidden ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    rowCount: Math.max(usual.rowCount, covered.rows),
    columnCount: Math.max(usual.columnCount, covered.columns),
    defaultRowHeight: LEAST_ROW,
    columnData,
    rowData: rowsOf(sheet, (height, row) => tallRow(height, needed.get(row))),
    mergeData: sheet.merges.map(gridRange),
    freeze: {
      xSplit: freeze.columns,
      ySplit: freeze.rows,
      startRow: freeze.rows || -1,
      startColumn: freeze.columns || -1,
    },
    gridlinesColor: PALETTE.stone,
    ...(sheet.gridlines === false ? { showGridlines: BooleanNumber.FALSE } : {}),
    cellData,
    custom: { ...keep({ ...sheet, charts }), ...lettersHere() },
  };
}
