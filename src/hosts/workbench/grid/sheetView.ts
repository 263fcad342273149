import {
  IRenderManagerService,
  SHEET_VIEWPORT_KEY,
  SheetSkeletonManagerService,
} from '@univerjs/preset-sheets-core';
import type { Area } from '../../../formula/area';
import type { Grid } from './grid';
import { inside, unitId } from './inside';

/** Where an area of cells lies over the grid's canvas, in pixels, and how much of it is out of sight left and above. */
export interface Seen {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly cutLeft: number;
  readonly cutTop: number;
}

/** The sheet in view as it is drawn now: scrolled, zoomed, and with rows and columns that stay. */
export interface SheetView {
  readonly sheetId: string;
  readonly zoom: number;
  readonly canvas: HTMLCanvasElement;
  readonly rows: number;
  readonly columns: number;
  /** Where a row or a column begins, in pixels of the sheet. */
  rowStart(row: number): number;
  columnStart(column: number): number;
  /** Where an area is seen; nothing where it is out of sight. */
  seen(area: Area): Seen | undefined;
}

export const renderOf = (grid: Grid) => inside(grid).get(IRenderManagerService).getRenderById(unitId(grid));

export function sheetView(grid: Grid): SheetView | undefined {
  const sheet = grid.api.getActiveWorkbook()?.getActiveSheet();
  const render = renderOf(grid);
  const main = render?.scene.getViewport(SHEET_VIEWPORT_KEY.VIEW_MAIN);
  const skeleton =
    sheet && render?.with(SheetSkeletonManagerService).getSkeletonParam(sheet.getSheetId())?.skeleton;
  if (!render || !sheet || !main || !skeleton) return undefined;
  const { scaleX: zoom } = render.scene.getAncestorScale();
  const { startRow, startColumn, ySplit, xSplit } = sheet.getSheet().getFreeze();
  const { rowHeaderWidth, columnHeaderHeight } = skeleton;
  const rowStart = (row: number): number => skeleton.rowStartY(row);
  const columnStart = (column: number): number => skeleton.colStartX(column);

  /** Rows that stay begin at the heading; all others are scrolled, and hide behind them. */
  const down = (row: number): { shift: number; edge: number } =>
    ySplit > 0 && row < startRow
      ? { shift: rowStart(startRow - ySplit), edge: columnHeaderHeight * zoom }
      : { shift: main.viewportScrollY, edge: main.top };
  const across = (column: number): { shift: number; edge: number } =>
    xSplit > 0 && column < startColumn
      ? { shift: columnStart(startColumn - xSplit), edge: rowHeaderWidth * zoom }
      : { shift: main.viewportScrollX, edge: main.left };

  return {
    sheetId: sheet.getSheetId(),
    zoom,
    canvas: render.engine.getCanvasElement(),
    rows: sheet.getMaxRows(),
    columns: sheet.getMaxColumns(),
    rowStart,
    columnStart,
    seen(area) {
      const [left, top] = [columnStart(area.column), rowStart(area.row)];
      const width = (columnStart(area.column + area.columns) - left) * zoom;
      const height = (rowStart(area.row + area.rows) - top) * zoom;
      const [beside, below] = [across(area.column), down(area.row)];
      const x = (left + rowHeaderWidth - beside.shift) * zoom;
      const y = (top + columnHeaderHeight - below.shift) * zoom;
      const [cutLeft, cutTop] = [Math.max(0, beside.edge - x), Math.max(0, below.edge - y)];
      const { width: wide, height: tall } = render.engine;
      const isAway = x > wide || y > tall || cutLeft >= width || cutTop >= height;
      return isAway ? undefined : { x, y, width, height, cutLeft, cutTop };
    },
  };
}
