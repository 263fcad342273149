import { Refusal } from './wire';

/** A block of cells, counted from 0. */
export interface Block {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

const columnName = (column: number): string =>
  (column < 26 ? '' : columnName(Math.floor(column / 26) - 1)) + String.fromCharCode(65 + (column % 26));
const columnIndex = (letters: string): number =>
  [...letters].reduce((n, letter) => n * 26 + letter.charCodeAt(0) - 64, 0) - 1;

export const addressOf = (row: number, column: number): string => `${columnName(column)}${row + 1}`;
export const rangeText = ({ row, column, rows, columns }: Block): string =>
  `${addressOf(row, column)}:${addressOf(row + rows - 1, column + columns - 1)}`;

/** By their addresses: each cell that is written is asked for many times. */
const known = new Map<string, Block>();
export function blockAt(address: string): Block {
  const before = known.get(address);
  if (before) return before;
  const block = readBlock(address);
  known.set(address, block);
  return block;
}
function readBlock(address: string): Block {
  const [, c1, r1, c2 = c1, r2 = r1] = /^\$?([A-Z]+)\$?(\d+)(?::\$?([A-Z]+)\$?(\d+))?$/i.exec(address) ?? [];
  if (c1 === undefined || r1 === undefined || c2 === undefined || r2 === undefined)
    throw new Refusal('InvalidArgument', `no address: ${address}`);
  const [left, right] = [columnIndex(c1.toUpperCase()), columnIndex(c2.toUpperCase())];
  return { row: Number(r1) - 1, column: left, rows: Number(r2) - Number(r1) + 1, columns: right - left + 1 };
}

/** The addresses of a block's cells, row by row. */
export function addresses({ row, column, rows, columns }: Block): string[] {
  const found: string[] = [];
  for (let r = row; r < row + rows; r++)
    for (let c = column; c < column + columns; c++) found.push(addressOf(r, c));
  return found;
}

export const overlap = (a: Block, b: Block): boolean =>
  a.row < b.row + b.rows &&
  b.row < a.row + a.rows &&
  a.column < b.column + b.columns &&
  b.column < a.column + a.columns;
