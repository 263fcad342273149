import { ScrollToRangeOperation } from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';
import { commands } from './inside';

/** Scrolls as far as it takes to have the chosen cell in sight. Call it once the grid is drawn. */
export function revealSelected(grid: Grid): void {
  const cell = grid.api.getActiveWorkbook()?.getActiveCell();
  const range = cell && {
    startRow: cell.getRow(),
    endRow: cell.getRow(),
    startColumn: cell.getColumn(),
    endColumn: cell.getColumn(),
  };
  if (range) void commands(grid).executeCommand(ScrollToRangeOperation.id, { range });
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
