import type { BookTable, ColumnFilter } from '../../../book/book';
import type { Area } from '../../../formula/area';

type TextAt = (row: number, column: number) => string;

/** The rows of a table below its heading. */
export const bodyRows = ({ row, rows }: Area): readonly number[] =>
  Array.from({ length: rows - 1 }, (_, i) => row + 1 + i);

/** What would leave out the same rows: the columns in which none of the hidden rows that are left shows what a shown one does. */
function filtersOf(
  { area }: BookTable,
  shown: readonly number[],
  hidden: readonly number[],
  textAt: TextAt,
): { readonly filters: readonly ColumnFilter[]; readonly isExact: boolean } {
  let left = hidden;
  const filters: ColumnFilter[] = [];
  let all: ColumnFilter | undefined;
  for (let column = 0; column < area.columns && left.length > 0; column++) {
    const text = (row: number): string => textAt(row, area.column + column);
    // capitals make no difference to the filter of a file
    const texts = new Map(shown.map((row) => [text(row).toLowerCase(), text(row)]));
    const filter = {
      column,
      texts: [...texts.values()].filter((each) => each !== ''),
      blank: texts.has(''),
    };
    if (column === 0) all = filter;
    const passed = left.filter((row) => texts.has(text(row).toLowerCase()));
    if (passed.length === left.length) continue;
    filters.push(filter);
    left = passed;
  }
  // one that lets all of them pass: what hides rows is a filter all the same
  return { filters: filters.length > 0 || !all ? filters : [all], isExact: left.length === 0 };
}

/**
 * A table with what its rows are filtered by, and which are hidden by that. The grid knows the rows alone; a file has to say
 * what hides them. Where nothing that a file can say hides the same rows, it says what comes nearest, and is not exact.
 */
export function withFilters(
  table: BookTable,
  unseen: readonly number[],
  textAt: TextAt,
): { readonly table: BookTable; readonly rows: readonly number[]; readonly isExact: boolean } {
  const isUnseen = new Set(unseen);
  const body = bodyRows(table.area);
  const rows = body.filter((row) => isUnseen.has(row));
  if (rows.length === 0) return { table, rows, isExact: true };
  const shown = body.filter((row) => !isUnseen.has(row));
  const { filters, isExact } = filtersOf(table, shown, rows, textAt);
  return { table: { ...table, filters }, rows, isExact };
}
