import { type ICellData, type IMutationInfo, type ObjectMatrix, Rectangle } from '@univerjs/core';
import {
  COPY_TYPE,
  InsertRowMutation,
  type ISheetDiscreteRangeLocation,
  PREDEFINED_HOOK_NAME_PASTE,
  RemoveRowMutation,
} from '@univerjs/preset-sheets-core';
import type { Grid } from '../grid/grid';
import { clipboard, commands, undoList, unitId } from '../grid/inside';
import { type GridTable, tablesOn } from '../grid/tables';
import { type GridCells, grown, isBlank, type Mutations, NOTHING, sheetOf, written } from './newTableRows';

/** Where cells are pasted, down to the last row that holds something. */
interface Pasted {
  readonly sheetId: string;
  readonly first: number;
  readonly last: number;
  readonly columns: readonly number[];
}
type Content = ObjectMatrix<ICellData>;

/** Before all hooks of the grid, which then paste into a table that is large enough; and after them. */
const [FIRST, LAST] = [-1, 1000];
const { SPECIAL_PASTE_FORMAT, SPECIAL_PASTE_COL_WIDTH } = PREDEFINED_HOOK_NAME_PASTE;
const WITHOUT_CONTENT: readonly string[] = [SPECIAL_PASTE_FORMAT, SPECIAL_PASTE_COL_WIDTH];

/**
 * A table into which more rows are pasted than it has grows with them, in the same step, where the rows below it are
 * free.
 */
export function growForPaste(grid: Grid): void {
  /** What was done for the paste that is going on. */
  let done: Mutations | undefined;
  const run = (all: readonly IMutationInfo[]): void =>
    all.forEach(({ id, params }) => commands(grid).syncExecuteCommand(id, params));

  clipboard(grid).addClipboardHook({
    id: 'sweeptable-grow-for-paste',
    priority: FIRST,
    onPastePlainText({ subUnitId, range }, text) {
      const [row, column] = [range.rows[0], range.cols[0]];
      if (row === undefined || column === undefined || text.trim() === '') return NOTHING;
      return room(grid, { sheetId: subUnitId, first: row, last: row, columns: [column] });
    },
    onPasteCells(_from, to, content, { copyType, pasteType }) {
      if (copyType === COPY_TYPE.CUT || WITHOUT_CONTENT.includes(pasteType)) return NOTHING;
      const pasted = pastedIn(to, content);
      const grows = pasted ? room(grid, pasted) : NOTHING;
      if (grows.redos.length > 0) {
        run(grows.redos);
        done = grows;
      }
      return NOTHING;
    },
  });

  clipboard(grid).addClipboardHook({
    id: 'sweeptable-keep-looks-of-table',
    priority: LAST,
    onPasteCells(_from, { subUnitId, range }, content) {
      if (!done) return NOTHING;
      const workbook = sheetOf(grid, subUnitId).getWorkbook();
      const present = sheetOf(grid, subUnitId).getSheet().getCellMatrix();
      const looks: GridCells = {};
      content.forValue((i, j) => {
        const [row, column] = [range.rows[i], range.cols[j]];
        if (row === undefined || column === undefined) return;
        const s = workbook.getStyles().getStyleByCell(present.getValue(row, column));
        if (s) (looks[row] ??= {})[column] = { s };
      });
      return written(grid, subUnitId, looks);
    },
    onAfterPaste(success) {
      const step = success ? undoList(grid).pitchTopUndoElement() : undefined;
      if (step && done) {
        step.redoMutations.unshift(...done.redos);
        step.undoMutations.push(...done.undos);
      } else if (done) run(done.undos);
      done = undefined;
    },
  });
}

function pastedIn({ subUnitId, range }: ISheetDiscreteRangeLocation, content: Content): Pasted | undefined {
  const { rows, cols } = range;
  let last = -1;
  content.forValue((row, _column, cell) => {
    if (row > last && !isBlank(cell)) last = row;
  });
  const [first, end] = [rows[0], rows[last]];
  if (first === undefined || end === undefined) return undefined;
  return { sheetId: subUnitId, first, last: end, columns: cols };
}

/** The table that is too short for what is pasted into it or right below it. */
const tableBelow = (grid: Grid, { sheetId, first, last, columns }: Pasted): GridTable | undefined =>
  tablesOn(grid, sheetId).find((table) => {
    const { startRow, endRow, startColumn, endColumn } = table.getRange();
    return (
      startRow < first &&
      first <= endRow + 1 &&
      endRow < last &&
      columns.every((column) => startColumn <= column && column <= endColumn)
    );
  });

function isFreeBelow(grid: Grid, table: GridTable, { sheetId, last }: Pasted): boolean {
  const range = table.getRange();
  const area = { ...range, startRow: range.endRow + 1, endRow: last };
  const sheet = sheetOf(grid, sheetId).getSheet();
  const others = tablesOn(grid, sheetId).map((other) => other.getRange());
  if ([...others, ...sheet.getMergeData()].some((taken) => Rectangle.intersects(taken, area))) return false;
  const present = sheet.getCellMatrix();
  for (let row = area.startRow; row <= area.endRow; row++)
    for (let column = area.startColumn; column <= area.endColumn; column++)
      if (!isBlank(present.getValue(row, column))) return false;
  return true;
}

/** Rows at the end of the sheet, where it has too few. */
function rowsUpTo(grid: Grid, { sheetId, last }: Pasted): Mutations {
  const sheet = sheetOf(grid, sheetId);
  const startRow = sheet.getMaxRows();
  if (last < startRow) return NOTHING;
  const range = { startRow, endRow: last, startColumn: 0, endColumn: sheet.getMaxColumns() - 1 };
  const params = { unitId: unitId(grid), subUnitId: sheetId, range };
  return { redos: [{ id: InsertRowMutation.id, params }], undos: [{ id: RemoveRowMutation.id, params }] };
}

/** Makes room for what is pasted, where that takes nothing but free rows. */
function room(grid: Grid, pasted: Pasted): Mutations {
  const table = tableBelow(grid, pasted);
  if (!table || !isFreeBelow(grid, table, pasted)) return NOTHING;
  const added = rowsUpTo(grid, pasted);
  const grows = grown(grid, table, pasted.last);
  return { redos: [...added.redos, ...grows.redos], undos: [...grows.undos, ...added.undos] };
}
