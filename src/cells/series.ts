import type { Arg } from '../catalogue/types';
import type { Quantity } from '../catalogue/quantities';
import { fail, type Fail } from '../exposure/core/result';
import { type CellError, isCellError } from '../formula/errors';
import { cellRange } from './cellRange';
import { BLANK, readQuantity } from './quantityReader';

/** One cell as a plain number as typed: no marks, and no whole number is taken for a date. A blank cell is 0. */
function plainNumber(cell: unknown, quantity: Quantity, name: () => string): number | Fail | CellError {
  if (Number.isFinite(cell)) return cell as number;
  if (isCellError(cell)) return cell;
  const read = readQuantity(cell, quantity, name(), true);
  return read === BLANK ? 0 : read;
}

/** Fills in the numbers of a column whose rows hold one number each, and says how many rows from the first do. */
function fillPlain(numbers: Float64Array, rows: readonly unknown[]): number {
  for (let i = 0; i < rows.length; i++) {
    const row = rows[i];
    const cell: unknown = Array.isArray(row) && row.length === 1 ? row[0] : undefined;
    if (!Number.isFinite(cell)) return i;
    numbers[i] = cell as number;
  }
  return rows.length;
}

/**
 * One column (or row) of a recording.
 *
 * @returns a number a cell, or the first error cell or refusal among them.
 */
export function readSeries(given: unknown, arg: Arg, quantity: Quantity): Float64Array | Fail | CellError {
  if (Array.isArray(given) && given.length > 0) {
    const plain = new Float64Array(given.length);
    if (fillPlain(plain, given) === given.length) return plain;
  }
  return readMixedSeries(given, arg, quantity);
}

function readMixedSeries(given: unknown, arg: Arg, quantity: Quantity): Float64Array | Fail | CellError {
  const grid = cellRange(given);
  if (grid.rows > 1 && grid.columns > 1)
    return fail(
      'unreadable',
      `${arg.name} must be one column, not ${grid.rows} rows by ${grid.columns} columns.`,
    );
  const length = grid.rows * grid.columns;
  const upright = grid.columns === 1;
  const numbers = new Float64Array(length);
  for (let i = 0; i < length; i++) {
    const cell = upright ? grid.at(i, 0) : grid.at(0, i);
    const value = plainNumber(cell, quantity, () => `${arg.name} (number ${i + 1} of the column)`);
    if (typeof value !== 'number') return value;
    numbers[i] = value;
  }
  return numbers;
}

/** Rows and columns of numbers, or the first error cell or refusal among them. */
export function readRows(
  given: unknown,
  arg: Arg,
  quantity: Quantity,
): readonly (readonly number[])[] | Fail | CellError {
  const grid = cellRange(given);
  const rows: number[][] = [];
  for (let r = 0; r < grid.rows; r++) {
    const row: number[] = [];
    for (let c = 0; c < grid.columns; c++) {
      const place = () => `${arg.name} (row ${r + 1}, column ${c + 1})`;
      const value = plainNumber(grid.at(r, c), quantity, place);
      if (typeof value !== 'number') return value;
      row.push(value);
    }
    rows.push(row);
  }
  return rows;
}
