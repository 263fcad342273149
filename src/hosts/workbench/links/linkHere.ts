import type { ChosenWay, Outcome } from '../../../pane/host';
import { joinChanged, linkedTo, NOTHING_TO_LINK } from '../../../pane/sentences';
import { findJoins, type Join } from '../../../sheets/links/findJoins';
import { changedColumn } from '../../../sheets/links/linkColumns';
import { SHORT } from '../../../sheets/offeredTemplates';
import type { Grid } from '../grid/grid';
import { commands, undoList, unitId } from '../grid/inside';
import { columnSteps } from './columnSteps';
import { foundHere } from './foundHere';
import { undoKey } from '../grid/undoKey';

export const joinsHere = (grid: Grid): readonly Join[] => findJoins(SHORT, foundHere(grid));

/** Writes the columns that were chosen, in one step that undo takes back. */
export function linkHere(grid: Grid, { sheet, to, columns }: ChosenWay): Outcome {
  const id = grid.api.getActiveWorkbook()?.getSheetByName(sheet)?.getSheetId();
  if (id === undefined) return { refused: NOTHING_TO_LINK };
  const changed = changedColumn(columns, foundHere(grid));
  if (changed !== undefined) return joinChanged(changed);
  const { redos, undos } = columnSteps(grid, id, columns);
  for (const step of redos) commands(grid).syncExecuteCommand(step.id, step.params);
  undoList(grid).pushUndoRedo({ unitID: unitId(grid), redoMutations: redos, undoMutations: undos });
  const names = columns.filter(({ follows }) => !follows).map(({ column }) => column);
  return {
    done: `${linkedTo(sheet, names, to === 'typed' ? undefined : to.sheet)} ${undoKey()} takes it back.`,
  };
}
