import type { IRange } from '@univerjs/core';
import { holdsCell } from '../../../engine/gridRange';
import { formulasOf } from '../../../engine/sort/formulas';
import { address } from '../../../formula/address';
import type { Grid } from '../grid/grid';
import { inside } from '../grid/inside';
import { shownValue } from '../grid/shownValue';

/** Sums of the same numbers in another order differ by less than this, as a share. */
const ROUNDING = 1e-9;

/** What a formula outside of the sorted rows answers. */
interface Answer {
  readonly cell: string;
  readonly value: unknown;
}

/** The answers of all formulas that stand outside of some rows, by where they stand. */
export function answersOutside(grid: Grid, sheetId: string, range: IRange): ReadonlyMap<string, Answer> {
  const workbook = grid.api.getActiveWorkbook();
  if (!workbook) return new Map();
  return new Map(
    formulasOf(inside(grid), workbook.getWorkbook())
      .filter(({ sheetId: on, row, column }) => on !== sheetId || !holdsCell(range, row, column))
      .map(({ sheetId: on, sheetName, row, column }) => [
        `${on} ${row} ${column}`,
        {
          cell: address({ row, column }) + (on === sheetId ? '' : ` of “${sheetName}”`),
          value: shownValue(grid, on, row, column),
        },
      ]),
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
