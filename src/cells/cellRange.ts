/** Cells of one argument: a rectangle, in rows. */
export class CellRange {
  readonly rows: number;
  readonly columns: number;
  private readonly lines: readonly (readonly unknown[])[];

  constructor(lines: readonly (readonly unknown[])[], columns: number) {
    this.rows = lines.length;
    this.columns = columns;
    this.lines = lines;
  }

  at(row: number, column: number): unknown {
    return this.lines[row]?.[column];
  }
}

const single = (cell: unknown): CellRange => new CellRange([[cell]], 1);

/** The longest row; -1 where one of them is no row. */
function widest(given: readonly unknown[]): number {
  let most = 0;
  for (let i = 0; i < given.length; i++) {
    const row = given[i];
    if (!Array.isArray(row)) return -1;
    if (row.length > most) most = row.length;
  }
  return most;
}

/** What a host passes for an argument, as a rectangle: a lone value, a list of rows, or (leniently) a list of values. */
export function cellRange(given: unknown): CellRange {
  if (!Array.isArray(given)) return single(given);
  const columns = widest(given);
  if (columns === 0) return single(null);
  if (columns > 0) return new CellRange(given, columns);
  // Unlike map it visits gaps.
  const rows = Array.from(given, (row: unknown): readonly unknown[] => (Array.isArray(row) ? row : [row]));
  return new CellRange(rows, widest(rows));
}

export const isSingle = (grid: CellRange): boolean => grid.rows === 1 && grid.columns === 1;

/** All cells, row by row. */
export function* cellsOf(grid: CellRange): Generator<unknown> {
  for (let row = 0; row < grid.rows; row++)
    for (let column = 0; column < grid.columns; column++) yield grid.at(row, column);
}
