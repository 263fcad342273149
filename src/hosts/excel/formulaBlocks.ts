import type { BookCell, BookSheet, BookTable } from '../../book/book';
import { at } from '../../exposure/core/at';
import type { Area } from '../../formula/area';
import { speaksOf } from '../../formula/speaksOf';
import { patches } from './ranges';

/** Neighbouring formulas, row by row. */
export interface FormulaBlock {
  readonly area: Area;
  readonly formulas: readonly (readonly string[])[];
}

interface FormulaCell extends Pick<BookCell, 'row' | 'column'> {
  readonly formula: string;
  /** The table and the column that it stands in; empty for a cell of no table. */
  readonly of: string;
}

export const holds = (
  { row, column, rows, columns }: Area,
  cell: Pick<BookCell, 'row' | 'column'>,
): boolean =>
  cell.row >= row && cell.row < row + rows && cell.column >= column && cell.column < column + columns;

function formulaCells({ cells, tables }: BookSheet): FormulaCell[] {
  return cells.flatMap(({ row, column, formula }) => {
    if (formula === undefined) return [];
    const table = tables.find(({ area }) => holds(area, { row, column }));
    return [{ row, column, formula, of: table ? `${table.name} ${column}` : '' }];
  });
}

/** A block never reaches from one column of a table into another: Excel would fill what lies between. */
function blocks(cells: readonly FormulaCell[]): FormulaBlock[] {
  const text = new Map(cells.map(({ row, column, formula }) => [`${row},${column}`, formula]));
  return patches(cells, ({ of }) => of).map(({ area }) => ({
    area,
    formulas: Array.from({ length: area.rows }, (_, r) =>
      Array.from(
        { length: area.columns },
        (_column, c) => text.get(`${area.row + r},${area.column + c}`) ?? '',
      ),
    ),
  }));
}

/**
 * The formulas of a sheet in the order in which Excel takes them: of each table those columns that differ from row to row, which have to
 * be there before the table is, as Excel fills a column of a table with any formula that is written into it; and then
 * all others, which may speak of tables.
 */
export function formulaBlocks(sheet: BookSheet): {
  readonly before: (table: BookTable) => readonly FormulaBlock[];
  readonly after: readonly FormulaBlock[];
} {
  const columns = new Map<string, FormulaCell[]>();
  for (const cell of formulaCells(sheet)) {
    const known = columns.get(cell.of);
    if (known) known.push(cell);
    else columns.set(cell.of, [cell]);
  }
  const differing = [...columns].filter(
    ([of, cells]) => of !== '' && cells.some(({ formula }) => formula !== at(cells, 0).formula),
  );
  const early = new Set(differing.map(([of]) => of));
  return {
    before: ({ area }) => blocks(differing.flatMap(([, cells]) => cells.filter((cell) => holds(area, cell)))),
    after: blocks([...columns].flatMap(([of, cells]) => (early.has(of) ? [] : cells))),
  };
}

/** The tables of a sheet, each after those that formulas name which have to be there before it is. */
export function tablesInOrder(
  tables: readonly BookTable[],
  before: (table: BookTable) => readonly FormulaBlock[],
): BookTable[] {
  const waiting = [...tables];
  const done: BookTable[] = [];
  while (waiting.length > 0) {
    const names = waiting.map(({ name }) => name);
    const isFree = (table: BookTable): boolean =>
      !before(table).some(({ formulas }) => formulas.flat().some((formula) => speaksOf(formula, '', names)));
    // Where they name one another there is no order: Excel refuses it, and says so.
    const next = Math.max(0, waiting.findIndex(isFree)); // prettier-ignore
    done.push(...waiting.splice(next, 1));
  }
  return done;
}
