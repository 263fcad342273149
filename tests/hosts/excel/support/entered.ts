import { shifter } from '../../../../src/formula/shift';
import { addressOf, type Block, blockAt, overlap } from './a1';
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
  sheet.words.delete(at);
  sheet.pending.delete(at);
  if (ways.unregistered !== undefined && isOurs(formula))
    sheet.pending.set(at, { text: '#NAME?', value: ways.unregistered, isStale: false });
  else if (ways.calculation === 'Manual') sheet.pending.set(at, { text: '0', value: 0, isStale: true });
}

/** Enters formulas as Excel does: where some stand in a table, the rest of their columns may be filled with the last of each. */
export function enterFormulas(sheet: Sheet, formulas: ReadonlyMap<string, string>, ways: Ways): void {
  const last = new Map<number, readonly [at: string, formula: string]>();
  for (const [at, formula] of formulas) {
    entered(sheet, at, formula, ways);
    const { row, column } = blockAt(at);
    const of = sheet.tables.findIndex(({ block }) => overlap(block, blockAt(at)) && row > block.row);
    if (of >= 0) last.set(of * 20_000 + column, [at, formula]);
  }
  if (ways.fillsColumns === 'never') return;
  for (const [key, [at, formula]] of last) fillColumn(sheet, Math.floor(key / 20_000), at, formula, ways);
}

function fillColumn(sheet: Sheet, table: number, at: string, formula: string, ways: Ways): void {
  const { block } = sheet.tables[table] as (typeof sheet.tables)[number];
  const cell = blockAt(at);
  const shift = shifter(formula);
  for (let row = block.row + 1; row < block.row + block.rows; row++) {
    const other = addressOf(row, cell.column);
    const content = sheet.cells.get(other);
    const isKept =
      ways.fillsColumns === 'formulas' && content !== undefined && sheet.formulaAt(other) === undefined;
    if (row !== cell.row && !isKept) entered(sheet, other, shift(row - cell.row, 0), ways);
  }
}

/** Takes a cell into a table that it lies right below, or right beside. */
export function growTables(sheet: Sheet, at: string, ways: Ways): void {
  const { row, column } = blockAt(at);
  for (const table of sheet.tables) {
    const { block } = table;
    const [below, beside] = [block.row + block.rows, block.column + block.columns];
    if (row === below && column >= block.column && column < beside) {
      table.block = { ...block, rows: block.rows + 1 };
      for (let c = block.column; c < beside; c++) fillRow(sheet, block, addressOf(row, c), ways);
    } else if (column === beside && row >= block.row && row < below) {
      table.block = { ...block, columns: block.columns + 1 };
      const heading = addressOf(block.row, column);
      if (!sheet.cells.has(heading)) sheet.cells.set(heading, `Column${block.columns + 1}`);
    }
  }
}

/** A new row gets the formula of a column in which every row has one. */
function fillRow(sheet: Sheet, { row, rows }: Block, at: string, ways: Ways): void {
  const cell = blockAt(at);
  const above = Array.from({ length: rows - 1 }, (_, r) =>
    sheet.formulaAt(addressOf(row + 1 + r, cell.column)),
  );
  const last = above.at(-1);
  if (last === undefined || above.includes(undefined) || sheet.cells.has(at)) return;
  entered(sheet, at, shifter(last)(1, 0), ways);
}
