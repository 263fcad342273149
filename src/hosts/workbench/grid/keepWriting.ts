import { IEditorBridgeService } from '@univerjs/preset-sheets-core';
import { editingEnded } from './editingEnded';
import type { Grid } from './grid';
import { inside } from './inside';
import { isWriting } from './keyboard';
import { onWriting } from './refusedInput';

/**
 * Keeps what is being written into a cell where an answer comes in that has a place for that cell, as after a value that was
 * refused. The grid would read the cell anew, and show what it held before in place of what was typed.
 */
export function keepWriting(grid: Grid): void {
  const bridge = inside(grid).get(IEditorBridgeService);
  const readAnew = bridge.refreshEditCellState.bind(bridge);
  let isBehind = false;
  bridge.refreshEditCellState = () => {
    if (isWriting(grid)) isBehind = true;
    else readAnew();
  };
  onWriting(grid, ({ visible }) => {
    if (visible || !isBehind) return;
    isBehind = false;
    void editingEnded(grid).then(() => bridge.refreshEditCellState());
  });
}
