import { numfmt } from '@univerjs/core';
import type { BookCell, BookSheet } from '../../../book/book';
import { usedArea } from '../../../book/cells';
import { columnPixels, USUAL_HEIGHT } from '../../../book/widthsAndHeights';
import { isCellError } from '../../../formula/errors';
import { POINT, type PrintedSheet } from './cellFace';

/** Pixels of a column that has no width of its own. */
const USUAL_WIDTH = 64;

function shown({ value, style }: BookCell): string {
  if (value === null) return '';
  if (isCellError(value)) return value.error;
  return typeof value === 'number' ? numfmt.format(style?.format ?? 'General', value) : String(value);
}

/** A sheet of plain data as it would be seen: without what formulas, conditions and charts add to it. */
export function viewOf(sheet: BookSheet): PrintedSheet {
  const byRow = new Map<number, BookCell[]>();
  for (const cell of sheet.cells) byRow.set(cell.row, [...(byRow.get(cell.row) ?? []), cell]);
  const lines = (first: number, count: number, size: (at: number) => number) =>
    Array.from({ length: count }, (_, i) => ({ row: first + i, height: size(first + i) }));
  return {
    name: sheet.name,
    used: usedArea(sheet),
    cells: sheet.cells,
    rows: (first, count) => lines(first, count, (row) => (sheet.heights[row] ?? USUAL_HEIGHT) * POINT),
    columns: (first, count) =>
      lines(first, count, (column) => {
        const width = sheet.widths[column];
        return width === undefined ? USUAL_WIDTH : columnPixels(width);
      }),
    inRow: (row) =>
      (byRow.get(row) ?? []).map((cell) => {
        const merged = sheet.merges.find((area) => area.row === row && area.column === cell.column);
        return {
          row,
          column: cell.column,
          rows: merged?.rows ?? 1,
          columns: merged?.columns ?? 1,
          text: shown(cell),
          isNumber: typeof cell.value === 'number',
          style: cell.style ?? {},
        };
      }),
  };
}
