import type { BookCell, BookSheet } from '../book/book';
import type { Area } from '../formula/area';
import { lettersIn, rowHeights } from '../book/widthsAndHeights';
import { textLines } from '../book/wordLines';

const isBlank = ({ value }: BookCell): boolean => value === null || String(value).trim() === '';
const covers = (area: Area, row: number, column: number): boolean =>
  row >= area.row &&
  row < area.row + area.rows &&
  column >= area.column &&
  column < area.column + area.columns;

/**
 * Texts that are longer than the room right of them, broken over lines in it: paper and the next cell would cut them, and
 * nobody would know what is missing.
 *
 * @param columns - as many as are printed.
 * @param isTyped - whether a cell may be broken; what a sheet says of itself fits.
 */
export function wholeTexts(
  { cells, merges, widths, heights }: Pick<BookSheet, 'cells' | 'merges' | 'widths' | 'heights'>,
  columns: number,
  isTyped: (cell: BookCell) => boolean,
): Pick<BookSheet, 'cells' | 'merges' | 'heights'> {
  const full = new Set(cells.flatMap((cell) => (isBlank(cell) ? [] : [`${cell.row},${cell.column}`])));
  const isTaken = (row: number, column: number): boolean =>
    full.has(`${row},${column}`) || merges.some((area) => covers(area, row, column));
  const roomOf = ({ row, column }: BookCell): Area => {
    let end = column + 1;
    while (end < columns && !isTaken(row, end)) end++;
    return { row, column, rows: 1, columns: end - column };
  };
  const rooms: Area[] = [];
  const broken = cells.map((cell) => {
    const { value, style } = cell;
    if (typeof value !== 'string' || isBlank(cell) || !isTyped(cell) || style?.align === 'right') return cell;
    const room = roomOf(cell);
    if (textLines(value, lettersIn(room, widths, style)) === 1) return cell;
    rooms.push(room);
    return { ...cell, style: { ...style, wrap: true } };
  });
  const merged = [...merges, ...rooms.filter((room) => room.columns > 1)];
  const isBroken = new Set(rooms.map(({ row }) => row));
  const needed = rowHeights(
    broken.filter(({ row }) => isBroken.has(row)),
    widths,
    merged,
  );
  const higher = Object.entries(needed).map(([row, height]) => [
    row,
    Math.max(height, heights[Number(row)] ?? 0),
  ]);
  return { cells: broken, merges: merged, heights: { ...heights, ...Object.fromEntries(higher) } };
}
