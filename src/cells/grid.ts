/** Cells of one argument: a rectangle, in rows. */
export interface Grid {
  readonly rows: number;
  readonly columns: number;
  readonly at: (row: number, column: number) => unknown;
}

const single = (cell: unknown): Grid => ({ rows: 1, columns: 1, at: () => cell });

/** What a host passes for an argument, as a rectangle: a lone value, a list of rows, or (leniently) a list of values. */
export function toGrid(given: unknown): Grid {
  if (!Array.isArray(given)) return single(given);
  // A recording may have a million rows: they are copied only where one of them is no row.
  const rows: readonly (readonly unknown[])[] = given.every(Array.isArray)
    ? given
    : given.map((row: unknown): readonly unknown[] => (Array.isArray(row) ? row : [row]));
  let columns = 0;
  for (const row of rows) columns = Math.max(columns, row.length);
  if (columns === 0) return single(null);
  return { rows: rows.length, columns, at: (row, column) => rows[row]?.[column] };
}

export const isSingle = (grid: Grid): boolean => grid.rows === 1 && grid.columns === 1;

/** All cells, row by row. */
export function* cellsOf(grid: Grid): Generator<unknown> {
  for (let row = 0; row < grid.rows; row++)
    for (let column = 0; column < grid.columns; column++) yield grid.at(row, column);
}
