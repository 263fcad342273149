import type { BookCell, BookPage } from '../../../book/book';
import { type TableShape, tableNow } from '../../../book/chart';
import type { After } from '../../../formula/followEdit';

/** A row as it is counted from a table, which the grid moves with the rows that come in or go above it. */
interface FromTable {
  readonly table: string;
  /** Its columns, by which it is known where it has another name since. */
  readonly columns: readonly string[];
  readonly edge: 'headings' | 'end';
  readonly rows: number;
}

/** The pages of a sheet as they are kept with it, and how rows that are named there are found again. */
export interface KeptPage extends BookPage {
  /** By the row as it was; left out where there is no table above it, and in workbooks that were stored before. */
  readonly rows?: Readonly<Record<number, FromTable>>;
}

const endOf = ({ area }: TableShape): number => area.row + area.rows;

/** Counts from the nearest table above that ends there; within a table from its headings. */
function fromTable(row: number, tables: readonly TableShape[]): FromTable | undefined {
  const above = tables.filter(({ area }) => area.row <= row);
  const [nearest] = above.sort((a, b) => Math.min(endOf(b), row) - Math.min(endOf(a), row));
  if (!nearest) return undefined;
  const edge = endOf(nearest) <= row ? 'end' : 'headings';
  return {
    table: nearest.name,
    columns: nearest.columns.map(({ name }) => name),
    edge,
    rows: row - (edge === 'end' ? endOf(nearest) : nearest.area.row),
  };
}

/** Says how to find the rows again that a page names. */
export function keepPage(page: BookPage, tables: readonly TableShape[]): KeptPage {
  const named = [...page.breaks, ...(page.titlesFrom === undefined ? [] : [page.titlesFrom])];
  const rows = named.flatMap((row) => {
    const from = fromTable(row, tables);
    return from ? [[row, from] as const] : [];
  });
  return rows.length > 0 ? { ...page, rows: Object.fromEntries(rows) } : page;
}

/**
 * The pages of a sheet after an edit: what prints reaches as far to the right as it did, with the columns that came in. What
 * stands further right was not to be printed.
 */
export function pageAfter(page: KeptPage, after: After): KeptPage {
  const { area } = page;
  const now = area && after(area);
  if (!now) return page;
  const column = Math.min(area.column, now.column);
  return { ...page, area: { ...area, column, columns: now.column + now.columns - column } };
}

/** The pages of a sheet as it is now. What was printed grows with the rows that came in since. */
export function pageNow(
  { rows = {}, ...page }: KeptPage,
  tables: readonly TableShape[],
  cells: readonly BookCell[],
): BookPage {
  const now = (row: number): number => {
    const from = rows[row];
    const table = from && tableNow(from.table, from.columns, tables);
    return from && table ? from.rows + (from.edge === 'end' ? endOf(table) : table.area.row) : row;
  };
  const last = cells.reduce((most, { row }) => Math.max(most, row), 0);
  const { area, titlesFrom } = page;
  return {
    ...page,
    breaks: page.breaks.map(now),
    ...(titlesFrom === undefined ? {} : { titlesFrom: now(titlesFrom) }),
    ...(area ? { area: { ...area, rows: Math.max(area.rows, last + 1 - area.row) } } : {}),
  };
}
