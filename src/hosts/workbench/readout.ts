import type { CellValue } from '@univerjs/core';
import { address } from '../../formula/address';
import { cellPlace } from './grid/cellPlace';
import type { Grid } from './grid/grid';
import type { KnownFailures } from './cell/knownFailures';
import { nextAnswers } from './grid/ready';
import { shownValue } from './grid/shownValue';

/** One cell of the sheet in view: its exact value, and the text and sentence a person sees. */
export interface CellReadout {
  readonly formula: string;
  readonly value: CellValue | null;
  readonly text: string;
  readonly message: string | undefined;
}

/** The page's read-out for tests and benches; it changes nothing. */
export interface Readout {
  cell(a1: string): CellReadout;
  /** The middle of the cell, in pixels of the page. */
  place(a1: string): { readonly x: number; readonly y: number };
  selected(): string;
  /** Names of the sheets, in their order; of the tables, with their areas; and of the sheet in view. */
  sheets(): readonly string[];
  tables(): Readonly<Record<string, string>>;
  inView(): string;
  /** Settles when the next calculation has reached the cells. */
  calculated(): Promise<void>;
}

declare global {
  interface Window {
    sweeptable: Readout;
  }
}

export function readout(grid: Grid, failures: KnownFailures): Readout {
  const workbook = () => {
    const active = grid.api.getActiveWorkbook();
    if (!active) throw new Error('No workbook is open.');
    return active;
  };
  const rangeAt = (a1: string) => workbook().getActiveSheet().getRange(a1);

  return {
    cell(a1) {
      const range = rangeAt(a1);
      const place = [range.getSheetId(), range.getRow(), range.getColumn()] as const;
      const value = shownValue(grid, ...place);
      return {
        formula: range.getFormula(),
        value,
        text: range.getDisplayValue(),
        message: failures.behind(value, ...place)?.message,
      };
    },
    place: (a1) => cellPlace(rangeAt(a1)),
    selected: () => workbook().getActiveRange()?.getA1Notation() ?? '',
    sheets: () =>
      workbook()
        .getSheets()
        .map((sheet) => sheet.getSheetName()),
    tables: () =>
      Object.fromEntries(
        workbook()
          .getTableList()
          .map(({ name, range: { startRow, endRow, startColumn, endColumn } }) => [
            name,
            `${address({ row: startRow, column: startColumn })}:${address({ row: endRow, column: endColumn })}`,
          ]),
      ),
    inView: () => workbook().getActiveSheet().getSheetName(),
    calculated: () => nextAnswers(grid.api),
  };
}
