import type { Area } from '../formula/area';
import type { BookCell, BookSheet } from './book';

/** Letters that a cell holds. */
export const LONGEST_TEXT = 32_767;

/** Everything from A1 to the last cell that holds something. */
export const usedArea = ({ cells }: Pick<BookSheet, 'cells'>): Area => ({
  row: 0,
  column: 0,
  rows: cells.reduce((most, { row }) => Math.max(most, row + 1), 0),
  columns: cells.reduce((most, { column }) => Math.max(most, column + 1), 0),
});

/** What the formula in a cell gives. */
export type ValueAt = (row: number, column: number) => BookCell['value'];

/** A sheet with the results of its formulas. */
export const withValues = (sheet: BookSheet, values: ValueAt): BookSheet => ({
  ...sheet,
  cells: sheet.cells.map((cell) =>
    cell.formula === undefined ? cell : { ...cell, value: values(cell.row, cell.column) },
  ),
});
