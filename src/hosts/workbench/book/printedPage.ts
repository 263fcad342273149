import type { BookCell, BookPage } from '../../../book/book';
import { type TableShape, tableNow } from '../../../book/chart';
import type { Area } from '../../../formula/area';
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
  /** Where its area ends, if something stands below that is not printed; `area` says that no table tells it. */
  readonly ends?: FromTable | 'area';
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

/** The row below what is printed, counted from a table in it; nothing where nothing stands further below. */
function endsAt(
  { area }: BookPage,
  tables: readonly TableShape[],
  cells: readonly BookCell[],
): Pick<KeptPage, 'ends'> {
  if (!area || lastRow(cells) < area.row + area.rows) return {};
  const end = area.row + area.rows;
  const printed = tables.filter((table) => table.area.column < area.column + area.columns);
  return { ends: fromTable(end, printed) ?? 'area' };
}

const lastRow = (cells: readonly BookCell[]): number =>
  cells.reduce((most, { row }) => Math.max(most, row), 0);

/** Says how to find the rows again that a page names. */
export function keepPage(
  page: BookPage,
  tables: readonly TableShape[],
  cells: readonly BookCell[],
): KeptPage {
  const named = [...page.breaks, ...(page.titlesFrom === undefined ? [] : [page.titlesFrom])];
  const rows = named.flatMap((row) => {
    const from = fromTable(row, tables);
    return from ? [[row, from] as const] : [];
  });
  return {
    ...page,
    ...(rows.length > 0 ? { rows: Object.fromEntries(rows) } : {}),
    ...endsAt(page, tables, cells),
  };
}

/**
 * The pages of a sheet after an edit: what prints reaches as far to the right as it did, with the columns that came in. What
 * stands further right was not to be printed. Rows are counted from a table where there is one.
 */
export function pageAfter(page: KeptPage, after: After): KeptPage {
  const { area } = page;
  const now = area && after(area);
  if (!now) return page;
  const column = Math.min(area.column, now.column);
  const rows = page.ends === 'area' ? now.row + now.rows - area.row : area.rows;
  return { ...page, area: { ...area, rows, column, columns: now.column + now.columns - column } };
}

/** The pages of a sheet that nothing is kept of. */
export const pageOfOwn = (name: string): BookPage => ({
  landscape: true,
  header: name,
  titleRows: 0,
  breaks: [],
});

/** A sheet as it is now. */
export interface SheetNow {
  readonly name: string;
  readonly tables: readonly TableShape[];
  readonly cells: readonly BookCell[];
}

/**
 * The pages of a sheet as it is now, headed by the name that its tab has now. What was printed grows with the rows that came in
 * since.
 */
export function pageNow({ rows = {}, ends, ...page }: KeptPage, { name, tables, cells }: SheetNow): BookPage {
  const found = (from: FromTable | undefined, row: number): number => {
    const table = from && tableNow(from.table, from.columns, tables);
    return from && table ? from.rows + (from.edge === 'end' ? endOf(table) : table.area.row) : row;
  };
  const now = (row: number): number => found(rows[row], row);
  const { area, titlesFrom } = page;
  const end = (printed: Area): number => {
    const was = printed.row + printed.rows;
    if (ends === undefined) return Math.max(was, lastRow(cells) + 1);
    return ends === 'area' ? was : found(ends, was);
  };
  return {
    ...page,
    header: page.header === '' ? '' : name,
    breaks: page.breaks.map(now),
    ...(titlesFrom === undefined ? {} : { titlesFrom: now(titlesFrom) }),
    ...(area ? { area: { ...area, rows: end(area) - area.row } } : {}),
  };
}
