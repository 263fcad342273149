import { isFormulaString } from '@univerjs/core';
import { SetRangeValuesCommand } from '@univerjs/preset-sheets-core';
import type { Grid } from '../grid/grid';
import { commands, undoList, unitId } from '../grid/inside';
import type { GridCells } from '../tables/newTableRows';
import { targets } from '../tables/pasteFromElsewhere';
import { type Held, type Match, replaced, type Wanted } from './search';

/** Why a cell is left as it is. */
export type Left = Exclude<Held, 'typed'> | 'formula';

export interface Replaced {
  readonly count: number;
  readonly left: readonly Left[];
}

/**
 * Writes other words in the place of those that were found, where they were typed, as one step. What a formula answers, what a
 * format writes around a number, and words with looks of their own are left, and so is what would become a formula.
 */
export function replaceIn(grid: Grid, matches: readonly Match[], wanted: Wanted, by: string): Replaced {
  const left: Left[] = [];
  const bySheet = new Map<string, GridCells>();
  let count = 0;
  for (const match of matches) {
    const { sheetId, row, column, held } = match;
    const words = replaced(match, wanted, by);
    const why = held === 'typed' ? (isFormulaString(words) ? 'formula' : undefined) : held;
    if (why !== undefined) {
      left.push(why);
      continue;
    }
    const cells = bySheet.get(sheetId) ?? {};
    bySheet.set(sheetId, cells);
    (cells[row] ??= {})[column] = targets(grid, sheetId).value(words, row, column);
    count++;
  }
  if (count > 0) {
    const oneStep = undoList(grid).__tempBatchingUndoRedo(unitId(grid));
    for (const [subUnitId, value] of bySheet)
      commands(grid).syncExecuteCommand(SetRangeValuesCommand.id, {
        unitId: unitId(grid),
        subUnitId,
        value,
      });
    oneStep.dispose();
  }
  return { count, left };
}
