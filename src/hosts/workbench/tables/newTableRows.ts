import type { ICellData, IMutationInfo, Injector, IRange, Nullable } from '@univerjs/core';
import {
  LexerTreeBuilder,
  SetRangeValuesMutation,
  SetRangeValuesUndoMutationFactory,
} from '@univerjs/preset-sheets-core';
import { SetSheetTableMutation, TableManager } from '@univerjs/preset-sheets-table';
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { Grid } from '../grid/grid';
import { type RulesBefore, rulesOf, widenRules } from './widenRules';

export type GridTable = ReturnType<TableManager['getTablesBySubunitId']>[number];

export interface Mutations {
  readonly redos: IMutationInfo[];
  readonly undos: IMutationInfo[];
}
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

export const tablesOf = (injector: Injector, unitId: string, sheetId: string): readonly GridTable[] =>
  injector.get(TableManager).getTablesBySubunitId(unitId, sheetId);

export function sheetOf({ api }: Grid, sheetId: string): FWorksheet {
  const sheet = api.getActiveWorkbook()?.getSheetBySheetId(sheetId);
  if (!sheet) throw new Error('The sheet of this table is gone.');
  return sheet;
}

/** Widens a table down to a row. */
export function widened(table: GridTable, unitId: string, last: number): Mutations {
  const range = table.getRange();
  const to = (newRange: IRange): IMutationInfo => ({
    id: SetSheetTableMutation.id,
    params: {
      unitId,
      subUnitId: table.getSubunitId(),
      tableId: table.getId(),
      config: { updateRange: { newRange } },
    },
  });
  return { redos: [to({ ...range, endRow: last })], undos: [to({ ...range })] };
}

/** Writes cells; undo gives each what it holds now. */
export function written(
  injector: Injector,
  unitId: string,
  subUnitId: string,
  cellValue: GridCells,
): Mutations {
  const params = { unitId, subUnitId, cellValue };
  return {
    redos: [{ id: SetRangeValuesMutation.id, params }],
    undos: [{ id: SetRangeValuesMutation.id, params: SetRangeValuesUndoMutationFactory(injector, params) }],
  };
}

/** The row that new rows take after: the one above them, or at the top the one below. */
const modelOf = (table: GridTable, rows: Rows): number =>
  rows.first - 1 > table.getRange().startRow ? rows.first - 1 : rows.last + 1;

/** The formulas and formats of the model row, in the new rows. */
function takenOver(grid: Grid, injector: Injector, table: GridTable, rows: Rows): GridCells {
  const model = modelOf(table, rows);
  const { startColumn, endColumn } = table.getRange();
  const sheet = sheetOf(grid, table.getSubunitId());
  const lexer = injector.get(LexerTreeBuilder);
  const present = sheet.getSheet().getCellMatrix();
  const cells: GridCells = {};
  for (let column = startColumn; column <= endColumn; column++) {
    const range = sheet.getRange(model, column);
    const formula = range.getFormula();
    const style = range.getCellStyleData();
    for (let row = rows.first; row <= rows.last; row++)
      (cells[row] ??= {})[column] = {
        ...(style ? { s: style } : {}),
        ...(formula && isBlank(present.getValue(row, column))
          ? { f: lexer.moveFormulaRefOffset(formula, 0, row - model) }
          : {}),
      };
  }
  return cells;
}

const ruled = (injector: Injector, table: GridTable, rows: Rows, before: RulesBefore): Mutations => {
  const { startColumn, endColumn } = table.getRange();
  return widenRules(injector, before, { rows, model: modelOf(table, rows), startColumn, endColumn });
};

/** What inserted rows take over. Undo takes the rows away, and their cells with them. */
export function filled(
  grid: Grid,
  injector: Injector,
  table: GridTable,
  rows: Rows,
  before: RulesBefore,
): Mutations {
  const cells = written(injector, before.unitId, before.sheetId, takenOver(grid, injector, table, rows));
  return joined([{ ...cells, undos: [] }, ruled(injector, table, rows, before)]);
}

/** Makes the free rows right below a table, down to the last one, rows of it. */
export function grown(
  grid: Grid,
  injector: Injector,
  table: GridTable,
  unitId: string,
  last: number,
): Mutations {
  const rows = { first: table.getRange().endRow + 1, last };
  const sheetId = table.getSubunitId();
  return joined([
    widened(table, unitId, last),
    written(injector, unitId, sheetId, takenOver(grid, injector, table, rows)),
    ruled(injector, table, rows, rulesOf(injector, unitId, sheetId)),
  ]);
}
