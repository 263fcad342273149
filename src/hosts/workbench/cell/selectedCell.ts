import type { FWorkbook, FWorksheet } from '@univerjs/sheets/facade';
import { cellError, type ErrorCode, errorFromText } from '../../../formula/errors';
import type { CellRows } from '../../../explain/explain';
import { type CellArea, parseReference, type TableColumns } from '../../../formula/reference';
import type { SelectedCell } from '../../../pane/host';
import type { Grid } from '../grid/grid';
import type { KnownFailures } from './knownFailures';
import { shownValue } from '../grid/shownValue';

/** More cells than this are not gone through only to explain the first of them. */
const MOST_CELLS = 10_000;

/** The cell that is selected, with the values behind the references of its formula, as they are now. */
export class SelectedCellReader {
  readonly #grid: Grid;
  readonly #failures: KnownFailures;

  constructor(grid: Grid, failures: KnownFailures) {
    this.#grid = grid;
    this.#failures = failures;
  }

  selected(): SelectedCell | undefined {
    const workbook = this.#grid.api.getActiveWorkbook();
    const cell = workbook?.getActiveCell();
    if (!workbook || !cell) return undefined;
    const [row, column] = [cell.getRow(), cell.getColumn()];
    const sheet = workbook.getActiveSheet();
    const shown = cell.getDisplayValue() || (shownValue(this.#grid, sheet.getSheetId(), row, column) ?? '');
    return {
      address: cell.getA1Notation(),
      formula: cell.getFormula(),
      shown: typeof shown === 'boolean' ? String(shown).toUpperCase() : String(shown),
      look: (text) => this.#look(text, workbook, sheet, row, column),
    };
  }

  /** The values behind a reference, as a formula on the sheet in view would write it. */
  values(reference: string): CellRows | undefined {
    const workbook = this.#grid.api.getActiveWorkbook();
    return workbook ? this.#look(reference, workbook, workbook.getActiveSheet(), -1, -1) : undefined;
  }

  #look(
    text: string,
    workbook: FWorkbook,
    sheet: FWorksheet,
    row: number,
    column: number,
  ): CellRows | undefined {
    const reference = parseReference(text);
    if (reference?.kind === 'cells') return this.#cells(reference, workbook, sheet);
    if (reference?.kind === 'table') return this.#columns(reference, workbook, sheet, row, column);
    // The grid knows names of the workbook alone.
    if (reference === undefined || reference.sheet !== undefined) return undefined;
    const named = workbook.getDefinedName(reference.name)?.getFormulaOrRefString().replace(/^=/, '');
    const area = named === undefined ? undefined : parseReference(named);
    return area?.kind === 'cells' ? this.#cells(area, workbook, sheet) : undefined;
  }

  #cells(area: CellArea, workbook: FWorkbook, own: FWorksheet): CellRows | undefined {
    const sheet = area.sheet === undefined ? own : workbook.getSheetByName(area.sheet);
    if (!sheet || area.rows * area.columns > MOST_CELLS) return undefined;
    return Array.from({ length: area.rows }, (_, r) =>
      Array.from({ length: area.columns }, (__, c) =>
        this.#content(sheet.getSheetId(), area.row + r, area.column + c),
      ),
    );
  }

  #columns(
    { table, first, last, rows }: TableColumns,
    workbook: FWorkbook,
    own: FWorksheet,
    row: number,
    column: number,
  ): CellRows | undefined {
    const isAround = ({ startRow, endRow, startColumn, endColumn }: Area): boolean =>
      row >= startRow && row <= endRow && column >= startColumn && column <= endColumn;
    const found = workbook
      .getTableList()
      .find(({ name, subUnitId, range }) =>
        table === undefined
          ? subUnitId === own.getSheetId() && isAround(range)
          : name.toLowerCase() === table.toLowerCase(),
      );
    if (!found) return undefined;
    const { startRow, endRow, startColumn } = found.range;
    const titles = found.columns.map(({ displayName }) => displayName.toLowerCase());
    const [from, to] = [first, last].map((name) => titles.indexOf(name.toLowerCase())) as [number, number];
    const isOutside = row <= startRow || row > endRow;
    if (from < 0 || to < from || (rows === 'this' && isOutside)) return undefined;
    const sheet = workbook.getSheetBySheetId(found.subUnitId);
    if (!sheet) return undefined;
    return this.#cells(
      {
        kind: 'cells',
        row: rows === 'this' ? row : startRow + 1,
        column: startColumn + from,
        rows: rows === 'this' ? 1 : endRow - startRow,
        columns: to - from + 1,
      },
      workbook,
      sheet,
    );
  }

  /** What a cell holds, with the sentence where one of our functions refused it. */
  #content(sheetId: string, row: number, column: number): unknown {
    const value = shownValue(this.#grid, sheetId, row, column);
    const failure = this.#failures.behind(value, sheetId, row, column);
    return failure ? cellError(failure.code as ErrorCode, failure.message) : errorFromText(value);
  }
}

interface Area {
  readonly startRow: number;
  readonly endRow: number;
  readonly startColumn: number;
  readonly endColumn: number;
}
