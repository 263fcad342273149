import { CommandType, ICommandService } from '@univerjs/core';
import type { Grid } from './grid';

/** Calls after every change of the workbook, be it typed, calculated, undone, selected, or a change of sheet: once a frame. */
export function onEveryChange(grid: Grid, look: () => void): () => void {
  let frame = 0;
  const listening = grid.univer
    .__getInjector()
    .get(ICommandService)
    .onCommandExecuted(({ type }) => {
      if (type === CommandType.COMMAND) return;
      cancelAnimationFrame(frame);
      frame = requestAnimationFrame(look);
    });
  return () => {
    cancelAnimationFrame(frame);
    listening.dispose();
  };
}
