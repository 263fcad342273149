import type { ICellData, IMutationInfo, IRange, Nullable } from '@univerjs/core';
import { SetRangeValuesMutation } from '@univerjs/preset-sheets-core';
import { SetSheetTableMutation } from '@univerjs/preset-sheets-table';
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { Grid } from '../grid/grid';
import { cellsAsTheyAre, movedDown, type Reversible, unitId } from '../grid/inside';
import type { GridTable } from '../grid/tables';
import { type RulesBefore, rulesOf, widenRules } from './widenRules';

export type Mutations = Reversible;
export const NOTHING: Mutations = { redos: [], undos: [] };
export const joined = (all: readonly Mutations[]): Mutations => ({
  redos: all.flatMap(({ redos }) => redos),
  undos: all.flatMap(({ undos }) => undos),
});

export interface Rows {
  readonly first: number;
  readonly last: number;
}

export type GridCells = Record<number, Record<number, ICellData>>;

export const isBlank = (cell: Nullable<ICellData>): boolean =>
  (cell?.v ?? '') === '' && !cell?.f && !cell?.si && !cell?.p;

export function sheetOf({ api }: Grid, sheetId: string): FWorksheet {
  const sheet = api.getActiveWorkbook()?.getSheetBySheetId(sheetId);
  if (!sheet) throw new Error('The sheet of this table is gone.');
  return sheet;
}

/** Widens a table down to a row. */
export function widened(grid: Grid, table: GridTable, last: number): Mutations {
  const range = table.getRange();
  const to = (newRange: IRange): IMutationInfo => ({
    id: SetSheetTableMutation.id,
    params: {
      unitId: unitId(grid),
      subUnitId: table.getSubunitId(),
      tableId: table.getId(),
      config: { updateRange: { newRange } },
    },
  });
  return { redos: [to({ ...range, endRow: last })], undos: [to({ ...range })] };
}

const setCells = (grid: Grid, subUnitId: string, cellValue: GridCells) => ({
  id: SetRangeValuesMutation.id,
  params: { unitId: unitId(grid), subUnitId, cellValue },
});

/** Writes cells; undo gives each what it holds now. */
export function written(grid: Grid, sheetId: string, cellValue: GridCells): Mutations {
  const redo = setCells(grid, sheetId, cellValue);
  const { params } = redo;
  return {
    redos: [redo],
    undos: [{ id: SetRangeValuesMutation.id, params: cellsAsTheyAre(grid, params) }],
  };
}

/** The row that new rows take after: the one above them, or at the top the one below. */
const modelOf = (table: GridTable, rows: Rows): number =>
  rows.first - 1 > table.getRange().startRow ? rows.first - 1 : rows.last + 1;

/** The formulas and formats of the model row, in the new rows. Where each row has a formula of its own, a new one has none. */
function takenOver(grid: Grid, table: GridTable, rows: Rows): GridCells {
  const model = modelOf(table, rows);
  const { startRow, endRow, startColumn, endColumn } = table.getRange();
  const sheet = sheetOf(grid, table.getSubunitId());
  const others = Array.from({ length: endRow - startRow }, (_, i) => startRow + 1 + i).filter(
    (row) => row !== model && (row < rows.first || row > rows.last),
  );
  const isOfAll = (formula: string, column: number): boolean => {
    const isHeld = (row: number): boolean => sheet.getRange(row, column).getFormula() !== '';
    const isSame = (row: number): boolean =>
      sheet.getRange(row, column).getFormula() === movedDown(grid, formula, row - model);
    return others.some(isSame) || !others.some(isHeld);
  };
  const present = sheet.getSheet().getCellMatrix();
  const styles = sheet.getWorkbook().getStyles();
  const cells: GridCells = {};
  for (let column = startColumn; column <= endColumn; column++) {
    const ofModel = sheet.getRange(model, column).getFormula();
    const formula = ofModel && isOfAll(ofModel, column) ? ofModel : '';
    // its own look, without what its conditions add now
    const style = styles.getStyleByCell(present.getValue(model, column));
    for (let row = rows.first; row <= rows.last; row++)
      (cells[row] ??= {})[column] = {
        ...(style ? { s: style } : {}),
        ...(formula && isBlank(present.getValue(row, column))
          ? { f: movedDown(grid, formula, row - model) }
          : {}),
      };
  }
  return cells;
}

const ruled = (grid: Grid, table: GridTable, rows: Rows, before: RulesBefore): Mutations => {
  const { startColumn, endColumn } = table.getRange();
  return widenRules(grid, before, { rows, model: modelOf(table, rows), startColumn, endColumn });
};

/**
 * What inserted rows take over. They come in with the looks of the row above them, which at the top of a table is its heading:
 * a look that is written only adds to the one that is there. Undo takes the rows away, and their cells with them.
 */
export function filled(grid: Grid, table: GridTable, rows: Rows, before: RulesBefore): Mutations {
  const cells = takenOver(grid, table, rows);
  const bare = Object.fromEntries(
    Object.entries(cells).map(([row, line]) => [
      row,
      Object.fromEntries(Object.keys(line).map((column) => [column, { s: null }])),
    ]),
  );
  const redos = [bare, cells].map((each) => setCells(grid, before.sheetId, each));
  return joined([{ redos, undos: [] }, ruled(grid, table, rows, before)]);
}

/** Makes the free rows right below a table, down to the last one, rows of it. */
export function grown(grid: Grid, table: GridTable, last: number): Mutations {
  const rows = { first: table.getRange().endRow + 1, last };
  const sheetId = table.getSubunitId();
  return joined([
    widened(grid, table, last),
    written(grid, sheetId, takenOver(grid, table, rows)),
    ruled(grid, table, rows, rulesOf(grid, sheetId)),
  ]);
}
