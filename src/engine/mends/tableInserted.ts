/**
 * A column that comes into a table with one of the sheet gets a name in 0.25.1 that another may have, and its heading stays
 * empty: two names that are not the same, which files may not have. And the columns are kept in the order in which they
 * came: a table that is copied, stored, or brought back by undoing has its headings in that order above cells in another. New
 * columns get a name of their own here, which stands in their heading, and all are kept as they stand.
 *
 * For @univerjs/sheets-table 0.25.1.
 */
import {
  CellValueType,
  generateRandomId,
  ICommandService,
  type ICellData,
  type Univer,
} from '@univerjs/core';
import { SetRangeValuesMutation } from '@univerjs/sheets';
import { SetSheetTableMutation, TableManager } from '@univerjs/sheets-table';
import { replaceMethod } from './replaceMethod';

interface Operation {
  readonly operationType: 'insert' | 'delete';
  readonly rowColType: 'row' | 'column';
  readonly index: number;
  readonly count: number;
  readonly columnsJson?: readonly object[];
}
interface Change {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly tableId: string;
  readonly config: { readonly rowColOperation?: Operation };
}

const insertsColumns = (operation: Operation | undefined): operation is Operation =>
  operation?.operationType === 'insert' && operation.rowColType === 'column';

/** So many names that no column has, as spreadsheets give them. */
function newNames(taken: readonly string[], count: number): string[] {
  const names: string[] = [];
  for (let number = 1; names.length < count; number++)
    if (!taken.some((name) => name.toLowerCase() === `column${number}`)) names.push(`Column${number}`);
  return names;
}

replaceMethod<[unitId: string, tableId: string, operation: Operation], void>(
  TableManager.prototype,
  'operationTableRowCol',
  (original) =>
    function (unitId, tableId, operation) {
      const table = (this as TableManager).getTableById(unitId, tableId);
      if (!table || !insertsColumns(operation)) {
        original.call(this, unitId, tableId, operation);
        return;
      }
      const { columns } = table.getTableInfo();
      const named = newNames(
        columns.map(({ displayName }) => displayName),
        operation.count,
      ).map((displayName) => ({ ...columns[0], id: generateRandomId(), displayName, formula: '' }));
      original.call(this, unitId, tableId, { ...operation, columnsJson: operation.columnsJson ?? named });
      table.setColumns(table.getTableInfo().columns);
    },
);

/** Writes the names of columns that come into tables into their headings. They go again with their columns. */
export function writeHeadings(univer: Univer): void {
  const injector = univer.__getInjector();
  const commands = injector.get(ICommandService);
  commands.onCommandExecuted(({ id, params }) => {
    if (id !== SetSheetTableMutation.id) return;
    const { unitId, subUnitId, tableId, config } = params as Change;
    const operation = config.rowColOperation;
    if (!insertsColumns(operation) || operation.columnsJson) return;
    const info = injector.get(TableManager).getTableById(unitId, tableId)?.getTableInfo();
    if (!info) return;
    const headings: Record<number, ICellData> = {};
    for (let column = operation.index; column < operation.index + operation.count; column++) {
      const name = info.columns[column - info.range.startColumn]?.displayName;
      if (name !== undefined) headings[column] = { v: name, t: CellValueType.STRING };
    }
    const cellValue = { [info.range.startRow]: headings };
    commands.syncExecuteCommand(SetRangeValuesMutation.id, { unitId, subUnitId, cellValue });
  });
}
