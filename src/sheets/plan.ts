import type { BookChart } from '../book/chart';
import type { Area } from '../formula/area';

/**
 * A sheet ready to be laid by any host: cells with addresses settled, formulas in their long form, everything in plain
 * data. Rows and columns count from 0.
 */
export interface SheetPlan {
  readonly name: string;
  readonly columns: readonly number[];
  readonly cells: readonly PlanCell[];
  readonly merges: readonly Area[];
  readonly tables: readonly PlanTable[];
  readonly rules: readonly InputRule[];
  readonly warnings: readonly Warning[];
  /** What formulas elsewhere may call the cells of forms, on this sheet: 'Pops build'!pops. Our own formulas do not. */
  readonly names: readonly PlanName[];
  readonly charts: readonly BookChart[];
  readonly freezeRows: number;
  readonly page: Page;
}

/** What a cell is to its reader. The theme gives each part its look; every host draws the same. */
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
  | 'warning'
  | 'caution';

export interface PlanCell {
  readonly row: number;
  readonly column: number;
  readonly part: Part;
  readonly value?: string | number | null;
  readonly formula?: string;
  /** Number format, in the spelling that spreadsheet files use. */
  readonly format: string;
  /** Preset as text before the value goes in, so that 1/125 stays 1/125. */
  readonly text: boolean;
  readonly align: 'left' | 'right';
  readonly wrap: boolean;
  readonly note?: string;
}

/** Whether a person types into the cell. */
export const isInputCell = ({ part }: Pick<PlanCell, 'part'>): boolean =>
  part === 'input' || part === 'choice';

export interface PlanName extends Pick<PlanCell, 'row' | 'column'> {
  readonly name: string;
}

export interface PlanTable {
  /** Name in the workbook; a number is added where it is taken. */
  readonly name: string;
  /** Heading row and all rows below it. */
  readonly area: Area;
  readonly columns: readonly PlanColumn[];
}
export interface PlanColumn {
  readonly name: string;
  /** The formula every row holds, for hosts that keep it with the table. */
  readonly formula?: string;
}

export interface InputRule {
  readonly area: Area;
  readonly list?: readonly string[];
  readonly least?: number;
  readonly above?: number;
  readonly most?: number;
  readonly whole: boolean;
  readonly message: string;
}

/** Marks the cells of an area where the formula, written for its top left cell, is true. */
export interface Warning {
  readonly area: Area;
  readonly formula: string;
}

export interface Page {
  readonly landscape: boolean;
  readonly header: string;
  /** Rows printed at the top of every page. */
  readonly titleRows: number;
  readonly area: Area;
}
