import { ScrollCommand, SetZoomRatioCommand } from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';
import { commands, unitId } from './inside';
import { sheetView } from './sheetView';

/** How small and how large the grid draws a sheet, as its own slider has it. */
const SMALLEST = 0.1;
const LARGEST = 4;

/** Scrolls the sheet in view by so many pixels of the page, as far as it goes; gives whether it went. */
export function scrollBy(grid: Grid, across: number, down: number): boolean {
  const view = sheetView(grid);
  if (!view) return false;
  const { zoom, scroll } = view;
  const { row, column, rowOffset, columnOffset } = view.lineAt(
    Math.max(0, scroll.across + across / zoom),
    Math.max(0, scroll.down + down / zoom),
  );
  commands(grid).syncExecuteCommand(ScrollCommand.id, {
    sheetViewStartRow: row,
    sheetViewStartColumn: column,
    offsetX: columnOffset,
    offsetY: rowOffset,
  });
  const now = sheetView(grid)?.scroll;
  return now !== undefined && (now.across !== scroll.across || now.down !== scroll.down);
}

/** Draws the sheet in view so many times as large as usual, or as near as the grid goes; not while a cell is written into. */
export function zoomTo(grid: Grid, wanted: number): void {
  const zoomRatio = Math.min(LARGEST, Math.max(SMALLEST, Math.round(wanted * 100) / 100));
  const view = sheetView(grid);
  if (!view || view.zoom === zoomRatio) return;
  const at = { unitId: unitId(grid), subUnitId: view.sheetId };
  void commands(grid).executeCommand(SetZoomRatioCommand.id, { ...at, zoomRatio });
}
