import { rowsSortedBy } from '../../../engine/sort/rowsSorted';
import { pageAfter } from '../book/printedPage';
import { effectOf } from '../grid/effects';
import type { Grid } from '../grid/grid';
import { interceptors } from '../grid/inside';
import { registerSheetData } from '../grid/sheetData';
import { chartAfter, pictureAfter } from './afterEdit';
import { keptChange } from './setCharts';

/** Moves charts and pictures, the plain cells that they draw, and the columns that print with what comes in, goes away and moves: in the same step. */
export function letChartsFollow(grid: Grid): void {
  registerSheetData(grid);
  interceptors(grid).interceptCommand({
    getMutations(command) {
      // A chart stays where it is, over whichever rows, and draws them in their new order.
      const effect = rowsSortedBy(command) ? undefined : effectOf(grid, command);
      const change =
        effect &&
        keptChange(grid, effect.sheetId, ({ charts, pictures, page, ...kept }) => ({
          ...kept,
          charts: charts.map((chart) => chartAfter(chart, effect)),
          ...(pictures ? { pictures: pictures.map((picture) => pictureAfter(picture, effect)) } : {}),
          page: pageAfter(page, effect.after),
        }));
      return change ? { redos: [change.redo], undos: [change.undo] } : { redos: [], undos: [] };
    },
  });
}
