import {
  type ICellData,
  type ICommandInfo,
  Direction,
  type IMutationInfo,
  type Injector,
  type IRange,
} from '@univerjs/core';
import {
  type IInsertRowCommandParams,
  InsertRowCommand,
  type ISetRangeValuesMutationParams,
  LexerTreeBuilder,
  SetRangeValuesCommand,
  SetRangeValuesMutation,
  SheetInterceptorService,
} from '@univerjs/preset-sheets-core';
import { SetSheetTableMutation, TableManager } from '@univerjs/preset-sheets-table';
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { Grid } from './grid';
import { type RulesBefore, rulesOf, widenRules } from './widenRules';

type Table = ReturnType<TableManager['getTablesBySubunitId']>[number];

interface Mutations {
  readonly redos: IMutationInfo[];
  readonly undos: IMutationInfo[];
}
const NOTHING: Mutations = { redos: [], undos: [] };
const joined = (all: readonly Mutations[]): Mutations => ({
  redos: all.flatMap(({ redos }) => redos),
  undos: all.flatMap(({ undos }) => undos),
});

interface Rows {
  readonly first: number;
  readonly last: number;
}

const isBlank = (cell: ICellData | null | undefined): boolean =>
  (cell?.v ?? '') === '' && !cell?.f && !cell?.si;

/**
 * A row that comes into a table is one of the table: the grid widens the table, and here the row gets the formulas,
 * formats, input rules and warnings of its neighbour, in the same step, so that undo takes all of it back.
 */
export function growTables(grid: Grid): void {
  const injector = grid.univer.__getInjector();
  const interceptors = injector.get(SheetInterceptorService);
  let before: RulesBefore | undefined;
  interceptors.interceptCommand({
    priority: 1,
    getMutations(command) {
      if (isInsertRow(command)) before = rulesOf(injector, command.params.unitId, command.params.subUnitId);
      if (command.id === SetRangeValuesCommand.id)
        return typedBelow(grid, injector, command.params as ISetRangeValuesMutationParams);
      return NOTHING;
    },
  });
  interceptors.interceptAfterCommand({
    getMutations(command) {
      if (!isInsertRow(command) || !before) return NOTHING;
      const { unitId, subUnitId, range, direction } = command.params;
      const rows = { first: range.startRow, last: range.endRow };
      const known = before;
      return joined(
        tablesOf(injector, unitId, subUnitId).map((table) => {
          const { startRow, endRow } = table.getRange();
          if (rows.first > startRow && rows.last <= endRow) return filled(grid, injector, table, rows, known);
          const below = rows.first === endRow + 1 && direction === Direction.DOWN;
          return below
            ? joined([widened(table, unitId, rows.last), filled(grid, injector, table, rows, known)])
            : NOTHING;
        }),
      );
    },
  });
}

const isInsertRow = (command: ICommandInfo): command is ICommandInfo & { params: IInsertRowCommandParams } =>
  command.id === InsertRowCommand.id && command.params !== undefined;

const tablesOf = (injector: Injector, unitId: string, sheetId: string): readonly Table[] =>
  injector.get(TableManager).getTablesBySubunitId(unitId, sheetId);

function sheetOf({ api }: Grid, sheetId: string): FWorksheet {
  const sheet = api.getActiveWorkbook()?.getSheetBySheetId(sheetId);
  if (!sheet) throw new Error('The sheet of this table is gone.');
  return sheet;
}

/** Widens a table down to a row. */
function widened(table: Table, unitId: string, last: number): Mutations {
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

/** What the new rows take over from the row above them, or at the top from the one below. */
function filled(grid: Grid, injector: Injector, table: Table, rows: Rows, before: RulesBefore): Mutations {
  const { startRow, startColumn, endColumn } = table.getRange();
  const model = rows.first - 1 > startRow ? rows.first - 1 : rows.last + 1;
  const sheet = sheetOf(grid, table.getSubunitId());
  const unitId = before.unitId;
  const lexer = injector.get(LexerTreeBuilder);
  const cellValue: Record<number, Record<number, ICellData>> = {};
  for (let row = rows.first; row <= rows.last; row++) {
    for (let column = startColumn; column <= endColumn; column++) {
      const range = sheet.getRange(model, column);
      const own = sheet.getRange(row, column).getCellData();
      const formula = range.getFormula();
      const style = range.getCellStyleData();
      (cellValue[row] ??= {})[column] = {
        ...(style ? { s: style } : {}),
        ...(formula && isBlank(own) ? { f: lexer.moveFormulaRefOffset(formula, 0, row - model) } : {}),
      };
    }
  }
  const at = { unitId, subUnitId: table.getSubunitId() };
  return joined([
    { redos: [{ id: SetRangeValuesMutation.id, params: { ...at, cellValue } }], undos: [] },
    widenRules(injector, before, { rows, model, startColumn, endColumn }),
  ]);
}

/** Typing into the free row right below a table makes it a row of the table. */
function typedBelow(grid: Grid, injector: Injector, params: ISetRangeValuesMutationParams): Mutations {
  const { unitId, subUnitId, cellValue } = params;
  const typed = Object.entries(cellValue ?? {}).flatMap(([row, cells]) =>
    Object.entries((cells ?? {}) as Record<number, ICellData | null>).flatMap(([column, cell]) =>
      isBlank(cell) ? [] : [{ row: +row, column: +column }],
    ),
  );
  const [first] = typed;
  if (!first || typed.some(({ row }) => row !== first.row)) return NOTHING;
  const table = tablesOf(injector, unitId, subUnitId).find((each) => {
    const { endRow, startColumn, endColumn } = each.getRange();
    return (
      endRow + 1 === first.row && typed.every(({ column }) => column >= startColumn && column <= endColumn)
    );
  });
  if (!table) return NOTHING;
  const { startColumn, endColumn } = table.getRange();
  const sheet = sheetOf(grid, subUnitId);
  const own = new Set(typed.map(({ column }) => column));
  for (let column = startColumn; column <= endColumn; column++)
    if (!own.has(column) && !isBlank(sheet.getRange(first.row, column).getCellData())) return NOTHING;
  const rows = { first: first.row, last: first.row };
  const fill = filled(grid, injector, table, rows, rulesOf(injector, unitId, subUnitId));
  const cleared = Object.fromEntries(
    Array.from({ length: endColumn - startColumn + 1 }, (_, i) => [
      startColumn + i,
      { s: null, v: null, f: null },
    ]),
  );
  return joined([
    widened(table, unitId, first.row),
    fill,
    {
      redos: [],
      undos: [
        { id: SetRangeValuesMutation.id, params: { unitId, subUnitId, cellValue: { [first.row]: cleared } } },
      ],
    },
  ]);
}
