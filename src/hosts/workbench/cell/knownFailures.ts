import type { CellValue } from '@univerjs/core';
import type { Failure, FailureReport } from '../../../engine/functions';

/** What the engine last told about each cell. */
export class KnownFailures {
  readonly #byCell = new Map<string, Failure>();

  take(report: FailureReport): void {
    const cell = key(report.sheetId, report.row, report.column);
    if ('cleared' in report) this.#byCell.delete(cell);
    else this.#byCell.set(cell, report);
  }

  /** The failure behind the value a cell shows. A cell typed over shows another value, and nobody told us. */
  behind(value: CellValue | null, sheetId: string, row: number, column: number): Failure | undefined {
    const failure = this.#byCell.get(key(sheetId, row, column));
    return failure?.code === value ? failure : undefined;
  }
}

const key = (sheetId: string, row: number, column: number): string => `${sheetId}!${row},${column}`;
