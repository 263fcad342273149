import { CellValueType, isFormulaString, type ICellData } from '@univerjs/core';
import { AFTER_CELL_EDIT } from '@univerjs/preset-sheets-core';
import type { Grid } from '../grid/grid';
import { interceptors } from '../grid/inside';
import { typedValue } from './pastedCell';
import { plainText, targets } from './pasteFromElsewhere';

/** Before the grid looks for a number, a date or a time in it. */
const FIRST = 1;

/**
 * What is typed is read as a text from another program is: the grid would make a time of day of 3:1 and a date of 1/4 also where
 * millimetres stand, give the cell their format, and have its rule take them for a number.
 */
export function readTyped(grid: Grid): void {
  interceptors(grid).writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    priority: FIRST,
    handler(cell, { subUnitId, row, col }, next) {
      // behind ' it is a text already
      const words = cell && cell.t !== CellValueType.FORCE_STRING ? plainText(cell) : undefined;
      const isOurs = words !== undefined && words.trim() !== '' && !cell?.f && !isFormulaString(words);
      const read = isOurs ? typedValue(words, targets(grid, subUnitId).target(row, col)) : undefined;
      if (!cell || !read) return next(cell);
      const { v, t } = read;
      return { ...cell, v, t, p: undefined } as ICellData;
    },
  });
}
