/**
 * A table stays where it was when rows or columns are moved from one side of it to the other, though its cells go on or back
 * by as many: the library has it follow what is inserted and deleted, and nothing else.
 *
 * For @univerjs/sheets-table 0.25.1.
 */
import { ICommandService, type IRange, type Univer } from '@univerjs/core';
import { MoveColsMutation, MoveRowsMutation } from '@univerjs/sheets';
import { TableManager } from '@univerjs/sheets-table';

interface Move {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly sourceRange: IRange;
  /** Begins where the lines come in, counted as they were before. */
  readonly targetRange: IRange;
}
type Ends = readonly [first: number, last: number];

/** How far lines go that lie outside of a move, or all within; 0 where the move takes some of them, or goes between them. */
function wayOf([first, last]: Ends, [from, to]: Ends, target: number): number {
  const count = to - from + 1;
  const end = target > to ? target - count : target;
  if (from <= first && last <= to) return end - from;
  if (to < first && target > last) return -count;
  return from > last && target <= first ? count : 0;
}

/** Where a table lies after a move; nothing where it stays. */
function moved(range: IRange, { sourceRange: from, targetRange: to }: Move, isRows: boolean) {
  if (isRows) {
    const way = wayOf([range.startRow, range.endRow], [from.startRow, from.endRow], to.startRow);
    return way === 0 ? undefined : { ...range, startRow: range.startRow + way, endRow: range.endRow + way };
  }
  const way = wayOf([range.startColumn, range.endColumn], [from.startColumn, from.endColumn], to.startColumn);
  if (way === 0) return undefined;
  return { ...range, startColumn: range.startColumn + way, endColumn: range.endColumn + way };
}

/** Has the tables of all sheets follow what is moved. */
export function letTablesFollow(univer: Univer): void {
  const injector = univer.__getInjector();
  injector.get(ICommandService).onCommandExecuted(({ id, params }) => {
    const isRows = id === MoveRowsMutation.id;
    if ((!isRows && id !== MoveColsMutation.id) || !injector.has(TableManager)) return;
    const move = params as Move;
    const tables = injector.get(TableManager);
    for (const table of tables.getTablesBySubunitId(move.unitId, move.subUnitId)) {
      const newRange = moved(table.getRange(), move, isRows);
      if (newRange) tables.updateTableRange(move.unitId, table.getId(), { newRange });
    }
  });
}
