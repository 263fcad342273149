import { DataValidationRenderMode, DataValidationType, type ISheetDataValidationRule } from '@univerjs/core';
import { SheetsSelectionsService } from '@univerjs/preset-sheets-core';
import type { FRange } from '@univerjs/sheets/facade';
import { holdsCell } from '../../../engine/gridRange';
import type { Place } from '../../../formula/address';
import type { Grid } from './grid';
import { commands, inside, unitId } from './inside';
import { inputRules } from './rules';

/** Opens the list of a cell, to choose from. */
const OPENS_LIST = 'sheet.operation.show-data-validation-dropdown';

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
