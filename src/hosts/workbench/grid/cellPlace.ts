import type { FRange } from '@univerjs/sheets/facade';

/** Where the cells are drawn. */
export const CANVAS = 'canvas[id^="univer-sheet-main-canvas"]';

/** The middle of a cell, in pixels of the page. */
export function cellPlace(range: FRange): { readonly x: number; readonly y: number } {
  const cell = range.getCellRect();
  const canvas = document.querySelector(CANVAS);
  if (!canvas) throw new Error('The grid is not drawn.');
  const { left, top } = canvas.getBoundingClientRect();
  return { x: left + cell.x + cell.width / 2, y: top + cell.y + cell.height / 2 };
}
