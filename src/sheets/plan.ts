import type { BookSheet } from '../book/book';
import type { KnownTable } from '../book/kinds/kind';
import type { Place } from '../formula/address';

/** A sheet of a template, ready to be laid by any host: addresses settled, formulas in their long form. */
export interface SheetPlan {
  readonly sheet: BookSheet;
  /** What formulas elsewhere may call the cells of forms, on this sheet: 'Pops build'!pops. Our own formulas do not. */
  readonly names: readonly SheetName[];
  /** The first cell to type in. */
  readonly start: Place | undefined;
}

export interface SheetName extends Place {
  readonly name: string;
}

/** What other sheets may look up in one that has been laid. */
export const tablesOf = ({ sheet }: SheetPlan): KnownTable[] =>
  sheet.tables.map(({ name, columns }) => ({ name, columns: columns.map((column) => column.name) }));
