import {
  IRenderManagerService,
  SHEET_VIEWPORT_KEY,
  SheetSkeletonManagerService,
} from '@univerjs/preset-sheets-core';
import type { Area } from '../../../formula/area';
import type { Grid } from './grid';
import { inside, unitId } from './inside';
import { type Axis, partsOf } from './panes';

/** Where an area of cells lies over the grid's canvas, in pixels, and how much of it is out of sight at each side. */
export interface Seen {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly cutLeft: number;
  readonly cutTop: number;
  readonly cutRight: number;
  readonly cutBottom: number;
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
  /** The pieces in which an area is seen: several where it reaches from rows or columns that stay into those that are scrolled. */
  pieces(area: Area): readonly Seen[];
  /** Where the first of them is; nothing where it is out of sight. */
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

  const { width: wide, height: tall } = render.engine;
  const frozen = (start: (at: number) => number, first: number, count: number): Axis['frozen'] =>
    count > 0 ? { from: start(first - count), to: start(first) } : undefined;
  const down: Axis = {
    heading: columnHeaderHeight,
    zoom,
    frozen: frozen(rowStart, startRow, ySplit),
    scroll: main.viewportScrollY,
    edge: main.top,
    end: tall,
  };
  const across: Axis = {
    heading: rowHeaderWidth,
    zoom,
    frozen: frozen(columnStart, startColumn, xSplit),
    scroll: main.viewportScrollX,
    edge: main.left,
    end: wide,
  };
  const pieces = (area: Area): readonly Seen[] => {
    const [left, top] = [columnStart(area.column), rowStart(area.row)];
    const [right, bottom] = [columnStart(area.column + area.columns), rowStart(area.row + area.rows)];
    const size = { width: (right - left) * zoom, height: (bottom - top) * zoom };
    const beside = partsOf(left, right, across);
    return partsOf(top, bottom, down).flatMap(({ at: y, cutBefore: cutTop, cutAfter: cutBottom }) =>
      beside.map(({ at: x, cutBefore: cutLeft, cutAfter: cutRight }) => ({
        ...size,
        x,
        y,
        cutLeft,
        cutTop,
        cutRight,
        cutBottom,
      })),
    );
  };

  return {
    sheetId: sheet.getSheetId(),
    zoom,
    canvas: render.engine.getCanvasElement(),
    rows: sheet.getMaxRows(),
    columns: sheet.getMaxColumns(),
    rowStart,
    columnStart,
    pieces,
    seen: (area) => pieces(area)[0],
  };
}
