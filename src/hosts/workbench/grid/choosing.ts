import type { Grid } from './grid';
import { commands } from './inside';

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
