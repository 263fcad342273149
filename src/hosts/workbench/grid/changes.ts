import { type CommandListener, CommandType, type IDisposable } from '@univerjs/core';
import { SetScrollOperation } from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';
import { commands } from './inside';

const onStep = (grid: Grid, listener: CommandListener): IDisposable =>
  commands(grid).onCommandExecuted(listener);

/** Calls after each single change of the workbook, be it typed, calculated or undone. */
export const onChange = (grid: Grid, listener: CommandListener): IDisposable =>
  onStep(grid, (step, options) => {
    if (step.type === CommandType.MUTATION) listener(step, options);
  });

/** Calls after changes of the workbook, of what is selected and of the sheet in view, but not of what of it is scrolled to: once a frame. */
export function onEveryChange(grid: Grid, look: () => void): () => void {
  let frame = 0;
  const listening = onStep(grid, ({ id, type }) => {
    if (type === CommandType.COMMAND || id === SetScrollOperation.id) return;
    cancelAnimationFrame(frame);
    frame = requestAnimationFrame(look);
  });
  return () => {
    cancelAnimationFrame(frame);
    listening.dispose();
  };
}

/** Calls when another workbook takes the place of the open one. */
export function onNewWorkbook({ api }: Grid, changed: () => void): () => void {
  const listening = api.addEvent(api.Event.WorkbookCreated, changed);
  return () => listening.dispose();
}
