import {
  ICommandService,
  type IMutationInfo,
  type Injector,
  type IRange,
  IUndoRedoService,
} from '@univerjs/core';
import { SetRowHiddenMutation, SetRowVisibleMutation } from '@univerjs/sheets';
import { marked, sheetIn } from './byHand';

/** Rows of a sheet, in rising order. */
export interface RowsOfSheet {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly rows: readonly number[];
}

/** Rows that follow each other, as one range each: whole rows, since what reads any of their cells is calculated anew. */
function together(rows: readonly number[], columns: number): readonly IRange[] {
  const ranges: IRange[] = [];
  for (const row of rows) {
    const last = ranges.at(-1);
    if (last?.endRow === row - 1) last.endRow = row;
    else ranges.push({ startRow: row, endRow: row, startColumn: 0, endColumn: columns - 1 });
  }
  return ranges;
}

/** Hides rows, or shows them again, as one step that undo takes back. None of them is hidden by hand from then on. */
function set(injector: Injector, about: RowsOfSheet, isHidden: boolean): void {
  const { unitId, subUnitId, rows } = about;
  const ranges = together(rows, sheetIn(injector, about)?.getColumnCount() ?? 1);
  const step = ({ id }: { readonly id: string }): IMutationInfo => ({
    id,
    params: { unitId, subUnitId, ranges },
  });
  const [hide, show] = [step(SetRowHiddenMutation), step(SetRowVisibleMutation)];
  const [redo, undo] = isHidden ? [hide, show] : [show, hide];
  const { redos, undos } = marked(injector, about, false);
  const steps = { redoMutations: [...redos, redo], undoMutations: [undo, ...undos] };
  const commands = injector.get(ICommandService);
  for (const { id, params } of steps.redoMutations) commands.syncExecuteCommand(id, params);
  injector.get(IUndoRedoService).pushUndoRedo({ unitID: unitId, ...steps });
}

/** Hides rows that are shown, as a filter does. */
export const hideRows = (injector: Injector, rows: RowsOfSheet): void => set(injector, rows, true);

/** Shows rows that are hidden. */
export const showRows = (injector: Injector, rows: RowsOfSheet): void => set(injector, rows, false);
