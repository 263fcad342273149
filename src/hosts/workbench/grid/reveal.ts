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
