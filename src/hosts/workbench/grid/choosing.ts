import { DataValidationRenderMode, DataValidationType, type ISheetDataValidationRule } from '@univerjs/core';
import { SheetsSelectionsService } from '@univerjs/preset-sheets-core';
import type { FRange } from '@univerjs/sheets/facade';
import { holdsCell } from '../../../engine/gridRange';
import type { Place } from '../../../formula/address';
import type { Grid } from './grid';
import { commands, inside, unitId } from './inside';
import { isWriting } from './keyboard';
import { inputRules } from './rules';

/** Opens the list of a cell, to choose from, and closes it. */
const OPENS_LIST = 'sheet.operation.show-data-validation-dropdown';
const CLOSES_LIST = 'sheet.operation.hide-data-validation-dropdown';
/** The list, while it is open. */
const LIST = '[data-u-comp="sheets-dropdown-list"]';

/** The rule of a cell that offers a list to choose from, with an arrow that opens it. */
export function listOf(grid: Grid, { row, column }: Place): ISheetDataValidationRule | undefined {
  const sheetId = grid.api.getActiveWorkbook()?.getActiveSheet().getSheetId();
  return sheetId === undefined
    ? undefined
    : inputRules(grid, sheetId).find(
        ({ type, renderMode, ranges }) =>
          (type === DataValidationType.LIST || type === DataValidationType.LIST_MULTIPLE) &&
          renderMode !== DataValidationRenderMode.TEXT &&
          ranges.some((range) => holdsCell(range, row, column)),
      );
}

/** Opens the list of a cell; gives whether it has one. */
export function openList(grid: Grid, { row, column }: Place): boolean {
  if (!listOf(grid, { row, column })) return false;
  const subUnitId = grid.api.getActiveWorkbook()?.getActiveSheet().getSheetId();
  void commands(grid).executeCommand(OPENS_LIST, { unitId: unitId(grid), subUnitId, row, column });
  return true;
}

/** Whether a press opens the list of a cell. */
export function opensList(grid: Grid, press: () => void): boolean {
  let isOpened = false;
  const listening = commands(grid).beforeCommandExecuted(({ id }) => {
    isOpened ||= id === OPENS_LIST;
  });
  press();
  listening.dispose();
  return isOpened;
}

/**
 * A key closes the list of a cell: Escape does no more than that, unless the cell is written into, and any other goes on to the
 * cells. The grid leaves it open, beside a cell that may not be the chosen one any longer.
 */
export function closeListByKey(grid: Grid): void {
  addEventListener(
    'keydown',
    (event) => {
      const isWritten = isWriting(grid);
      if (!document.querySelector(LIST) || (isWritten && event.key !== 'Escape')) return;
      void commands(grid).executeCommand(CLOSES_LIST, {});
      if (event.key !== 'Escape' || isWritten) return;
      event.preventDefault();
      event.stopImmediatePropagation();
    },
    { capture: true },
  );
}

/** What is chosen in the sheet in view; nothing where that has gone with rows or columns that were taken back. */
export function chosenRange(grid: Grid): FRange | undefined {
  const sheet = grid.api.getActiveWorkbook()?.getActiveSheet();
  const chosen = inside(grid)
    .get(SheetsSelectionsService)
    .getCurrentSelections()
    .find(({ primary }) => primary)?.range;
  if (!sheet || !chosen || chosen.endRow >= sheet.getMaxRows() || chosen.endColumn >= sheet.getMaxColumns())
    return undefined;
  return sheet.getRange(chosen);
}
