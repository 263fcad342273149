interface Range {
  readonly startRow: number;
  readonly endRow: number;
  readonly startColumn: number;
  readonly endColumn: number;
}

const beyond = (at: number, first: number, last: number): number => Math.max(0, first - at, at - last);

/** How many cells one is from an area, down or up and across together: none within it. */
export const cellsAway = (row: number, column: number, range: Range): number =>
  beyond(row, range.startRow, range.endRow) + beyond(column, range.startColumn, range.endColumn);
