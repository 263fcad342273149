import { CellValueType, isFormulaString, type ICellData, type Nullable } from '@univerjs/core';
import { AFTER_CELL_EDIT } from '@univerjs/preset-sheets-core';
import type { Grid } from '../grid/grid';
import { interceptors, withBrackets } from '../grid/inside';
import { TEXT_FORMAT, typedValue } from './pastedCell';
import { plainText, targets } from './pasteFromElsewhere';

/** Before the grid looks for a number, a date or a time in it. */
const FIRST = 1;

/**
 * What is typed into a cell of texts. It is one so that 1/60 is no date: a formula calculates there as anywhere, and ' in front of
 * it has it stay a text. The grid would keep both as they are typed.
 */
function intoTexts(grid: Grid, typed: ICellData, held: Nullable<ICellData>): ICellData {
  const { v: words } = typed;
  // its colours while it is written are none of the cell's
  const bare = { ...typed, s: held?.s, p: null };
  if (isFormulaString(words)) {
    const formula = withBrackets(grid, String(words));
    // one that was opened and left is not calculated anew
    return held && held.f === formula ? { ...held } : { ...bare, f: formula, v: null, t: null };
  }
  return typeof words === 'string' && words.startsWith("'")
    ? { ...bare, v: words.slice(1), t: CellValueType.FORCE_STRING }
    : typed;
}

/**
 * What is typed is read as a text from another program is: the grid would make a time of day of 3:1 and a date of 1/4 also where
 * millimetres stand, give the cell their format, and have its rule take them for a number.
 */
export function readTyped(grid: Grid): void {
  interceptors(grid).writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    priority: FIRST,
    handler(cell, { worksheet, subUnitId, row, col }, next) {
      const target = targets(grid, subUnitId).target(row, col);
      const typed =
        cell && target.format === TEXT_FORMAT ? intoTexts(grid, cell, worksheet.getCellRaw(row, col)) : cell;
      if (typed !== cell) return next(typed);
      // behind ' it is a text already
      const words = cell && cell.t !== CellValueType.FORCE_STRING ? plainText(cell) : undefined;
      const isOurs = words !== undefined && words.trim() !== '' && !cell?.f && !isFormulaString(words);
      const read = isOurs ? typedValue(words, target) : undefined;
      if (!cell || !read) return next(cell);
      const { v, t } = read;
      return { ...cell, v, t, p: undefined } as ICellData;
    },
  });
}
