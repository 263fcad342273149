import type { Quantity } from '../catalogue/quantities';
import { ArgumentReader, ReadColumn } from './column';
import { isCellError } from '../formula/errors';
import { BLANK } from './quantityReader';
import { type CellRange, isSingle } from './cellRange';
import { missing } from './missing';
import type { Prepared } from './preparedArguments';

/** An argument of one cell that is given a range, or is decided by one that is. */
export interface Spreading {
  readonly place: number;
  readonly grid: CellRange;
}

/** The same, read. */
export interface Spread {
  readonly place: number;
  readonly column: ReadColumn;
}

/** Whether a cell of the answer has none beside it in one of the ranges. */
export const isOutside = (ranges: readonly Spreading[], row: number, column: number): boolean =>
  ranges.some(
    ({ grid }) => (grid.rows > 1 && row >= grid.rows) || (grid.columns > 1 && column >= grid.columns),
  );

/** Reads every cell of every range once, however often the answer needs it. */
export function readSpreads(
  known: Prepared,
  values: readonly unknown[],
  ranges: readonly Spreading[],
): readonly Spread[] {
  const spreads: Spread[] = [];
  for (const { place, grid } of ranges) {
    const decider = spreads.find((spread) => spread.place === known.deciders[place]);
    const column = decider
      ? readDecided(known, place, grid, decider.column)
      : new ReadColumn(grid.rows, grid.columns).fill(
          grid,
          new ArgumentReader(known.arg(place), known.quantity(place, values)),
        );
    spreads.push({ place, column });
  }
  return spreads;
}

/** Reads cells whose quantity changes with the cell of another argument beside them. */
function readDecided(known: Prepared, place: number, grid: CellRange, decider: ReadColumn): ReadColumn {
  const column = new ReadColumn(Math.max(grid.rows, decider.rows), Math.max(grid.columns, decider.columns));
  const readers = new Map<Quantity | undefined, ArgumentReader>();
  for (let r = 0; r < column.rows; r++)
    for (let c = 0; c < column.columns; c++) {
      const other = decider.at(decider.placeOf(r, c));
      const quantity = known.decided(place, isCellError(other) ? undefined : other);
      let reader = readers.get(quantity);
      if (reader === undefined)
        readers.set(quantity, (reader = new ArgumentReader(known.arg(place), quantity)));
      const cell = grid.at(grid.rows === 1 ? 0 : r, grid.columns === 1 ? 0 : c);
      const read = reader.read(cell);
      // one cell for all rows is no row that was left blank
      const isMissing = read === BLANK && isSingle(grid);
      column.set(column.placeOf(r, c), isMissing ? missing(known.arg(place)) : read);
    }
  return column;
}
