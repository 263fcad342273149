import type { BookCell, BookStyle, Edge } from '../book/book';
import type { Area } from '../formula/area';
import { MOST_COLUMNS } from '../formula/areaText';

const keyOf = (row: number, column: number): number => row * MOST_COLUMNS + column;

/**
 * Gives the first of merged cells the edges all around them: a file has each edge with the cell that lies at it, the lower one with
 * the last row.
 */
export function withMergedEdges(cells: readonly BookCell[], merges: readonly Area[]): BookCell[] {
  const ends = new Map<number, Area>();
  const edges = new Map<number, BookStyle['edges']>();
  for (const area of merges) ends.set(keyOf(area.row, area.column), area);
  const corners = new Set(
    merges.flatMap(({ row, column, rows, columns }) => [
      keyOf(row + rows - 1, column),
      keyOf(row, column + columns - 1),
    ]),
  );
  for (const { row, column, style } of cells)
    if (corners.has(keyOf(row, column))) edges.set(keyOf(row, column), style?.edges);
  return cells.map((cell) => {
    const area = ends.get(keyOf(cell.row, cell.column));
    if (!area) return cell;
    const { row, column, rows, columns } = area;
    const far: Record<'bottom' | 'right', Edge | undefined> = {
      bottom: edges.get(keyOf(row + rows - 1, column))?.bottom,
      right: edges.get(keyOf(row, column + columns - 1))?.right,
    };
    const { bottom = far.bottom, right = far.right, ...near } = cell.style?.edges ?? {};
    const around = { ...near, ...(bottom ? { bottom } : {}), ...(right ? { right } : {}) };
    return Object.keys(around).length === 0 ? cell : { ...cell, style: { ...cell.style, edges: around } };
  });
}
