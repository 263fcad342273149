import { shifter } from '../../../../src/formula/shift';
import { addressOf, blockAt, overlap } from './a1';
import type { Sheet } from './sheet';
import type { Ways } from './ways';

export const isFormula = (cell: unknown): cell is string => typeof cell === 'string' && cell.startsWith('=');
export const isOurs = (formula: string): boolean => formula.toUpperCase().includes('SWEEP.');

/** What a formula shows before it is entered again, or calculated: see the ways of Excel. */
export interface Pending {
  readonly text: unknown;
  readonly value: unknown;
  /** Whether calculating the sheet is enough. */
  readonly isStale: boolean;
}

/** Notes that a formula was entered into a cell, by hand or by a fill. */
function entered(sheet: Sheet, at: string, formula: string, ways: Ways): void {
  sheet.cells.set(at, formula);
  sheet.pending.delete(at);
  if (ways.unregistered !== undefined && isOurs(formula))
    sheet.pending.set(at, { text: '#NAME?', value: ways.unregistered, isStale: false });
  else if (ways.calculation === 'Manual') sheet.pending.set(at, { text: '0', value: 0, isStale: true });
}

/** Enters a formula as Excel does: where it stands in a table, the rest of its column may be filled with it. */
export function enterFormula(sheet: Sheet, at: string, formula: string, ways: Ways): void {
  entered(sheet, at, formula, ways);
  if (ways.fillsColumns === 'never') return;
  const cell = blockAt(at);
  const table = sheet.tables.find(({ block }) => overlap(block, cell) && cell.row > block.row);
  if (!table) return;
  const shift = shifter(formula);
  for (let row = table.block.row + 1; row < table.block.row + table.block.rows; row++) {
    const other = addressOf(row, cell.column);
    const content = sheet.cells.get(other);
    const isKept = ways.fillsColumns === 'formulas' && content !== undefined && !isFormula(content);
    if (row !== cell.row && !isKept) entered(sheet, other, shift(row - cell.row, 0), ways);
  }
}
