import type { Area } from '../../../formula/area';
import { address } from '../../../formula/address';
import type { Outcome, SheetPicture } from '../../../pane/host';
import { notInView, pictureStands } from '../../../pane/sentences';
import { pictureChange } from '../charts/setCharts';
import type { Grid } from '../grid/grid';
import { takeStep } from '../grid/sheetData';
import { sheetView } from '../grid/sheetView';

/** Room of a picture where its sheet is not in view. */
const USUAL = { rows: 30, columns: 9 } as const;

/** As many rows or columns from one on as are so long together. */
function count(from: number, long: number, start: (index: number) => number, most: number): number {
  let to = from + 1;
  while (to < most && start(to) - start(from) < long) to++;
  return to - from;
}

/** Has the picture of the set stand on the sheet in view, from the chosen cell on. It is drawn from the cells from now on. */
export function putPicture(grid: Grid, { sheet: name, width, height }: SheetPicture): Outcome {
  const workbook = grid.api.getActiveWorkbook();
  const sheet = workbook?.getActiveSheet();
  if (!workbook || !sheet || sheet.getSheetName() !== name) return notInView(name);
  const chosen = workbook.getActiveRange();
  const from = { row: chosen?.getRow() ?? 0, column: chosen?.getColumn() ?? 0 };
  const view = sheetView(grid);
  const size = view
    ? {
        rows: count(from.row, height, (r) => view.rowStart(r), view.rows),
        columns: count(from.column, width, (c) => view.columnStart(c), view.columns),
      }
    : USUAL;
  const place: Area = { ...from, ...size };
  const change = pictureChange(grid, sheet.getSheetId(), [{ of: 'set', place }]);
  if (change) takeStep(grid, change.redo, change.undo);
  return { done: `${pictureStands(name, address(from))} It follows the cells. Drag it, or take it away by Delete; Ctrl+Z takes it back.` }; // prettier-ignore
}
