import { type ICellData, type ICommandInfo, Direction } from '@univerjs/core';
import {
  type IInsertRowCommandParams,
  InsertRowCommand,
  type ISetRangeValuesMutationParams,
  SetRangeValuesCommand,
  SetRangeValuesMutation,
} from '@univerjs/preset-sheets-core';
import type { Grid } from '../grid/grid';
import { commands, interceptors } from '../grid/inside';
import { tablesOn } from '../grid/tables';
import { growForPaste, isFreeBelow } from './growForPaste';
import { filled, grown, isBlank, joined, type Mutations, NOTHING, widened } from './newTableRows';
import { type RulesBefore, rulesOf } from './widenRules';

/**
 * A row that comes into a table is one of the table: the grid widens the table, and here the row gets the formulas,
 * formats, input rules and conditions of its neighbour, in the same step, so that undo takes all of it back.
 */
export function growTables(grid: Grid): void {
  let before: RulesBefore | undefined;
  let ready: ReadonlySet<string> = new Set();
  // What is typed stands there by the time that anything else is asked.
  commands(grid).beforeCommandExecuted(({ id, params }) => {
    if (id !== SetRangeValuesCommand.id) return;
    const sheetId = (params as Partial<ISetRangeValuesMutationParams> | undefined)?.subUnitId;
    ready = readyToGrow(grid, sheetId ?? grid.api.getActiveWorkbook()?.getActiveSheet().getSheetId() ?? '');
  });
  interceptors(grid).interceptCommand({
    priority: 1,
    getMutations(command) {
      if (isInsertRow(command)) before = rulesOf(grid, command.params.subUnitId);
      if (command.id === SetRangeValuesCommand.id)
        return typedBelow(grid, command.params as ISetRangeValuesMutationParams, ready);
      return NOTHING;
    },
  });
  interceptors(grid).interceptAfterCommand({
    getMutations(command) {
      if (!isInsertRow(command) || !before) return NOTHING;
      const { subUnitId, range, direction } = command.params;
      const rows = { first: range.startRow, last: range.endRow };
      const known = before;
      return joined(
        tablesOn(grid, subUnitId).map((table) => {
          const { startRow, endRow } = table.getRange();
          const within = rows.first > startRow && rows.last <= endRow;
          const below = rows.first === endRow + 1 && direction === Direction.DOWN;
          if (!within && !below) return NOTHING;
          const wider = below ? widened(grid, table, rows.last) : NOTHING;
          return joined([wider, filled(grid, table, rows, known)]);
        }),
      );
    },
  });
  growForPaste(grid);
}

const isInsertRow = (command: ICommandInfo): command is ICommandInfo & { params: IInsertRowCommandParams } =>
  command.id === InsertRowCommand.id && command.params !== undefined;

/** The tables of a sheet below which there is a free row. */
const readyToGrow = (grid: Grid, sheetId: string): ReadonlySet<string> =>
  new Set(
    tablesOn(grid, sheetId)
      .filter((table) => isFreeBelow(grid, table, { sheetId, last: table.getRange().endRow + 1 }))
      .map((table) => table.getId()),
  );

/** Typing into the free row right below a table makes it a row of the table. */
function typedBelow(
  grid: Grid,
  params: ISetRangeValuesMutationParams,
  ready: ReadonlySet<string>,
): Mutations {
  const { unitId, subUnitId, cellValue } = params;
  const typed = Object.entries(cellValue ?? {}).flatMap(([row, cells]) =>
    Object.entries((cells ?? {}) as Record<number, ICellData | null>).flatMap(([column, cell]) =>
      isBlank(cell) ? [] : [{ row: +row, column: +column }],
    ),
  );
  const [first] = typed;
  if (!first || typed.some(({ row }) => row !== first.row)) return NOTHING;
  const table = tablesOn(grid, subUnitId).find((each) => {
    const { endRow, startColumn, endColumn } = each.getRange();
    return (
      endRow + 1 === first.row && typed.every(({ column }) => column >= startColumn && column <= endColumn)
    );
  });
  if (!table || !ready.has(table.getId())) return NOTHING;
  const { startColumn, endColumn } = table.getRange();
  // What was typed stands there already: undo clears it.
  const cleared = Object.fromEntries(
    Array.from({ length: endColumn - startColumn + 1 }, (_, i) => [
      startColumn + i,
      { s: null, v: null, f: null },
    ]),
  );
  const clear = {
    id: SetRangeValuesMutation.id,
    params: { unitId, subUnitId, cellValue: { [first.row]: cleared } },
  };
  return joined([grown(grid, table, first.row), { redos: [], undos: [clear] }]);
}
