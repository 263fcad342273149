import type { ICommandInfo, IRange } from '@univerjs/core';
import {
  type IInsertColCommandParams,
  type IInsertRowCommandParams,
  InsertColCommand,
  InsertRowCommand,
  RemoveColCommand,
  RemoveRowCommand,
} from '@univerjs/preset-sheets-core';
import type { Grid } from '../grid/grid';
import { interceptors } from '../grid/inside';
import { registerSheetData } from '../grid/sheetData';
import { chartAfter, type Edit } from './afterEdit';
import { chartChange } from './setCharts';

const rowsOf = ({ startRow, endRow }: IRange) => ({ at: startRow, count: endRow - startRow + 1 });
const columnsOf = ({ startColumn, endColumn }: IRange) => ({
  at: startColumn,
  count: endColumn - startColumn + 1,
});

/** What an edit of the grid does to the rows or columns of a sheet; nothing for all other edits. */
function editOf({ id, params }: ICommandInfo): Edit | undefined {
  const range = (params as { range?: IRange } | undefined)?.range;
  if (!range) return undefined;
  const [rows, columns] = [rowsOf(range), columnsOf(range)];
  if (id === InsertRowCommand.id) return { along: 'row', ...rows };
  if (id === RemoveRowCommand.id) return { along: 'row', ...rows, count: -rows.count };
  if (id === InsertColCommand.id) return { along: 'column', ...columns };
  if (id === RemoveColCommand.id) return { along: 'column', ...columns, count: -columns.count };
  return undefined;
}

/** Moves charts, and the plain cells that they draw, with rows and columns that come and go: in the same step. */
export function letChartsFollow(grid: Grid): void {
  registerSheetData(grid);
  interceptors(grid).interceptCommand({
    getMutations(command) {
      const edit = editOf(command);
      const workbook = grid.api.getActiveWorkbook();
      if (!edit || !workbook) return { redos: [], undos: [] };
      // An edit without the name of its sheet is one of the sheet in view.
      const { subUnitId } = command.params as Partial<IInsertRowCommandParams & IInsertColCommandParams>;
      const id = subUnitId ?? workbook.getActiveSheet().getSheetId();
      const change = chartChange(grid, id, (chart) => chartAfter(chart, edit));
      return change ? { redos: [change.redo], undos: [change.undo] } : { redos: [], undos: [] };
    },
  });
}
