/**
 * SUBTOTAL and AGGREGATE leave out the rows that a filter hides. The engine asks a service for them that nobody answers in the
 * thread that calculates: here they come with each calculation, beside the rows that are hidden by hand.
 *
 * For @univerjs/engine-formula 0.25.1.
 */
import type { BooleanNumber } from '@univerjs/core';
import { FormulaCurrentConfigService } from '@univerjs/engine-formula';
import { replaceMethod } from './replaceMethod';

/** What a calculation is told of a row that is not shown. */
export interface UnseenRow {
  readonly hd: BooleanNumber.TRUE;
  /** Whether a filter hides it. */
  readonly isFiltered: boolean;
}

/** By workbook, sheet and row. */
export type UnseenRows = Record<string, Record<string, Record<number, UnseenRow>>>;

interface Configured {
  getUnitData(): Readonly<
    Record<
      string,
      Readonly<Record<string, { readonly rowData?: Readonly<Record<number, Partial<UnseenRow>>> }>>
    >
  >;
}

replaceMethod<[unitId: string, sheetId: string, startRow: number, endRow: number], readonly number[]>(
  FormulaCurrentConfigService.prototype,
  'getFilteredOutRows',
  () =>
    function (unitId, sheetId, startRow, endRow) {
      const rows = (this as Configured).getUnitData()[unitId]?.[sheetId]?.rowData ?? {};
      return Object.entries(rows)
        .filter(([row, { isFiltered }]) => isFiltered && startRow <= Number(row) && Number(row) <= endRow)
        .map(([row]) => Number(row));
    },
);
