import {
  CommandType,
  type CustomData,
  type IAccessor,
  type IMutation,
  type IMutationInfo,
  IUniverInstanceService,
  type Workbook,
} from '@univerjs/core';
import type { Grid } from './grid';
import { commands, undoList, unitId } from './inside';

interface OwnData {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly custom: CustomData;
}

/** What the grid keeps with a sheet for us, as it shall be: a step that the grid stores and can undo like its own. */
const SetSheetData: IMutation<OwnData> = {
  id: 'sweeptable.mutation.set-sheet-data',
  type: CommandType.MUTATION,
  handler(accessor: IAccessor, { unitId: unit, subUnitId, custom }) {
    const sheet = accessor.get(IUniverInstanceService).getUnit<Workbook>(unit)?.getSheetBySheetId(subUnitId);
    sheet?.setCustomMetadata(custom);
    return sheet !== undefined && sheet !== null;
  },
};

/** Teaches the grid the step. */
export const registerSheetData = (grid: Grid): void => {
  commands(grid).registerCommand(SetSheetData);
};

/** The step that gives a sheet other data of ours. */
export const settingSheetData = (grid: Grid, subUnitId: string, custom: CustomData): IMutationInfo => ({
  id: SetSheetData.id,
  params: { unitId: unitId(grid), subUnitId, custom } satisfies OwnData,
});

/** Takes a step that undo takes back. */
export function takeStep(grid: Grid, redo: IMutationInfo, undo: IMutationInfo): void {
  if (!commands(grid).syncExecuteCommand(redo.id, redo.params)) return;
  undoList(grid).pushUndoRedo({ unitID: unitId(grid), redoMutations: [redo], undoMutations: [undo] });
}
