import type { Place } from '../../formula/address';
import type { Area } from '../../formula/area';
import type { BookCondition, BookStyle, Part } from '../book';
import type { ChartCells, ChartKind, ChartSeries } from '../chart';
import type { OfBlock, OfCell, OfChart, OfColumn, OfField, OfTable, OfTemplate, Role } from '.';

/** A table that is in the workbook. */
export interface KnownTable {
  readonly name: string;
  readonly columns: readonly string[];
}

/** What a cell or column holds in this workbook in place of what is typed, and what the other table is called there. */
export interface Settled {
  readonly formula: string;
  readonly partner: readonly [id: string, name: string];
}

/** What a template says of its pages. */
export interface ToldPage {
  /** Rows that start a page. */
  readonly breaks?: readonly number[];
  /** The last cell that prints. */
  readonly last?: Place | undefined;
}

/** Parts of a template, as far as kinds have to know them. */
export interface AskedTable extends OfTable {
  readonly id: string;
  readonly columns: readonly AskedColumn[];
}
/** A field of a form, or a column. */
export interface AskedCell extends OfCell {
  readonly id: string;
  readonly quantity: string;
  readonly formula?: string;
  readonly fixed?: unknown;
}
export interface AskedColumn extends AskedCell, OfColumn {}
export interface AskedTemplate extends OfTemplate {
  readonly blocks: readonly (OfBlock & { readonly at: string })[];
}

/**
 * What becomes of a kind in a book, when a template asks for it. A kind has those of these that it needs; the model asks all
 * kinds, and names none.
 */
export interface Kind {
  /** What a cell or column holds in a workbook with these tables; undefined where it is typed. */
  readonly settled?: (asked: OfCell, known: readonly KnownTable[]) => Settled | undefined;
  /** What sets a cell apart from others of its part. */
  readonly look?: (asked: OfCell & OfColumn, part: Part) => Pick<BookStyle, 'size' | 'wrap'>;
  /** Points of the smallest words on the sheet. */
  readonly least?: (template: AskedTemplate) => number | undefined;
  /** Looks that follow the values of a table; its cells are those of so many columns from one on, without headings. */
  readonly conditions?: (
    table: AskedTable,
    cells: (column: number, columns: number) => Area,
  ) => BookCondition[];
  /** Series of a chart besides its columns; its cells are those of a column, or of a form by an id. */
  readonly series?: (
    chart: OfChart,
    column: (name: string) => ChartCells,
    cell: (id: string) => ChartCells,
  ) => ChartSeries[];
  /** What the points of a chart's columns are called, and how they are drawn then. */
  readonly points?: (
    chart: OfChart,
    column: (name: string) => ChartCells,
  ) => { readonly names: ChartCells; readonly role: Role } | undefined;
  readonly page?: (template: AskedTemplate) => ToldPage;
  /** How many columns a field of a form takes as one cell; one where nothing is asked for. */
  readonly across?: (field: OfField) => number | undefined;
  /** Cells that become one and are kept free, with what stands there until then. */
  readonly slots?: (template: AskedTemplate) => readonly { readonly place: Area; readonly words: string }[];
}

/** What checks have to know of quantities. */
export type FormatOf = (
  quantity: string,
) => { readonly unit: string; readonly align: 'left' | 'right' } | undefined;

/** A chart that is checked. */
export interface AskedChart extends OfChart {
  readonly kind: ChartKind;
  readonly table: AskedTable;
  readonly x: string;
  readonly series: readonly string[];
  /** Quantity of a cell of a form; undefined where there is none of this id. */
  readonly quantityOf: (id: string) => string | undefined;
}

/** Parts of a template that may ask for something. */
export type Asking = 'template' | 'form' | 'table' | 'field' | 'column' | 'chart';

/** Where a field or a column stands: its table, if it has one, and the cells of the forms of its sheet by their ids. */
export interface Own {
  readonly table?: AskedTable;
  readonly cells: ReadonlySet<string>;
}

/** How a template asks for a kind, and what can be wrong with that. Only a build looks at it. */
export interface Check {
  /** The property by which it is asked for, and its shape in the words of a schema. */
  readonly property: string;
  readonly of: readonly Asking[];
  readonly shape: Readonly<Record<string, unknown>>;
  readonly tableFaults?: (table: AskedTable, formatOf: FormatOf) => string[];
  readonly chartFaults?: (chart: AskedChart, formatOf: FormatOf) => string[];
  /** Of a field, or of a column of its own table, beside all tables of other templates. */
  readonly partnerFaults?: (
    asked: AskedCell,
    own: Own,
    others: readonly AskedTable[],
    formatOf: FormatOf,
  ) => string[];
}
