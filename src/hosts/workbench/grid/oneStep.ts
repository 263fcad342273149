import type { Grid } from './grid';
import { undoList, unitId } from './inside';
import { settleWriting } from './keyboard';

let running: Promise<unknown> = Promise.resolve();

/** Waits until what is being done as one step is done. */
export const oneStepDone = async (): Promise<void> => {
  await running.catch(() => undefined);
};

/** Has undo take back in one step all that is changed meanwhile. */
export function asOneStep<T>(grid: Grid, change: () => Promise<T>): Promise<T> {
  const step = changedInOne(grid, change);
  running = step;
  return step;
}

async function changedInOne<T>(grid: Grid, change: () => Promise<T>): Promise<T> {
  // else what is being typed would be a part of the step, and all of it be taken out where a rule refuses that
  await settleWriting(grid);
  const batch = undoList(grid).__tempBatchingUndoRedo(unitId(grid));
  try {
    return await change();
  } finally {
    batch.dispose();
  }
}
