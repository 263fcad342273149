import type { IDisposable } from '@univerjs/core';
import { IEditorBridgeService, ILayoutService, IShortcutService } from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';
import { inside } from './inside';

/** Gives the grid the keyboard: what is typed next goes into the chosen cell. */
export const takeKeyboard = (grid: Grid): void => inside(grid).get(ILayoutService).focus();

/** Lets the grid's own keys rest, until that is taken back. */
const restKeys = (grid: Grid): IDisposable => inside(grid).get(IShortcutService).forceEscape();

/** They rest while something of ours has the keyboard that lies over the grid. */
export function restKeysWithin(grid: Grid, place: HTMLElement): void {
  let resting: IDisposable | undefined;
  place.addEventListener('focusin', () => {
    resting ??= restKeys(grid);
  });
  place.addEventListener('focusout', () => {
    resting?.dispose();
    resting = undefined;
  });
}

/** Whether a cell is being written into. */
export const isWriting = (grid: Grid): boolean => inside(grid).get(IEditorBridgeService).isVisible().visible;

/** Ends it and keeps what was written. */
export async function settleWriting(grid: Grid): Promise<void> {
  if (isWriting(grid)) await grid.api.getActiveWorkbook()?.endEditingAsync(true);
}
