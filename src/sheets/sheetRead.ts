import type { BookCell, BookSheet, BookTable } from '../book/book';
import type { TemplateValue } from './template';

/** What is read of a sheet: its values, and where its tables lie. */
export type SheetRead = Pick<BookSheet, 'cells' | 'tables'>;
/** A sheet as it stands in a workbook. */
export interface NamedSheet extends SheetRead {
  readonly name: string;
}

/** The table of an id, which a second sheet of a workbook calls Record_2, and a copy Excel's way Record2. */
export const tableCalled = (id: string, tables: readonly BookTable[]): BookTable | undefined =>
  tables.find(({ name }) => new RegExp(`^${id}(_?\\d+)?$`, 'i').test(name));

/** What somebody typed; an error, or a yes that no cell of ours takes, is nothing. */
export const typedValue = (value: BookCell['value'] | undefined): TemplateValue =>
  typeof value === 'number' || (typeof value === 'string' && value.trim() !== '') ? value : null;

export type ValueAt = (row: number, column: number) => TemplateValue;

/** What stands in each cell of a sheet. */
export function valuesOf({ cells }: Pick<SheetRead, 'cells'>): ValueAt {
  const values = new Map(cells.map(({ row, column, value }) => [`${row},${column}`, typedValue(value)]));
  return (row, column) => values.get(`${row},${column}`) ?? null;
}

type Row = Readonly<Record<string, TemplateValue>>;

/** The rows of a table, each value by its column, in their places: an empty row is one as well. */
export const allRows = ({ area, columns }: BookTable, at: ValueAt): readonly Row[] =>
  Array.from({ length: area.rows - 1 }, (_, r) =>
    Object.fromEntries(columns.map(({ name }, c) => [name, at(area.row + 1 + r, area.column + c)])),
  );

/** The same; empty rows are left out. */
export const tableRows = (table: BookTable, at: ValueAt): readonly Row[] =>
  allRows(table, at).filter((row) => Object.values(row).some((value) => value !== null));
