import { rowsSortedBy } from '../../../engine/sort/rowsSorted';
import { effectOf } from '../grid/effects';
import type { Grid } from '../grid/grid';
import { interceptors } from '../grid/inside';
import { registerSheetData } from '../grid/sheetData';
import { chartAfter } from './afterEdit';
import { chartChange } from './setCharts';

/** Moves charts, and the plain cells that they draw, with what comes in, goes away and moves: in the same step. */
export function letChartsFollow(grid: Grid): void {
  registerSheetData(grid);
  interceptors(grid).interceptCommand({
    getMutations(command) {
      // A chart stays where it is, over whichever rows, and draws them in their new order.
      const effect = rowsSortedBy(command) ? undefined : effectOf(grid, command);
      const change = effect && chartChange(grid, effect.sheetId, (chart) => chartAfter(chart, effect));
      return change ? { redos: [change.redo], undos: [change.undo] } : { redos: [], undos: [] };
    },
  });
}
