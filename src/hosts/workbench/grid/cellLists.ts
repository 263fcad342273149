import type { IDisposable } from '@univerjs/core';
import {
  ISheetCellDropdownManagerService,
  SetSelectionsOperation,
  SetWorksheetActiveOperation,
} from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';
import { commands, inside } from './inside';
import { isWriting } from './keyboard';
import { chosenPlace, isAt, type SheetPlace } from './refusedInput';
import { takeKey } from './takeKey';

/**
 * The list of words that a cell offers goes with Escape, and where another cell is chosen: the grid would leave it open, and put
 * what is picked there into the cell that it was opened for. Call it once a workbook is open.
 */
export function closeLists(grid: Grid): void {
  const lists = inside(grid).get(ISheetCellDropdownManagerService);
  const show = lists.showDropdown.bind(lists);
  let opened: { readonly of: SheetPlace; readonly list: IDisposable } | undefined;
  lists.showDropdown = (asked) => {
    const list = show({
      ...asked,
      onHide: () => {
        opened = undefined;
        asked.onHide?.();
      },
    });
    const { subUnitId: sheetId, row, col: column } = asked.location;
    opened = { of: { sheetId, row, column }, list };
    return list;
  };
  takeKey(
    ({ key }) => key === 'Escape' && opened !== undefined && !isWriting(grid),
    () => opened?.list.dispose(),
  );
  commands(grid).onCommandExecuted(({ id }) => {
    if (!opened || (id !== SetSelectionsOperation.id && id !== SetWorksheetActiveOperation.id)) return;
    const chosen = chosenPlace(grid);
    if (!chosen || !isAt(chosen, opened.of)) opened.list.dispose();
  });
}
