import type { PlanCell, SheetPlan } from '../../sheets/plan';
import { THEME } from '../../sheets/theme';
import { wordLines } from '../../sheets/wordLines';

/** A spreadsheet's file counts a column in digits of 7 pixels and 5 for its edges; Excel's library counts in points. */
export const columnPoints = (characters: number): number => (characters * 7 + 5) * 0.75;

/** What Excel gives a row by itself. */
const ROW = 15;
/** Of a letter and of a line, by the size of the type; a shade wide, because a line too many is better than a cut one. */
const LETTER = 0.55;
const LINE = 1.3;
const EDGES = 2;

function widthOf({ row, column }: PlanCell, { merges, columns }: SheetPlan): number {
  const merge = merges.find((area) => area.row === row && area.column === column);
  return columns
    .slice(column, column + (merge?.columns ?? 1))
    .reduce((sum, characters) => sum + columnPoints(characters), -EDGES);
}

/** Heights in points of the rows that need more than the usual one. Excel lets no row grow with a merged cell. */
export function rowHeights(plan: SheetPlan): ReadonlyMap<number, number> {
  const heights = new Map<number, number>();
  for (const cell of plan.cells) {
    const { size } = THEME[cell.part];
    const wraps = cell.wrap && typeof cell.value === 'string';
    const count = wraps ? wordLines(cell.value as string, widthOf(cell, plan) / (size * LETTER)) : 1;
    const height = Math.ceil(count * size * LINE) + EDGES;
    if (height > Math.max(ROW, heights.get(cell.row) ?? 0)) heights.set(cell.row, height);
  }
  return heights;
}
