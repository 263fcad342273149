/**
 * What Excel does beside what its library's documentation promises: how the person has set it up, and what it is known for. A
 * workbook in memory begins as a new Excel does; a test sets what it is about. Issues are those of OfficeDev/office-js
 * where no other place is named; "from experience" has no source.
 */
export interface Ways {
  /**
   * Writing a formula into one cell of a table's column fills the others: those without a value of their own, or all of them.
   * Microsoft, "Use calculated columns in an Excel table"; #2093 (by design, also for what an add-in writes), #6745, #5909.
   * That `everything` goes is from experience: the worst that can be meant.
   */
  fillsColumns: 'never' | 'formulas' | 'everything';
  /**
   * What is written into an empty cell right below a table or right beside it becomes a part of the table, which fills the new row with
   * the formulas of its columns, or gives the new column a heading: AutoCorrect's "Include new rows and columns in table". That it
   * goes for what an add-in writes: #3013, #3191.
   */
  growsTables: boolean;
  /** Parts that throw where the machine has no printer or no window to freeze: #2196, #2014. */
  readonly throwsAt: Set<'freeze' | 'page' | 'charts'>;
  /** Where it is manual, a formula that an add-in writes shows 0 until its sheet is calculated: #3336, #6662. */
  calculation: 'Automatic' | 'Manual';
  /**
   * Cells with functions of an add-in show this before they have a value, for so many looks at them.
   * Microsoft, "Create custom functions in Excel" (#BUSY!, #GETTING_DATA).
   */
  unready: { readonly shows: '#BUSY!' | '#GETTING_DATA'; looks: number } | undefined;
  /**
   * A formula of ours that is entered before the functions are there shows #NAME? until it is entered again, whatever is calculated
   * in between: #4185. Its value may then be told as #CALC!: #5865.
   */
  unregistered: '#NAME?' | '#CALC!' | undefined;
  /**
   * How a formula reads that was written otherwise: with the row's own columns in their short form and everything in capitals
   * that Excel knows, or with an @ besides before a function of one value that is declared to give a range.
   * Microsoft, "Using structured references with Excel tables" and "Implicit intersection operator: @".
   */
  spelling: 'as written' | 'short' | 'at';
  /** Nobody may add, delete or rename a sheet. Microsoft, "Protect a workbook". */
  structureIsProtected: boolean;
  /** Paste brings over only the rows that a filter shows, one below the other; from experience. office-scripts-docs #758 has all rows. */
  copiesVisibleRows: boolean;
}

export const newExcel = (): Ways => ({
  fillsColumns: 'formulas',
  growsTables: true,
  throwsAt: new Set(),
  calculation: 'Automatic',
  unready: undefined,
  unregistered: undefined,
  spelling: 'as written',
  structureIsProtected: false,
  copiesVisibleRows: false,
});
