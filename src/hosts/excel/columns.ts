import { saysTheSame } from '../../formula/same';
import { shifter } from '../../formula/shift';

/*
 * Where Excel "fills formulas in tables to create calculated columns", as it does unless a person has turned that off, a formula that is
 * written into one cell of a table goes into the other rows of its column as well, over what stands there
 * (OfficeDev/office-js #2093, by design). Nothing tells whether it is on. So a column is written only where that does no harm.
 */

/** Whether every row of a table's column holds the same formula, each for its own row. */
export function isOneFormula(column: readonly unknown[], table: string): boolean {
  const [first] = column;
  if (typeof first !== 'string' || !first.startsWith('=')) return false;
  const shift = shifter(first);
  return column.every((held, row) => typeof held === 'string' && saysTheSame(shift(row, 0), held, table));
}

/** Whether the other rows of a column are empty, or hold what a formula would be in them. */
export function isFreeFor(formula: string, at: number, column: readonly unknown[], table: string): boolean {
  const shift = shifter(formula);
  return column.every(
    (held, row) =>
      row === at || held === '' || (typeof held === 'string' && saysTheSame(shift(row - at, 0), held, table)),
  );
}
