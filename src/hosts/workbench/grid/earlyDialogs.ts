import { IDialogService } from '@univerjs/preset-sheets-core';
import { shareReplay } from 'rxjs';
import type { Grid } from './grid';
import { inside } from './inside';

/**
 * The part of the grid that shows dialogs is there a moment after the cells, and is told of new dialogs only: what the grid
 * asks or refuses first would pass unseen. It is told of the last one as well.
 */
export function showEarlyDialogs(grid: Grid): void {
  const service = inside(grid).get(IDialogService);
  const dialogs = service.getDialogs$().pipe(shareReplay(1));
  dialogs.subscribe();
  service.getDialogs$ = () => dialogs;
}
