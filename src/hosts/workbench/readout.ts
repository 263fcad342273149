import { type CellValue, DEFAULT_STYLES, HorizontalAlign, WrapStrategy } from '@univerjs/core';
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

/** The room that a cell has for what it shows, in pixels at 100 %, and the letters that it is drawn in. */
export interface CellRoom {
  readonly width: number;
  readonly height: number;
  readonly font: string;
  readonly wraps: boolean;
  /** Words that are wider go on to the left. */
  readonly isAtRight: boolean;
}

export interface CellLook {
  readonly fill: string | undefined;
  readonly ink: string | undefined;
  readonly bold: boolean;
}

/** The page's read-out for tests and benches; it changes nothing. */
export interface Readout {
  cell(a1: string): CellReadout;
  /** A cell's colours and weight as it is drawn, with what its conditions add. */
  look(a1: string): CellLook;
  room(a1: string): CellRoom;
  /** The middle of what is seen of a cell, in pixels of the page, as the sheet is scrolled and zoomed now. */
  place(a1: string): { readonly x: number; readonly y: number };
  selected(): string;
  /** How many rows the sheet in view has, and columns. */
  extent(): { readonly rows: number; readonly columns: number };
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
    look(a1) {
      const range = rangeAt(a1);
      const cell = workbook().getActiveSheet().getSheet().getCell(range.getRow(), range.getColumn());
      const style = workbook().getWorkbook().getStyles().getStyleByCell(cell);
      return {
        fill: style?.bg?.rgb ?? undefined,
        ink: style?.cl?.rgb ?? undefined,
        bold: Boolean(style?.bl),
      };
    },
    room(a1) {
      const range = rangeAt(a1);
      const sheet = workbook().getActiveSheet();
      const [row, column] = [range.getRow(), range.getColumn()];
      const { startRow, endRow, startColumn, endColumn } =
        sheet.getSheet().getMergedCell(row, column) ?? range.getRange();
      const sum = (from: number, to: number, sizeOf: (i: number) => number): number =>
        Array.from({ length: to - from + 1 }, (_, i) => sizeOf(from + i)).reduce((a, b) => a + b, 0);
      const { ff, fs, bl, it, tb, ht } = { ...DEFAULT_STYLES, ...range.getCellStyleData() };
      return {
        width: sum(startColumn, endColumn, (i) => sheet.getColumnWidth(i)),
        height: sum(startRow, endRow, (i) => sheet.getRowHeight(i)),
        font: `${it ? 'italic ' : ''}${bl ? 'bold ' : ''}${(fs * 96) / 72}px ${ff}`,
        wraps: tb === WrapStrategy.WRAP,
        isAtRight: ht === HorizontalAlign.RIGHT,
      };
    },
    place: (a1) => cellPlace(grid, rangeAt(a1)),
    extent() {
      const sheet = workbook().getActiveSheet();
      return { rows: sheet.getMaxRows(), columns: sheet.getMaxColumns() };
    },
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
