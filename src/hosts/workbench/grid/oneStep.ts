import type { Grid } from './grid';
import { undoList, unitId } from './inside';

/** Has undo take back in one step all that is changed meanwhile. */
export async function asOneStep<T>(grid: Grid, change: () => Promise<T>): Promise<T> {
  const batch = undoList(grid).__tempBatchingUndoRedo(unitId(grid));
  try {
    return await change();
  } finally {
    batch.dispose();
  }
}
