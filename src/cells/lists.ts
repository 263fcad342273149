import type { Arg } from '../catalogue/types';
import type { Quantity } from '../catalogue/quantities';
import { at } from '../exposure/core/at';
import { exactMark } from '../exposure/stops/marks';
import { fail, type Fail, isFail } from '../exposure/core/result';
import { ArgumentReader, ReadColumn } from './column';
import { type CellError, isCellError } from '../formula/errors';
import { cellsOf, type CellRange, cellRange } from './cellRange';
import type { Prepared } from './preparedArguments';
import { BLANK } from './quantityReader';
import { readRows, readSeries } from './series';

/** What an argument of many cells is read as: a list, perhaps with gaps; pairs; a series; or rows. */
type ManyCells = readonly Value[] | Float64Array | readonly (readonly Value[])[];
type Value = number | boolean | undefined;

/** The lists of one call, paired by position, without the positions where the first is blank. */
export interface Lists {
  readonly values: ReadonlyMap<string, ManyCells>;
  /** Shape of the first list, and for each of its cells the place among the values; -1 where it is blank. */
  readonly shape: CellRange | undefined;
  readonly places: readonly number[];
}

/** Undefined where a list that may be left out has a blank. */
type Member = Value | typeof BLANK;

/** A bare number, in a cell of numbers or of texts; NaN for all else. */
function bareValue(cell: unknown): number {
  if (typeof cell === 'number') return cell;
  return typeof cell === 'string' && /^\s*\d+(?:[.,]\d+)?\s*$/.test(cell)
    ? Number(cell.replace(',', '.'))
    : NaN;
}

/** Whether one bare number that is no mark makes every bare number of a list exact: a list read to decimals. */
export function isReadToDecimals(
  cells: Iterable<unknown>,
  arg: Arg,
  quantity: Quantity | undefined,
): boolean {
  const scale = quantity?.marks;
  if (arg.exactTogether !== true || scale === undefined) return false;
  for (const cell of cells) {
    const value = bareValue(cell);
    if (value > 0 && exactMark(scale, value) === undefined) return true;
  }
  return false;
}

/** Every member of a list, blanks kept; or the first error cell or refusal among them. */
function membersOf(
  grid: CellRange,
  arg: Arg,
  quantity: Quantity | undefined,
): readonly Member[] | Fail | CellError {
  const all: Member[] = [];
  const exact = isReadToDecimals(cellsOf(grid), arg, quantity);
  const column = new ReadColumn(grid.rows, grid.columns).fill(grid, new ArgumentReader(arg, quantity, exact));
  for (let place = 0; place < column.length; place++) {
    const value = column.at(place);
    if (typeof value === 'object') return value;
    all.push(value as Member);
  }
  return all;
}

const blankFail = (arg: Arg, place: number): Fail =>
  fail('unreadable', `${arg.name} is blank at place ${place + 1} of the list, where the other list is not.`);

const lengthFail = (arg: Arg, what: string, came: number, wanted: number): Fail =>
  fail('unreadable', `${arg.name} must have as many ${what} as the first list: ${came} beside ${wanted}.`);

/** A refusal where the first list is blank beside a member of this one: which of the two is meant? */
function unpaired(first: Arg, arg: Arg, all: readonly Member[], places: readonly number[]): Fail | undefined {
  if (arg.optional || all.length !== places.length) return undefined;
  const place = all.findIndex((m, i) => places[i] === -1 && m !== BLANK);
  return place < 0 ? undefined : blankFail(first, place);
}

/** Members of a list that is paired already, with its gaps, or with what a blank counts as; or a refusal. */
function paired(
  arg: Arg,
  all: readonly Member[],
  kept: readonly number[],
  wanted: number,
): readonly Value[] | Fail {
  const lone = all.length === 1;
  if (!lone && all.length !== wanted) return lengthFail(arg, 'cells', all.length, wanted);
  const mine: Value[] = [];
  for (const i of kept) {
    const member = at(all, lone ? 0 : i);
    if (member !== BLANK) mine.push(member);
    else if (arg.gaps) mine.push(undefined);
    else if (arg.blankMember === undefined) return blankFail(arg, i);
    else mine.push(arg.blankMember);
  }
  return mine;
}

/** A list of pairs by its columns: two where it has as many rows as the first list, and that is one column. */
function columnsOf(grid: CellRange, first: CellRange | undefined): readonly CellRange[] {
  if (grid.columns !== 2 || first?.columns !== 1 || grid.rows !== first.rows) return [grid];
  return [0, 1].map((c) => cellRange(Array.from({ length: grid.rows }, (_, r) => [grid.at(r, c)])));
}

/** What stands in one column or two beside the members of the first list. */
function readPairs(
  columns: readonly CellRange[],
  arg: Arg,
  quantity: Quantity | undefined,
  kept: readonly number[],
  wanted: number,
): readonly (readonly [Value, Value])[] | Fail | CellError {
  const read: (readonly Value[])[] = [];
  for (const column of columns) {
    const all = membersOf(column, arg, quantity);
    if (isFail(all) || isCellError(all)) return all;
    const mine = paired(arg, all, kept, wanted);
    if (isFail(mine)) return mine;
    read.push(mine);
  }
  const [first = [], second] = read;
  return first.map((value, i) => [value, second?.[i]]);
}

/**
 * Reads the arguments of a call that take many cells.
 *
 * Lists pair up by position: they have as many cells, or one cell that counts for all. A position where the first list is
 * blank is left out, unless that list keeps its gaps; a blank member of a later list counts as its `blankMember`, and is
 * refused where it has none. A list that may be left out is undefined where one blank cell is all there is. A pool pairs up
 * with no list: its blanks are left out, and it may have no member. Pairs are a list that may have a second column. A grid has a row for each member of the first list, wherever it stands among the arguments.
 *
 * @param others - the arguments of one cell, which may decide what a list is read as.
 */
export function readLists(
  known: Prepared,
  cells: readonly unknown[],
  others: readonly unknown[],
): Lists | Fail | CellError {
  const values = new Map<string, ManyCells>();
  const rows: [Arg, readonly (readonly number[])[]][] = [];
  let kept: readonly number[] | undefined;
  let places: readonly number[] = [];
  let first = known.arg(0);
  let shape: CellRange | undefined;
  for (const index of known.many) {
    const arg = known.arg(index);
    const quantity = known.quantity(index, others);
    if (arg.takes === 'series' || arg.takes === 'grid') {
      const read = (arg.takes === 'series' ? readSeries : readRows)(cells[index], arg, quantity as Quantity);
      if (isFail(read) || isCellError(read)) return read;
      if (arg.takes === 'grid') rows.push([arg, read as readonly (readonly number[])[]]);
      else values.set(arg.name, read);
      continue;
    }
    const grid = cellRange(cells[index]);
    if (arg.takes === 'pairs') {
      const pairs = readPairs(columnsOf(grid, shape), arg, quantity, kept ?? [], places.length);
      if (isFail(pairs) || isCellError(pairs)) return pairs;
      values.set(arg.name, pairs);
      continue;
    }
    const all = membersOf(grid, arg, quantity);
    if (isFail(all) || isCellError(all)) return all;
    if (arg.takes === 'pool') {
      values.set(
        arg.name,
        all.filter((member) => typeof member === 'number'),
      );
      continue;
    }
    if (kept === undefined) {
      [first, shape] = [arg, grid];
      let next = 0;
      places = all.map((m) => (m === BLANK && !arg.gaps ? -1 : next++));
      kept = [...places.keys()].filter((i) => places[i] !== -1);
      if (all.every((m) => m === BLANK))
        return fail('unreadable', `${arg.name} is blank: give at least one.`);
    }
    if (arg.optional && all.length === 1 && all[0] === undefined) continue;
    const mine = unpaired(first, arg, all, places) ?? paired(arg, all, kept, places.length);
    if (isFail(mine)) return mine;
    values.set(arg.name, mine);
  }
  for (const [arg, read] of rows) {
    if (read.length !== places.length) return lengthFail(arg, 'rows', read.length, places.length);
    values.set(
      arg.name,
      read.filter((_, i) => places[i] !== -1),
    );
  }
  return { values, shape, places };
}
