import { SheetsSelectionsService } from '@univerjs/preset-sheets-core';
import type { FRange } from '@univerjs/sheets/facade';
import type { Grid } from './grid';
import { commands, inside } from './inside';

/** Opens the list of a cell, to choose from. */
const OPENS_LIST = 'sheet.operation.show-data-validation-dropdown';

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
