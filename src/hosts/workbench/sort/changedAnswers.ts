import { holdsCell } from '../../../engine/gridRange';
import type { RowsSorted } from '../../../engine/sort/rowsSorted';
import { formulasOf } from '../../../engine/sort/formulas';
import { address } from '../../../formula/address';
import type { Grid } from '../grid/grid';
import { inside } from '../grid/inside';
import { shownValue } from '../grid/shownValue';

/** Sums of the same numbers in another order differ by less than this, as a share. */
const ROUNDING = 1e-9;

/** What a formula answers. */
interface Answer {
  readonly cell: string;
  readonly value: unknown;
}

type Sorted = Pick<RowsSorted, 'subUnitId' | 'range' | 'from'>;

/**
 * The answers of all formulas, by where they stood before some rows were sorted: those of a row go with it, and what stands
 * outside has not moved.
 */
export function answersNow(
  grid: Grid,
  { subUnitId: sheetId, range, from }: Sorted,
): ReadonlyMap<string, Answer> {
  const workbook = grid.api.getActiveWorkbook();
  if (!workbook) return new Map();
  return new Map(
    formulasOf(inside(grid), workbook.getWorkbook()).map(({ sheetId: on, sheetName, row, column }) => {
      const isOfRows = on === sheetId && holdsCell(range, row, column);
      const stood = isOfRows ? range.startRow + (from[row - range.startRow] ?? 0) : row;
      return [
        `${on} ${stood} ${column}`,
        {
          cell: address({ row, column }) + (on === sheetId ? '' : ` of “${sheetName}”`),
          value: shownValue(grid, on, row, column),
        },
      ];
    }),
  );
}

const isAlike = (a: unknown, b: unknown): boolean =>
  typeof a === 'number' && typeof b === 'number'
    ? Math.abs(a - b) <= ROUNDING * Math.max(Math.abs(a), Math.abs(b))
    : (a ?? '') === (b ?? '');

/** The cells whose answers are others than before: they mean the order of the rows, and do not say so in their formulas. */
export const changedAnswers = (
  before: ReadonlyMap<string, Answer>,
  now: ReadonlyMap<string, Answer>,
): readonly string[] =>
  [...now].flatMap(([at, { cell, value }]) => {
    const was = before.get(at);
    return was && !isAlike(was.value, value) ? [cell] : [];
  });
