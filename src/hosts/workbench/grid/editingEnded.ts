import { EditingRenderController } from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';
import { inside } from './inside';

/** More than it ever takes, so that a grid that never says so is not waited for. */
const MOST = 200;

/**
 * Waits until the grid has put its editor away, which it does a few steps after what was written is judged. No key comes in
 * between, as one would after a timer.
 */
export async function editingEnded(grid: Grid): Promise<void> {
  const editing = inside(grid).get(EditingRenderController) as unknown as { _editingUnit?: string };
  for (let step = 0; step < MOST; step++) {
    await Promise.resolve();
    if (!editing._editingUnit) return;
  }
}
