import type { OfBlock, OfCell, OfChart, OfColumn, OfField, OfTable, OfTemplate } from '../book/kinds';
import type { InList } from './inList';

/**
 * A template sheet as its JSON file says it: what each cell means, never how a host draws it. `templates/schema.json`
 * describes the same shape for editors and checks it at load. What each part may ask for besides is said in `book/kinds`.
 */
export interface Template extends OfTemplate {
  /** As in `npm run sheet -- pops-build`. */
  readonly id: string;
  /** Name of the sheet. */
  readonly name: string;
  /** First line of the sheet: the question it answers. */
  readonly answers: string;
  /** Second line: what to type where. */
  readonly start: string;
  /** By what it is known in a list: answers of its own. */
  readonly inList?: InList;
  /** Words of the trade that lead here. */
  readonly words: readonly string[];
  /** Width of each column, in characters. */
  readonly columns: readonly number[];
  /** Rows that stay in view, and that head each page. */
  readonly freezeRows: number;
  /** The table whose headings head each page instead. */
  readonly headsPages?: string;
  readonly landscape: boolean;
  readonly blocks: readonly Block[];
  readonly charts: readonly TemplateChart[];
  /** Last lines of the sheet: what can go wrong, or hurt somebody. */
  readonly cautions: readonly string[];
  /** Their first cell, where they stand above a table that grows; left out, they end the sheet. */
  readonly cautionsAt?: string;
}

export type Block = Form | TemplateTable;

/** Rows of a label and a value; the value stands one column to the right of the label. */
export interface Form extends OfBlock {
  readonly kind: 'form';
  readonly title: string;
  /** Cell of the title; labels stand below it. */
  readonly at: string;
  readonly fields: readonly Field[];
}

/** A table with a heading row, which grows with the rows that are inserted in it. */
export interface TemplateTable extends OfBlock, OfTable {
  readonly kind: 'table';
  readonly title: string;
  /** Cell of the title; the headings stand below it. */
  readonly at: string;
  /** Name of the table, as formulas use it. */
  readonly id: string;
  readonly columns: readonly TemplateColumn[];
  /** Rows: a value for each column without a formula, in order; of inputs the demo. Their number is the number of rows. */
  readonly rows: readonly (readonly TemplateValue[])[];
}

export type TemplateValue = string | number | null;

/** What a cell holds: its quantity decides unit, number format and how a text in it is read. */
export interface CellContent extends OfCell {
  /** A key of the catalogue's quantities, or one that sheets add (see `formats.ts`). */
  readonly quantity: string;
  /** Shown when the cell is pointed at. */
  readonly note?: string;
  /** Warns where the formula is true: the cell is marked and the text, or what its formula says, is shown beside it. */
  readonly warning?: { readonly when: string; readonly text: string };
  /** What may be typed. */
  readonly accepts?: Accepts;
}

/** One field of a form: either an input with its demo value, or a result with its formula. */
export interface Field extends CellContent, OfField {
  readonly id: string;
  /** Left out where a line goes on from the one above it. */
  readonly label?: string;
  readonly value?: TemplateValue;
  readonly formula?: string;
  /** A second, small input to the right: the tenths beside a meter's full stop. */
  readonly tenths?: { readonly id: string; readonly value: number };
  /** A few words to the right of the value. */
  readonly remark?: string;
  /** Set large: the answer that is taken to the set. */
  readonly answer?: true;
}

/** One column of a table: an input, or a formula that each row holds. */
export interface TemplateColumn extends CellContent, OfColumn {
  readonly id: string;
  readonly formula?: string;
  /** Reads a meter's tenths, in a narrow column. */
  readonly tenths?: true;
  /** What its rows hold belongs to the sheet, filled or empty: `values`, or `formulas` that differ from row to row. */
  readonly fixed?: 'values' | 'formulas';
}

export interface Accepts {
  /** One of these words. */
  readonly list?: readonly string[];
  /** A number from here up, or above. */
  readonly least?: number;
  readonly above?: number;
  readonly most?: number;
  readonly whole?: true;
  /** What is said when something else is typed. */
  readonly message: string;
}

export interface TemplateChart extends OfChart {
  readonly type: 'line' | 'column';
  readonly title: string;
  /** Table and columns: the first is the x axis. */
  readonly table: string;
  readonly x: string;
  readonly series: readonly string[];
  readonly xTitle: string;
  readonly yTitle: string;
  /** Cells it covers, top left and bottom right. */
  readonly from: string;
  readonly to: string;
}
