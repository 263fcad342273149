import {
  ICommandService,
  type IMutationInfo,
  type Injector,
  type IRange,
  IUndoRedoService,
  IUniverInstanceService,
  UniverInstanceType,
  type Workbook,
} from '@univerjs/core';
import { SetRowHiddenMutation, SetRowVisibleMutation } from '@univerjs/sheets';

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

/** Hides rows, or shows them again, as one step that undo takes back. */
function set(injector: Injector, { unitId, subUnitId, rows }: RowsOfSheet, isHidden: boolean): void {
  const sheet = injector
    .get(IUniverInstanceService)
    .getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET)
    ?.getSheetBySheetId(subUnitId);
  const ranges = together(rows, sheet?.getColumnCount() ?? 1);
  const step = ({ id }: { readonly id: string }): IMutationInfo => ({
    id,
    params: { unitId, subUnitId, ranges },
  });
  const [hide, show] = [step(SetRowHiddenMutation), step(SetRowVisibleMutation)];
  const [redo, undo] = isHidden ? [hide, show] : [show, hide];
  injector.get(ICommandService).syncExecuteCommand(redo.id, redo.params);
  injector
    .get(IUndoRedoService)
    .pushUndoRedo({ unitID: unitId, redoMutations: [redo], undoMutations: [undo] });
}

/** Hides rows that are shown. */
export const hideRows = (injector: Injector, rows: RowsOfSheet): void => set(injector, rows, true);

/** Shows rows that are hidden. */
export const showRows = (injector: Injector, rows: RowsOfSheet): void => set(injector, rows, false);
