import { address } from '../../formula/address';
import { isCellError } from '../../formula/errors';
import { at } from '../../exposure/core/at';

/** One cell of the spreadsheet as it stands. */
export interface BlockCell {
  /** Number, text or truth; a CellError; an empty text where nothing stands. */
  readonly value: unknown;
  readonly isFormula: boolean;
}

/** Cells side by side, as they were read. */
export interface Block {
  readonly sheet: string;
  /** Its first cell, counted from 0. */
  readonly row: number;
  readonly column: number;
  readonly cells: readonly (readonly BlockCell[])[];
}

/** What shall stand in a cell of a block; an empty text clears it. */
export interface CellWrite {
  readonly row: number;
  readonly column: number;
  readonly value: string | number;
}

/** The address of a cell of a block, by its place within. */
export const addressIn = (block: Block, row: number, column: number): string =>
  address({ row: block.row + row, column: block.column + column });

/** From the first cell to the last: B4:H12. */
export const areaOf = (block: Block): string =>
  `${addressIn(block, 0, 0)}:${addressIn(block, block.cells.length - 1, at(block.cells, 0).length - 1)}`;

export const cellIn = (block: Block, row: number, column: number): BlockCell =>
  block.cells[row]?.[column] ?? { value: '', isFormula: false };

/** What a cell says, without spaces around it; empty for errors too. */
export function textIn(block: Block, row: number, column: number): string {
  const { value } = cellIn(block, row, column);
  return value === undefined || value === null || isCellError(value) ? '' : String(value).trim();
}

/** Whether two blocks hold the same: what was worked out from the one holds for the other. */
export const isSameBlock = (a: Block, b: Block): boolean =>
  a.sheet === b.sheet && JSON.stringify([a.row, a.column, a.cells]) === JSON.stringify([b.row, b.column, b.cells]); // prettier-ignore
