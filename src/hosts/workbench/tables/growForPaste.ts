import { type ICellData, type IMutationInfo, type ObjectMatrix, Rectangle } from '@univerjs/core';
import {
  COPY_TYPE,
  InsertRowMutation,
  type ISheetDiscreteRangeLocation,
  PREDEFINED_HOOK_NAME_PASTE,
  RemoveRowMutation,
} from '@univerjs/preset-sheets-core';
import type { Grid } from '../grid/grid';
import { clipboard, commands, insertRowsNow, undoList, unitId } from '../grid/inside';
import { type GridTable, tablesOn } from '../grid/tables';
import { grown, isBlank, type Mutations, NOTHING, sheetOf } from './newTableRows';

/** Where cells are pasted, down to the last row that holds something. */
export interface Pasted {
  readonly sheetId: string;
  readonly first: number;
  readonly last: number;
  readonly columns: readonly number[];
}
type Content = ObjectMatrix<ICellData>;

const { SPECIAL_PASTE_FORMAT, SPECIAL_PASTE_COL_WIDTH } = PREDEFINED_HOOK_NAME_PASTE;
const WITHOUT_CONTENT: readonly string[] = [SPECIAL_PASTE_FORMAT, SPECIAL_PASTE_COL_WIDTH];

/** Before all hooks of the grid, which then paste into a table that is large enough. */
const FIRST = -1;

/**
 * A table into which more rows are pasted than it has grows with them, in the same step: into the rows below it where these
 * are free, else by rows that come in, so that what stands below goes on.
 */
export function growForPaste(grid: Grid): void {
  /** What was done for the paste that is going on. */
  let done: Mutations | undefined;

  clipboard(grid).addClipboardHook({
    id: 'sweeptable-grow-for-paste',
    priority: FIRST,
    onPastePlainText({ subUnitId, range }, text) {
      const [row, column] = [range.rows[0], range.cols[0]];
      if (row === undefined || column === undefined || text.trim() === '') return NOTHING;
      const pasted = { sheetId: subUnitId, first: row, last: row, columns: [column] };
      const table = tableBelow(grid, pasted);
      return table && isFreeBelow(grid, table, pasted) ? roomInFreeRows(grid, table, pasted) : NOTHING;
    },
    onPasteCells(_from, to, content, { copyType, pasteType }) {
      if (copyType === COPY_TYPE.CUT || WITHOUT_CONTENT.includes(pasteType)) return NOTHING;
      const pasted = pastedIn(to, content);
      done = pasted && makeRoom(grid, pasted);
      return NOTHING;
    },
    onAfterPaste(success) {
      const step = success ? undoList(grid).pitchTopUndoElement() : undefined;
      if (step && done) {
        step.redoMutations.unshift(...done.redos);
        step.undoMutations.push(...done.undos);
      } else if (done) run(grid, done.undos);
      done = undefined;
    },
  });
}

export const run = (grid: Grid, all: readonly IMutationInfo[]): void =>
  all.forEach(({ id, params }) => commands(grid).syncExecuteCommand(id, params));

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

/** Whether the rows below a table, down to the last one, hold nothing. */
export function isFreeBelow(
  grid: Grid,
  table: GridTable,
  { sheetId, last }: Pick<Pasted, 'sheetId' | 'last'>,
): boolean {
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

/** Takes free rows below a table for what is pasted. */
export function roomInFreeRows(grid: Grid, table: GridTable, pasted: Pasted): Mutations {
  const [added, grows] = [rowsUpTo(grid, pasted), grown(grid, table, pasted.last)];
  return { redos: [...added.redos, ...grows.redos], undos: [...grows.undos, ...added.undos] };
}

/** Makes room for what is pasted; nothing where there is enough, or where it begins below a table on taken cells. */
function makeRoom(grid: Grid, pasted: Pasted): Mutations | undefined {
  const table = tableBelow(grid, pasted);
  if (!table) return undefined;
  if (isFreeBelow(grid, table, pasted)) {
    const room = roomInFreeRows(grid, table, pasted);
    run(grid, room.redos);
    return room;
  }
  const { endRow } = table.getRange();
  if (pasted.first > endRow) return undefined;
  const endColumn = sheetOf(grid, pasted.sheetId).getMaxColumns() - 1;
  return insertRowsNow(grid, pasted.sheetId, {
    startRow: endRow + 1,
    endRow: pasted.last,
    startColumn: 0,
    endColumn,
  });
}
