/**
 * Where rows or columns come in or go away in front of a table, all of it moves. The library takes that for a table that is
 * pulled to another size: it drops columns at one side and makes new ones at the other, with other names, and formulas that
 * name a column find none. Moved as a whole it only gets another place.
 *
 * For @univerjs/sheets-table 0.25.1.
 */
import type { IRange } from '@univerjs/core';
import { TableManager } from '@univerjs/sheets-table';
import { replaceMethod } from './replaceMethod';

interface Inside {
  readonly _tableRangeChanged$: { next(change: unknown): void };
}
type Update = [unitId: string, tableId: string, change: { readonly newRange: IRange }];

/** Tables that a person gives another area, by a command: then columns do come and go. */
let isGiven = false;

replaceMethod<unknown[], void>(
  TableManager.prototype,
  'setTableByConfig',
  (original) =>
    function (...args) {
      isGiven = true;
      try {
        original.apply(this, args);
      } finally {
        isGiven = false;
      }
    },
);

replaceMethod<Update, void>(
  TableManager.prototype,
  'updateTableRange',
  (original) =>
    function (unitId, tableId, change) {
      const table = isGiven ? undefined : (this as TableManager).getTableById(unitId, tableId);
      if (!table) {
        original.call(this, unitId, tableId, change);
        return;
      }
      const oldRange = table.getRange();
      const range = change.newRange;
      table.setRange(range);
      const subUnitId = table.getSubunitId();
      (this as unknown as Inside)._tableRangeChanged$.next({ unitId, subUnitId, tableId, range, oldRange });
    },
);
