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
): readonly ColumnFilter[] | undefined {
  let left = hidden;
  const filters: ColumnFilter[] = [];
  for (let column = 0; column < area.columns && left.length > 0; column++) {
    const text = (row: number): string => textAt(row, area.column + column);
    // capitals make no difference to the filter of a file
    const texts = new Map(shown.map((row) => [text(row).toLowerCase(), text(row)]));
    const passed = left.filter((row) => texts.has(text(row).toLowerCase()));
    if (passed.length === left.length) continue;
    filters.push({ column, texts: [...texts.values()].filter((each) => each !== ''), blank: texts.has('') });
    left = passed;
  }
  return left.length === 0 ? filters : undefined;
}

/**
 * A table with what its rows are filtered by, and which are hidden by that. The grid knows the rows alone; a file has to say
 * what hides them. Where nothing that a file can say hides the same rows, none is said to be hidden.
 */
export function withFilters(
  table: BookTable,
  unseen: readonly number[],
  textAt: TextAt,
): { readonly table: BookTable; readonly rows: readonly number[] } {
  const isUnseen = new Set(unseen);
  const body = bodyRows(table.area);
  const rows = body.filter((row) => isUnseen.has(row));
  if (rows.length === 0) return { table, rows };
  const shown = body.filter((row) => !isUnseen.has(row));
  const filters = filtersOf(table, shown, rows, textAt);
  return filters ? { table: { ...table, filters }, rows } : { table, rows: [] };
}
