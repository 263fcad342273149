import type { Area } from '../../../formula/area';
import { address } from '../../../formula/address';
import type { Outcome, SheetPicture } from '../../../pane/host';
import { notInView, pictureStands } from '../../../pane/sentences';
import { pictureChange } from '../charts/setCharts';
import { placeFor } from '../../../set/placeFor';
import type { Grid } from '../grid/grid';
import { takeStep } from '../grid/sheetData';
import { sheetView } from '../grid/sheetView';
import { undoKey } from '../grid/undoKey';

/** Rows that are shown above a picture that is scrolled to: the rows that stay would hide its head. */
const ABOVE = 3;

/** Room of a picture where its sheet is not in view. */
const USUAL = { rows: 30, columns: 9 } as const;

/** Has the picture of the set stand on the sheet in view, from the chosen cell on. It is drawn from the cells from now on. */
export function putPicture(grid: Grid, { of, width, height }: SheetPicture): Outcome {
  const workbook = grid.api.getActiveWorkbook();
  const sheet = workbook?.getActiveSheet();
  const { name } = of;
  if (!workbook || !sheet || sheet.getSheetName() !== name) return notInView(name);
  const chosen = workbook.getActiveRange();
  const from = { row: chosen?.getRow() ?? 0, column: chosen?.getColumn() ?? 0 };
  const view = sheetView(grid);
  const place: Area = view
    ? placeFor(
        of,
        from,
        { width, height },
        { row: (r) => view.rowStart(r), column: (c) => view.columnStart(c) },
      )
    : { ...from, ...USUAL };
  const change = pictureChange(grid, sheet.getSheetId(), [{ of: 'set', place }]);
  if (change) takeStep(grid, change.redo, change.undo);
  const isMoved = place.row !== from.row || place.column !== from.column;
  if (isMoved) sheet.scrollToCell(Math.max(0, place.row - ABOVE), place.column);
  return { done: `${pictureStands(name, address(place), address(from))} It follows the cells. Drag it, or take it away by Delete; ${undoKey()} takes it back.` }; // prettier-ignore
}
