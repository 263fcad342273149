import { MOST_ROWS } from '../../../formula/areaText';
import type { Grid } from '../grid/grid';
import { insertRowsNow, type Reversible, undoList, unitId } from '../grid/inside';
import type { GridTable } from '../grid/tables';
import { isFreeBelow, type Pasted, roomInFreeRows, run } from './growForPaste';
import { sheetOf } from './newTableRows';

const NO_ROW_LEFT = 'The table ends at the last row that a sheet can have.';

/** So many rows at the foot of a table are looked at: the one that comes in, and one that keeps it apart from what follows. */
const LOOKED_AT = 2;

/**
 * Adds a row at the foot of a table, with the formulas, looks and rules of the one above it, as one step, and selects its first
 * cell. What stands below is never written over: where it is near, a whole row comes in, and it goes down by that.
 *
 * @returns why there is none; nothing where there is one
 */
export function addRow(grid: Grid, table: GridTable): string | undefined {
  const { endRow, startColumn, endColumn } = table.getRange();
  const sheetId = table.getSubunitId();
  const sheet = sheetOf(grid, sheetId);
  const row = endRow + 1;
  if (row >= MOST_ROWS) return NO_ROW_LEFT;
  const columns = Array.from({ length: endColumn - startColumn + 1 }, (_, i) => startColumn + i);
  const wanted: Pasted = { sheetId, first: row, last: row, columns };
  const isFree = isFreeBelow(grid, table, { ...wanted, last: endRow + LOOKED_AT });
  const { redos, undos } = isFree ? taken() : inserted();
  undoList(grid).pushUndoRedo({ unitID: unitId(grid), redoMutations: redos, undoMutations: undos });
  sheet.getRange(row, startColumn).activate();
  return undefined;

  function taken(): Reversible {
    const step = roomInFreeRows(grid, table, wanted);
    run(grid, step.redos);
    return step;
  }
  function inserted(): Reversible {
    const whole = { startRow: row, endRow: row, startColumn: 0, endColumn: sheet.getMaxColumns() - 1 };
    return insertRowsNow(grid, sheetId, whole);
  }
}
