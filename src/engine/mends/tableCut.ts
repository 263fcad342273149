/**
 * Rows and columns that are deleted from outside of a table into it: the library (0.25.1) takes as many from the table as are
 * deleted in all. A table that begins behind the first deleted column moves by all of them, out of the sheet and off its
 * columns; and one that ends before the last deleted row loses rows that are still there. Only what lies in it is taken from
 * it, and it moves by what lies in front of it.
 *
 * For @univerjs/sheets and @univerjs/sheets-table 0.25.1.
 */
import { CommandType, ICommandService, type IRange, type Univer } from '@univerjs/core';
import { RemoveColMutation, RemoveRowMutation } from '@univerjs/sheets';
import { TableManager } from '@univerjs/sheets-table';
import { replaceMethod } from './replaceMethod';

interface Removal {
  readonly unitId: string;
  readonly isRows: boolean;
  readonly range: IRange;
}
interface Config {
  readonly updateRange?: { readonly newRange: IRange };
  readonly rowColOperation?: unknown;
}

/** What the edit of a workbook that is on its way has deleted; the library adjusts the tables behind it. */
const removals = new Map<string, Removal>();
/** Tables that have yet to move back by so many columns, when their first ones are taken out. */
const waiting = new Map<string, number>();

/** A table after columns in front of it went away. Where its first ones did as well it stays until they are taken out. */
function inPlace(tableId: string, old: IRange, { range }: Removal): IRange {
  const before = Math.min(range.endColumn + 1, old.startColumn) - range.startColumn;
  if (range.endColumn < old.startColumn)
    return { ...old, startColumn: old.startColumn - before, endColumn: old.endColumn - before };
  waiting.set(tableId, before);
  return old;
}

/** The last row of a table after rows of it went away; its heading stays. */
function lastRow(old: IRange, { range }: Removal): number {
  const taken = Math.min(range.endRow, old.endRow) - Math.max(range.startRow, old.startRow) + 1;
  return old.endRow - Math.max(0, taken);
}

replaceMethod<[unitId: string, tableId: string, change: { readonly newRange: IRange }], void>(
  TableManager.prototype,
  'updateTableRange',
  (original) =>
    function (unitId, tableId, change) {
      const old = (this as TableManager).getTableById(unitId, tableId)?.getRange();
      const cut = removals.get(unitId);
      const moves = old !== undefined && change.newRange.startColumn < old.startColumn;
      const newRange = cut && !cut.isRows && moves ? inPlace(tableId, old, cut) : change.newRange;
      original.call(this, unitId, tableId, { newRange });
    },
);
replaceMethod<[unitId: string, tableId: string, config: Config], void>(
  TableManager.prototype,
  'setTableByConfig',
  (original) =>
    function (unitId, tableId, config) {
      const table = (this as TableManager).getTableById(unitId, tableId);
      const old = table?.getRange();
      const { newRange } = config.updateRange ?? {};
      const cut = removals.get(unitId);
      if (old && newRange && cut?.isRows && newRange.endRow < old.endRow) {
        const updateRange = { newRange: { ...newRange, endRow: lastRow(old, cut) } };
        original.call(this, unitId, tableId, { ...config, updateRange });
        return;
      }
      original.call(this, unitId, tableId, config);
      const back = config.rowColOperation ? waiting.get(tableId) : undefined;
      if (!table || back === undefined) return;
      waiting.delete(tableId);
      const { startColumn, endColumn, ...rows } = table.getRange();
      const moved = { ...rows, startColumn: startColumn - back, endColumn: endColumn - back };
      removals.delete(unitId);
      (this as TableManager).updateTableRange(unitId, tableId, { newRange: moved });
    },
);

/** Hears what is deleted. */
export function hearWhatIsCut(univer: Univer): void {
  univer
    .__getInjector()
    .get(ICommandService)
    .beforeCommandExecuted(({ id, type, params }) => {
      const isRows = id === RemoveRowMutation.id;
      const { unitId = '', range } = (params ?? {}) as Partial<Removal>;
      if (range && (isRows || id === RemoveColMutation.id)) removals.set(unitId, { unitId, isRows, range });
      // Another edit begins.
      else if (type === CommandType.COMMAND) removals.clear();
    });
}
