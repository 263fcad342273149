import { Direction, ICommandService, type IAccessor, IUniverInstanceService } from '@univerjs/core';
import {
  getSheetCommandTarget,
  InsertRowCommand,
  RemoveRowCommand,
  SheetsSelectionsService,
} from '@univerjs/preset-sheets-core';
import { SheetTableInsertRowCommand, SheetTableRemoveRowCommand } from '@univerjs/preset-sheets-table';

function selectedRows(accessor: IAccessor) {
  const target = getSheetCommandTarget(accessor.get(IUniverInstanceService));
  const selections = accessor.get(SheetsSelectionsService).getCurrentSelections();
  const range = selections.length === 1 ? selections[0]?.range : undefined;
  if (!target || !range) return undefined;
  const { unitId, subUnitId, worksheet } = target;
  return {
    unitId,
    subUnitId,
    range: {
      startRow: range.startRow,
      endRow: range.endRow,
      startColumn: 0,
      endColumn: worksheet.getColumnCount() - 1,
    },
  };
}

/**
 * The grid's "table row" commands move only the cells below the table's own columns, and so tear the blocks of a sheet
 * apart. Here they insert and delete whole rows.
 */
export function insertWholeRows(): void {
  SheetTableInsertRowCommand.handler = (accessor) => {
    const rows = selectedRows(accessor);
    if (!rows) return false;
    return accessor
      .get(ICommandService)
      .executeCommand(InsertRowCommand.id, { ...rows, direction: Direction.UP });
  };
  SheetTableRemoveRowCommand.handler = (accessor) => {
    const rows = selectedRows(accessor);
    return rows ? accessor.get(ICommandService).executeCommand(RemoveRowCommand.id, rows) : false;
  };
}
