import {
  IRenderManagerService,
  SHEET_VIEWPORT_KEY,
  SheetSkeletonManagerService,
  Vector2,
} from '@univerjs/preset-sheets-core';
import { areaOfGridRange } from '../../../engine/gridRange';
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

/** The heading of a row or of a column, and the first cell there. */
export interface Heading {
  readonly of: 'row' | 'column';
  readonly row: number;
  readonly column: number;
}

/** The sheet in view as it is drawn now: scrolled, zoomed, and with rows and columns that stay. */
export interface SheetView {
  readonly sheetId: string;
  readonly zoom: number;
  readonly canvas: HTMLCanvasElement;
  readonly rows: number;
  readonly columns: number;
  /** How far the rows and columns that do not stay are scrolled, in pixels of the sheet. */
  readonly scroll: { readonly across: number; readonly down: number };
  /** Where a row or a column begins, in pixels of the sheet. */
  rowStart(row: number): number;
  columnStart(column: number): number;
  /** The row and the column at a place of the sheet, and how far into them it lies. */
  lineAt(
    across: number,
    down: number,
  ): {
    readonly row: number;
    readonly column: number;
    readonly rowOffset: number;
    readonly columnOffset: number;
  };
  /** The cell at a place of the canvas, with all that is merged with it; undefined on the headings. */
  cellAt(x: number, y: number): Area | undefined;
  /** The row or the column whose heading is at a place of the canvas, by its first cell; undefined elsewhere. */
  headingAt(x: number, y: number): Heading | undefined;
  /** The pieces in which an area is seen: several where it reaches from rows or columns that stay into those that are scrolled. */
  pieces(area: Area): readonly Seen[];
  /** Where the first of them is; nothing where it is out of sight. */
  seen(area: Area): Seen | undefined;
  /** Where an area would begin among what is scrolled, in sight or not. */
  scrolledTo(area: Area): { readonly x: number; readonly y: number };
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

  const under = (x: number, y: number) => {
    const at = render.scene.getCoordRelativeToViewport(Vector2.FromArray([x, y]));
    return skeleton.getCellByOffset(at.x, at.y, zoom, zoom, render.scene.getScrollXYInfoByViewport(at));
  };
  const isBeside = (x: number): boolean => x < rowHeaderWidth * zoom;
  const isAbove = (y: number): boolean => y < columnHeaderHeight * zoom;

  return {
    sheetId: sheet.getSheetId(),
    zoom,
    canvas: render.engine.getCanvasElement(),
    rows: sheet.getMaxRows(),
    columns: sheet.getMaxColumns(),
    scroll: { across: main.viewportScrollX, down: main.viewportScrollY },
    rowStart,
    columnStart,
    lineAt: (right, below) => skeleton.getOffsetRelativeToRowCol(right, below),
    cellAt(x, y) {
      const cell = isBeside(x) || isAbove(y) ? undefined : under(x, y);
      return cell ? areaOfGridRange(cell) : undefined;
    },
    headingAt(x, y) {
      const cell = isBeside(x) === isAbove(y) ? undefined : under(x, y);
      if (!cell) return undefined;
      return isBeside(x)
        ? { of: 'row', row: cell.actualRow, column: 0 }
        : { of: 'column', row: 0, column: cell.actualColumn };
    },
    pieces,
    seen: (area) => pieces(area)[0],
    scrolledTo: ({ row, column }) => ({
      x: (columnStart(column) + rowHeaderWidth - main.viewportScrollX) * zoom,
      y: (rowStart(row) + columnHeaderHeight - main.viewportScrollY) * zoom,
    }),
  };
}
