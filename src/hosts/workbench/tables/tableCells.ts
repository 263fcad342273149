import { CellValueType, type ICellData } from '@univerjs/core';
import type { FWorksheet } from '@univerjs/sheets/facade';
import { address } from '../../../formula/address';
import { type Area, area } from '../../../formula/area';
import { errorFromText } from '../../../formula/errors';
import { areaOfGridRange } from '../../../engine/gridRange';
import { at } from '../../../exposure/core/at';
import { type Block, type CellWrite, isSameBlock } from '../../../pane/balance/block';
import { regionAround, tableAt } from '../../../pane/balance/region';
import type { Outcome } from '../../../pane/host';
import { NO_TABLE, NOT_WRITTEN, written as writtenText } from '../../../pane/sentences';
import type { Grid } from '../grid/grid';
import { takeStep } from '../grid/sheetData';
import { shownValue } from '../grid/shownValue';
import { tablesOn } from '../grid/tables';
import { type GridCells, written } from './newTableRows';
import { undoKey } from '../grid/undoKey';

/** More cells than this are no table of points and heads. */
const MOST_CELLS = 10_000;
const TOO_MANY =
  'More cells are selected than a table of points and heads can have. Select a cell of the table, or its cells alone.';

function blockOf(grid: Grid, sheet: FWorksheet, { row, column, rows, columns }: Area): Block {
  const cell = (r: number, c: number) => ({
    value: errorFromText(shownValue(grid, sheet.getSheetId(), r, c) ?? ''),
    isFormula: sheet.getRange(r, c).getFormula() !== '',
  });
  return {
    sheet: sheet.getSheetName(),
    row,
    column,
    cells: Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (__, c) => cell(row + r, column + c)),
    ),
  };
}

/** The cells to read: the table around the chosen cell, all that is chosen, or the filled cells around the one that is. */
function areaToRead(grid: Grid, sheet: FWorksheet): Area | undefined {
  const chosen = grid.api.getActiveWorkbook()?.getActiveRange();
  if (!chosen) return undefined;
  const place = { row: chosen.getRow(), column: chosen.getColumn() };
  const table = tableAt(
    tablesOn(grid, sheet.getSheetId()).map((one) => areaOfGridRange(one.getRange())),
    place,
  );
  if (table) return table;
  const [rows, columns] = [chosen.getHeight(), chosen.getWidth()];
  if (rows * columns > 1) return area(place, rows, columns);
  const [id, height, width] = [sheet.getSheetId(), sheet.getMaxRows(), sheet.getMaxColumns()];
  const isOnSheet = (row: number, column: number): boolean =>
    row >= 0 && column >= 0 && row < height && column < width;
  return regionAround(
    place,
    (row, column) => isOnSheet(row, column) && (shownValue(grid, id, row, column) ?? '') !== '',
  );
}

/** Reads the table that is selected. */
export function readBlock(grid: Grid): Block | { readonly refused: string } {
  const sheet = grid.api.getActiveWorkbook()?.getActiveSheet();
  const found = sheet && areaToRead(grid, sheet);
  if (!sheet || !found) return NO_TABLE;
  return found.rows * found.columns > MOST_CELLS ? { refused: TOO_MANY } : blockOf(grid, sheet, found);
}

const content = (value: CellWrite['value']): ICellData =>
  value === ''
    ? { v: null, t: null, p: null, f: null, si: null }
    : {
        v: value,
        t: typeof value === 'number' ? CellValueType.NUMBER : CellValueType.STRING,
        p: null,
        f: null,
        si: null,
      };

/** Writes into a block that was read, where all its cells still are as they were, in one step that undo takes back. */
export function writeCells(grid: Grid, block: Block, writes: readonly CellWrite[]): Outcome {
  const sheet = grid.api.getActiveWorkbook()?.getSheetByName(block.sheet);
  if (!sheet) return NOT_WRITTEN.gone(block.sheet);
  const now = blockOf(grid, sheet, area(block, block.cells.length, at(block.cells, 0).length));
  if (!isSameBlock(block, now)) return NOT_WRITTEN.changed(block.sheet);
  const cells: GridCells = {};
  const places = writes.map(({ row, column, value }) => {
    const place = { row: block.row + row, column: block.column + column };
    (cells[place.row] ??= {})[place.column] = content(value);
    return address(place);
  });
  const { redos, undos } = written(grid, sheet.getSheetId(), cells);
  takeStep(grid, at(redos, 0), at(undos, 0));
  return { done: `${writtenText(`${at(places, 0)} to ${at(places, places.length - 1)}`, block.sheet)} ${undoKey()} takes it back.` }; // prettier-ignore
}
