import { RemoveSheetCommand } from '@univerjs/preset-sheets-core';
import { keptWithoutSheet } from '../../../pane/sentences';
import { keptWithout } from '../../../sheets/links/findJoins';
import { SHORT } from '../../../sheets/offeredTemplates';
import type { Grid } from '../grid/grid';
import { interceptors } from '../grid/inside';
import { joined, NOTHING } from '../tables/newTableRows';
import { columnSteps } from './columnSteps';
import { foundHere } from './foundHere';
import { undoKey } from '../grid/undoKey';

/**
 * Where a sheet is deleted that others look up in, these keep what it said, as if typed, in the same step. Without it their
 * formulas would show nothing, and nobody would be told.
 */
export function keepLookedUp(grid: Grid, say: (words: string) => void): void {
  interceptors(grid).interceptCommand({
    // after the grid, which brings the tables back where this is undone: formulas that name them come later
    priority: -2,
    getMutations(command) {
      const workbook = grid.api.getActiveWorkbook();
      const { subUnitId } = (command.params ?? {}) as { readonly subUnitId?: string };
      const going = subUnitId === undefined ? undefined : workbook?.getSheetBySheetId(subUnitId);
      if (command.id !== RemoveSheetCommand.id || !workbook || !going) return NOTHING;
      const kept = keptWithout(going.getSheetName(), SHORT, foundHere(grid));
      if (kept.length === 0) return NOTHING;
      const sheets = [...new Set(kept.map(({ sheet }) => sheet))];
      say(`${keptWithoutSheet(going.getSheetName(), sheets)} ${undoKey()} brings it back.`);
      const { redos, undos } = joined(
        sheets.map((name) => {
          const id = workbook.getSheetByName(name)?.getSheetId() ?? '';
          return columnSteps(grid, id, kept.filter(({ sheet }) => sheet === name)); // prettier-ignore
        }),
      );
      // They go first, so that no formula is ever without its table.
      return { preRedos: redos, redos: [], undos };
    },
  });
}
