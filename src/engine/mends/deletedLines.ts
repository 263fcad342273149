/**
 * A deleted row or column is handed on with the size of the sheet, and of a reference to whole columns or rows, which is as
 * large as sheets can be, the library finds that it lies outside: C:C goes on naming what was D:D. Told that it is a whole row
 * or column, it finds it inside. The functions that go wrong cannot be reached; those that call them are methods of
 * controllers.
 *
 * For @univerjs/sheets and @univerjs/sheets-formula 0.25.1.
 */
import { type IRange, RANGE_TYPE } from '@univerjs/core';
import { UpdateDefinedNameController, UpdateFormulaController } from '@univerjs/sheets-formula';
import { replaceMethod } from './replaceMethod';

/** What the controllers know an edit by. */
const REMOVES_ROWS = 5;
const REMOVES_COLUMNS = 6;

interface Edit {
  readonly type: number;
  readonly range?: IRange;
}

function inFull(edit: Edit): Edit {
  if (!edit.range || (edit.type !== REMOVES_ROWS && edit.type !== REMOVES_COLUMNS)) return edit;
  const rangeType = edit.type === REMOVES_ROWS ? RANGE_TYPE.ROW : RANGE_TYPE.COLUMN;
  return { ...edit, range: { ...edit.range, rangeType } };
}

replaceMethod<[formulas: unknown, sheets: unknown, edit: Edit], unknown>(
  UpdateFormulaController.prototype,
  '_getFormulaReferenceMoveInfo',
  (original) =>
    function (formulas, sheets, edit) {
      return original.call(this, formulas, sheets, inFull(edit));
    },
);
replaceMethod<[workbook: unknown, edit: Edit], unknown>(
  UpdateDefinedNameController.prototype,
  '_getUpdateDefinedNameMutations',
  (original) =>
    function (workbook, edit) {
      return original.call(this, workbook, inFull(edit));
    },
);
