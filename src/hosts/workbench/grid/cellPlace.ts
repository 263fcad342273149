import type { FRange } from '@univerjs/sheets/facade';
import { area } from '../../../formula/area';
import type { Grid } from './grid';
import { sheetView } from './sheetView';

/** Where the cells are drawn. */
export const CANVAS = 'canvas[id^="univer-sheet-main-canvas"]';

/**
 * The middle of what is seen of a cell, in pixels of the page, scrolled and zoomed as the sheet is now; of one out of sight the
 * middle that it would have beyond the edge.
 */
export function cellPlace(grid: Grid, range: FRange): { readonly x: number; readonly y: number } {
  const view = sheetView(grid);
  if (!view) throw new Error('The grid is not drawn.');
  const [row, column] = [range.getRow(), range.getColumn()];
  const cell = area({ row, column }, 1, 1);
  const { left, top } = view.canvas.getBoundingClientRect();
  const seen = view.seen(cell);
  if (seen)
    return {
      x: left + seen.x + (seen.cutLeft + seen.width - seen.cutRight) / 2,
      y: top + seen.y + (seen.cutTop + seen.height - seen.cutBottom) / 2,
    };
  const { x, y } = view.scrolledTo(cell);
  return {
    x: left + x + ((view.columnStart(column + 1) - view.columnStart(column)) * view.zoom) / 2,
    y: top + y + ((view.rowStart(row + 1) - view.rowStart(row)) * view.zoom) / 2,
  };
}
