import { columnName } from '../../src/formula/address';
import type { TestCell } from '../engine/book';
import { SHEET } from './sheet';

/** Where the formulas stand: right of the cells that they read, in columns with an empty one between. */
const TOP = 0;
const ROWS = 58;
const COLUMNS = [20, 24];
const ON_A_SHEET = ROWS * COLUMNS.length;

export interface Standing {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly a1: string;
}

/** The place of each formula: sheets are filled one after the other, so that a formula may spoil those that follow on its own. */
export function placeOf(index: number): Standing {
  const within = index % ON_A_SHEET;
  const row = TOP + (within % ROWS);
  const column = COLUMNS[Math.floor(within / ROWS)] ?? 0;
  return {
    sheet: `Sheet${Math.floor(index / ON_A_SHEET)}`,
    row,
    column,
    a1: `${columnName(column)}${row + 1}`,
  };
}

/** The sheets of a workbook with all formulas: the same cells on each. */
export function sheetsOf(formulas: readonly string[]): Record<string, TestCell[][]> {
  const sheets: Record<string, TestCell[][]> = {};
  for (const [index, formula] of formulas.entries()) {
    const { sheet, row, column } = placeOf(index);
    const rows = (sheets[sheet] ??= Array.from({ length: ROWS + TOP }, (_, r) => [...(SHEET[r] ?? [])]));
    const cells = (rows[row] ??= []);
    while (cells.length < column) cells.push(null);
    cells[column] = formula;
  }
  return sheets;
}
