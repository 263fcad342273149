import type { AnyRow, Arg } from '../catalogue/types';
import type { Quantity } from '../catalogue/quantities';
import { exactMark } from '../exposure/stops/marks';
import { fail, type Fail, isFail } from '../exposure/core/result';
import { readArgument } from './argument';
import { type CellError, isCellError } from './errors';
import { cellsOf, type Grid, isSingle } from './grid';
import { BLANK } from './quantity';

/** The lists of one call, paired by position, without the positions where the first is blank. */
export interface Lists {
  readonly values: ReadonlyMap<string, readonly number[]>;
  /** Shape of the first list, and for each of its cells the place among the values; -1 where it is blank. */
  readonly shape: Grid | undefined;
  readonly places: readonly number[];
}

type Member = number | typeof BLANK;

/** Whether one bare number that is no mark makes every bare number of a list exact: a list read to decimals. */
export function isReadToDecimals(
  cells: readonly unknown[],
  arg: Arg,
  quantity: Quantity | undefined,
): boolean {
  const scale = quantity?.marks;
  return (
    arg.exactTogether === true &&
    scale !== undefined &&
    cells.some((c) => typeof c === 'number' && c > 0 && exactMark(scale, c) === undefined)
  );
}

/** Every member of a list, blanks kept; or the first error cell or refusal among them. */
function members(grid: Grid, arg: Arg, quantity: Quantity | undefined): readonly Member[] | Fail | CellError {
  const cells = [...cellsOf(grid)];
  const exact = isReadToDecimals(cells, arg, quantity);
  const read: Member[] = [];
  for (const cell of cells) {
    if (isCellError(cell)) return cell;
    const value = readArgument(cell, arg, quantity, exact);
    if (isFail(value)) return value;
    read.push(value === BLANK ? BLANK : (value as number));
  }
  return read;
}

const blankFail = (arg: Arg, place: number): Fail =>
  fail('unreadable', `${arg.name} is blank at place ${place + 1} of the list, where the other list is not.`);

/**
 * Reads the list arguments of a call.
 *
 * Lists pair up by position: they have as many cells, or one cell that counts for all. A position where the first list is
 * blank is left out; a blank member of a later list counts as its `blankMember`, and is refused where it has none.
 */
export function readLists(
  row: AnyRow,
  grids: readonly (readonly Grid[])[],
  quantityOf: (index: number) => Quantity | undefined,
): Lists | Fail | CellError {
  const values = new Map<string, readonly number[]>();
  let kept: readonly number[] | undefined;
  let places: readonly number[] = [];
  let shape: Grid | undefined;
  for (const [index, arg] of (row.args as readonly Arg[]).entries()) {
    if (arg.takes === 'one') continue;
    const all: Member[] = [];
    for (const grid of grids[index] as readonly Grid[]) {
      const some = members(grid, arg, quantityOf(index));
      if (!Array.isArray(some)) return some as Fail | CellError;
      for (const member of some as readonly Member[]) all.push(member);
    }
    if (kept === undefined) {
      shape = grids[index]?.[0];
      let next = 0;
      places = all.map((m) => (m === BLANK ? -1 : next++));
      kept = all.flatMap((m, i) => (m === BLANK ? [] : [i]));
      if (kept.length === 0) return fail('unreadable', `${arg.name} is blank: give at least one.`);
      values.set(
        arg.name,
        kept.map((i) => all[i] as number),
      );
      continue;
    }
    const lone = grids[index]?.every(isSingle) && all.length === 1;
    if (!lone && all.length !== places.length)
      return fail(
        'unreadable',
        `${arg.name} must have as many cells as the first list: ${all.length} beside ${places.length}.`,
      );
    const mine: number[] = [];
    for (const i of kept) {
      const member = all[lone ? 0 : i] as Member;
      if (member === BLANK && arg.blankMember === undefined) return blankFail(arg, i);
      mine.push(member === BLANK ? (arg.blankMember as number) : member);
    }
    values.set(arg.name, mine);
  }
  return { values, shape, places };
}
