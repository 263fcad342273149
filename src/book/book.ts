import type { CellError } from '../formula/errors';
import type { Area } from '../formula/area';
import type { BookChart } from './chart';
import type { FilePicture } from './picture';
import type { ConditionOfKinds, PageOfKinds } from './kinds';

/** A workbook on its way to or from a file, in plain data. Rows and columns count from 0. */
export interface Book {
  readonly sheets: readonly BookSheet[];
  readonly names: readonly BookName[];
}

/** A name for cells or for a formula, known in the whole workbook or on one sheet. */
export interface BookName {
  readonly name: string;
  readonly formula: string;
}

export interface BookSheet {
  readonly name: string;
  readonly hidden: boolean;
  /** Widths in characters, by column; where there is none the column has the usual width. */
  readonly widths: Readonly<Record<number, number>>;
  /** Heights in points, by row. */
  readonly heights: Readonly<Record<number, number>>;
  /** Rows of tables that are not shown: a filter hides them. */
  readonly filteredRows?: readonly number[];
  /** Rows that a person has hidden. */
  readonly hiddenRows?: readonly number[];
  readonly cells: readonly BookCell[];
  readonly merges: readonly Area[];
  /** Rows and columns that stay in view. */
  readonly freeze: { readonly rows: number; readonly columns: number };
  /** Where a sheet draws all of its lines itself, the program's own are not shown. */
  readonly gridlines?: false;
  readonly tables: readonly BookTable[];
  readonly rules: readonly BookRule[];
  readonly conditions: readonly BookCondition[];
  readonly charts: readonly BookChart[];
  /** Pictures with their pixels. A book that was read has none, nor one that is not on its way to a file. */
  readonly pictures?: readonly FilePicture[];
  readonly page: BookPage;
  /** Names that hold on this sheet alone. A book that was read has none. */
  readonly names?: readonly BookName[];
}

export interface BookCell {
  readonly row: number;
  readonly column: number;
  /** What is shown; of a formula, its last result. */
  readonly value: string | number | boolean | null | CellError;
  /** As it is typed, with its =. */
  readonly formula?: string;
  /** All the cells that a formula spills into. A book that was read holds no values for those beside the first. */
  readonly spill?: Area;
  readonly style?: BookStyle;
  readonly note?: string;
  /** What it is to its reader, on a sheet of ours. Files do not keep it. */
  readonly part?: Part;
}

/** What a cell is to its reader. The theme of our sheets gives each part its look. */
export type Part =
  | 'title'
  | 'lead'
  | 'section'
  | 'heading'
  | 'label'
  | 'input'
  | 'choice'
  /** What the sheet itself holds in a table, filled or empty. */
  | 'held'
  | 'result'
  | 'answer'
  | 'remark'
  /** Kept free for a picture. */
  | 'slot'
  | 'warning'
  | 'caution';

export interface BookStyle {
  readonly font?: string;
  readonly size?: number;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly underline?: boolean;
  readonly strike?: boolean;
  /** Colours as #rrggbb. */
  readonly ink?: string;
  readonly fill?: string;
  readonly edges?: Partial<Record<EdgeSide, Edge>>;
  /** Number format in the spelling of the file; absent for General. */
  readonly format?: string;
  readonly align?: 'left' | 'center' | 'right';
  readonly vertical?: 'top' | 'middle' | 'bottom';
  readonly wrap?: boolean;
  /** Steps away from the edge that the text is aligned to. */
  readonly indent?: number;
}
export const SIDES = ['top', 'right', 'bottom', 'left'] as const;
export type EdgeSide = (typeof SIDES)[number];
export interface Edge {
  readonly line: (typeof LINES)[number];
  readonly ink: string;
}
export const LINES = ['thin', 'medium', 'thick', 'dotted', 'dashed', 'double', 'hair'] as const;

export interface BookTable {
  readonly name: string;
  /** Heading row and all rows below it. */
  readonly area: Area;
  readonly columns: readonly { readonly name: string; readonly formula?: string }[];
  /** What its rows are filtered by; those that it hides are hidden rows of the sheet. A book that was read has none. */
  readonly filters?: readonly ColumnFilter[];
}

/** The rows of a table that are shown: those in which a column, counted from its first, shows one of the texts. */
export interface ColumnFilter {
  readonly column: number;
  readonly texts: readonly string[];
  /** Whether an empty cell counts as well. */
  readonly blank: boolean;
}

/** What may be typed into cells. */
export interface BookRule {
  readonly areas: readonly Area[];
  readonly kind: (typeof RULE_KINDS)[number];
  /** How a number is compared; unused for a list and for a formula. */
  readonly compare?: (typeof COMPARISONS)[number];
  /** One, or two for between: numbers, or formulas without =; of a list, its words in quotes or a range. */
  readonly bounds: readonly string[];
  readonly blank: boolean;
  /** Shown when something else is typed. */
  readonly refusal?: string;
  /** Whether something else may be typed after all. */
  readonly strict: boolean;
  /** Shown when the cell is chosen. */
  readonly prompt?: string;
}
export const RULE_KINDS = ['list', 'whole', 'decimal', 'date', 'textLength', 'custom', 'any'] as const;
export const COMPARISONS = [
  'between',
  'notBetween',
  'equal',
  'notEqual',
  'greaterThan',
  'lessThan',
  'greaterThanOrEqual',
  'lessThanOrEqual',
] as const;

/** What gives cells a look that follows their values. */
export type BookCondition = { readonly areas: readonly Area[] } & (
  | {
      /** Where the formula, written for the top left cell of the first area, is true. */
      readonly kind: 'formula';
      readonly formula: string;
      readonly look: BookStyle;
    }
  | ConditionOfKinds
);
export type ConditionOf<K extends BookCondition['kind']> = Extract<BookCondition, { readonly kind: K }>;

export interface BookPage extends PageOfKinds {
  readonly landscape: boolean;
  /** Printed at the top left of each page. */
  readonly header: string;
  /** How many rows are printed at the top of every page. */
  readonly titleRows: number;
  /** Row of the first of them; absent where it is the first of the sheet. */
  readonly titlesFrom?: number;
}
