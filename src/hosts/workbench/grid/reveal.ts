import { ScrollToRangeOperation } from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';
import { commands } from './inside';
import { scrollBy } from './scroll';
import { sheetView } from './sheetView';

/** So much of a cell is in sight beside its label, where a page has no room for more of both, in pixels. */
const PART = 48;

/** The column of the words that a row begins with, left of a cell. */
function labelColumn({ api }: Grid, row: number, column: number): number | undefined {
  const sheet = api.getActiveWorkbook()?.getActiveSheet().getSheet();
  const isText = (at: number): boolean => {
    const held = sheet?.getCellRaw(row, at)?.v;
    return typeof held === 'string' && held !== '';
  };
  return Array.from({ length: column }, (_, at) => at).find(isText);
}

/** Scrolls back to the label of a cell, unless that would leave nothing of the cell. */
function revealLabel(grid: Grid, row: number, column: number): void {
  const view = sheetView(grid);
  const label = labelColumn(grid, row, column);
  const cell = view?.seen({ row, column, rows: 1, columns: 1 });
  if (!view || !cell || label === undefined) return;
  const back = (view.scroll.across - view.columnStart(label) + view.columnStart(0)) * view.zoom;
  const room = view.canvas.clientWidth - cell.x - Math.min(cell.width, PART);
  if (back > 0 && back <= room) scrollBy(grid, -back, 0);
}

/** Scrolls as far as it takes to have the chosen cell in sight, and its label beside it. Call it once the grid is drawn. */
export function revealSelected(grid: Grid): void {
  const cell = grid.api.getActiveWorkbook()?.getActiveCell();
  const range = cell && {
    startRow: cell.getRow(),
    endRow: cell.getRow(),
    startColumn: cell.getColumn(),
    endColumn: cell.getColumn(),
  };
  if (!range) return;
  commands(grid).syncExecuteCommand(ScrollToRangeOperation.id, { range });
  revealLabel(grid, range.startRow, range.startColumn);
}

/** Rows above a cell that say what is typed there: the title of its table or form, and headings. */
const ABOVE = 3;

/** Has the chosen cell in sight as one to begin at: with what stands above and below it, and no further down than it takes. */
export function revealStart({ api }: Grid): void {
  const sheet = api.getActiveWorkbook()?.getActiveSheet();
  const cell = api.getActiveWorkbook()?.getActiveCell();
  const seen = sheet?.getVisibleRange();
  if (!sheet || !cell || !seen) return;
  const row = cell.getRow();
  if (row >= seen.startRow && row + ABOVE <= seen.endRow) return;
  sheet.scrollToCell(Math.max(0, row - ABOVE), 0);
}
