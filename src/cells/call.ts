import type { AnswerList, AnswerRows, AnyRow, Arg, FunctionAnswer } from '../catalogue/types';
import { isTable } from '../catalogue/types';
import { at } from '../exposure/core/at';
import { answer, isFail, type Result } from '../exposure/core/result';
import { readArgument } from './argument';
import { type CellError, cellError, fromFail, isCellError } from '../formula/errors';
import { type CellRange, isSingle, cellRange } from './cellRange';
import { type Lists, readLists } from './lists';
import { type Prepared, prepared } from './preparedArguments';
import { BLANK } from './quantityReader';
import { missing } from './missing';
import { outOfRange } from './outOfRange';
import { isOutside, readSpreads, type Spread, type Spreading } from './spreadRanges';

/** What a call gives for one cell. An empty text stands for a blank row. */
export type AnswerCell = number | string | CellError;
/** One cell, or rows of cells that spill. */
export type Answer = AnswerCell | AnswerCell[][];

const OUTSIDE_SHAPE = cellError('#N/A', 'The ranges differ in size: there is no cell here in one of them.');

/** "STOPDIFF takes 2 or 3 values, not 4." */
function countFail(row: AnyRow, given: number): CellError {
  const most = row.args.length;
  const least = (row.args as readonly Arg[]).filter((a) => !a.optional).length;
  const takes =
    least === most ? `${most}` : most === least + 1 ? `${least} or ${most}` : `${least} to ${most}`;
  return cellError('#VALUE!', `${row.id} takes ${takes} ${most === 1 ? 'value' : 'values'}, not ${given}.`);
}

function cellOf(outcome: Result<FunctionAnswer> | AnswerCell): AnswerCell {
  if (typeof outcome === 'number') {
    const fits = answer(outcome);
    return typeof fits === 'number' ? fits : fromFail(fits);
  }
  if (typeof outcome === 'string' || isCellError(outcome)) return outcome;
  return isFail(outcome)
    ? fromFail(outcome)
    : cellError('#VALUE!', 'The answer is a list where one value was expected.');
}

/** A row of one cell. Numbers have an array of their own, in which they lie as they are, which halves the time of a column. */
const lineOf = (cell: AnswerCell): AnswerCell[] => (typeof cell === 'number' ? [cell] : [cell]);

/** Rows of cells, each made from its place. */
function filled(
  rows: number,
  columns: number,
  cellAt: (row: number, column: number) => AnswerCell,
): AnswerCell[][] {
  const all = Array<AnswerCell[]>(rows);
  for (let row = 0; row < rows; row++) {
    if (columns === 1) {
      all[row] = lineOf(cellAt(row, 0));
      continue;
    }
    const cells = Array<AnswerCell>(columns);
    for (let column = 0; column < columns; column++) cells[column] = cellAt(row, column);
    all[row] = cells;
  }
  return all;
}

/** A list answer in the shape of the list it answers, blanks left blank. */
function listAnswer(values: AnswerList, { shape, places }: Lists): Answer {
  const { rows, columns } = shape as CellRange;
  return filled(rows, columns, (r, c) => {
    const place = places[r * columns + c] as number;
    return cellOf((place < 0 ? undefined : values[place]) ?? '');
  });
}

/** Several values side by side, or what stands in for all of them. */
const sideBySide = (outcome: Result<FunctionAnswer> | AnswerCell, width: number): AnswerCell[] =>
  Array.from({ length: width }, (_, i) =>
    Array.isArray(outcome)
      ? cellOf(outcome[i] as Result<number>)
      : isFail(outcome)
        ? fromFail(outcome)
        : (outcome as AnswerCell),
  );

/** The rows of a table, each cell an answer or a refusal of its own. */
const tableAnswer = (table: AnswerRows): Answer => table.map((cells) => cells.map(cellOf));

/**
 * What a function gives for a number in one place and all other values as they are. Up to three are written out, as spreading
 * them costs as much as many a function.
 */
function runWith(
  run: AnyRow['run'],
  values: unknown[],
  place: number,
  number: number,
): Result<FunctionAnswer> {
  if (values.length > 3 || place > 2) {
    values[place] = number;
    return run(...values);
  }
  if (place === 0) return run(number, values[1], values[2]);
  return place === 1 ? run(values[0], number, values[2]) : run(values[0], values[1], number);
}

/** One call of a function, spread or not. */
class Call {
  private readonly row: AnyRow;
  private readonly known: Prepared;
  private readonly cells: readonly unknown[];
  /** What the function is called with; arguments that spread change from cell to cell. */
  private readonly values: unknown[] = [];
  /** Arguments that spread, in the order in which they decide about each other. */
  private readonly ranges: Spreading[] = [];
  private spreads: readonly Spread[] = [];
  private lists: Lists | undefined;
  /** Whether all values are known to lie in their ranges, so that no cell need be held to them by itself. */
  private isInRange = false;
  private rows = 1;
  private columns = 1;

  constructor(row: AnyRow, known: Prepared, cells: readonly unknown[]) {
    this.row = row;
    this.known = known;
    this.cells = cells;
  }

  get answer(): Answer {
    const error = this.readFixed() ?? (this.listsAreFixed ? this.readLists() : undefined);
    if (error !== undefined) return error;
    const { answers } = this.row;
    if (this.rows === 1 && this.columns === 1) return this.only;
    const spills = answers === 'list' || isTable(answers);
    if (spills || (answers !== 'one' && this.columns > 1)) return this.refusedRange(spills);
    this.spreads = readSpreads(this.known, this.values, this.ranges);
    this.isInRange =
      this.listsAreFixed &&
      outOfRange(this.known.args, this.values) === undefined &&
      this.spreads.every(({ place, column }) => column.isWithin(this.known.arg(place).range));
    if (answers === 'one') return this.spread;
    return Array.from({ length: this.rows }, (_, r) => sideBySide(this.at(r, 0), answers.length));
  }

  /** Reads what is the same for all cells of the answer; a refusal or error there is the answer for all. */
  private readFixed(): CellError | undefined {
    for (const place of this.known.ones) {
      const given = this.cells[place];
      if (Array.isArray(given) || this.isDecidedByRange(place)) {
        const grid = cellRange(given);
        if (!isSingle(grid) || this.isDecidedByRange(place)) {
          this.spreadOver(place, grid);
          continue;
        }
        this.values[place] = grid.at(0, 0);
      } else this.values[place] = given;
      const error = this.readPlace(place, this.values[place]);
      if (error !== undefined) return error;
    }
    return undefined;
  }

  private readPlace(place: number, cell: unknown): CellError | undefined {
    if (isCellError(cell)) return cell;
    const arg = this.known.arg(place);
    const value = readArgument(cell, arg, this.known.quantity(place, this.values));
    this.values[place] = value;
    if (isFail(value)) return fromFail(value);
    return value === BLANK ? missing(arg) : undefined;
  }

  private spreadOver(place: number, grid: CellRange): void {
    this.ranges.push({ place, grid });
    this.rows = Math.max(this.rows, grid.rows);
    this.columns = Math.max(this.columns, grid.columns);
  }

  private isDecidedByRange(place: number): boolean {
    const decider = this.known.deciders[place];
    return this.ranges.some((range) => range.place === decider);
  }

  /** Whether every list can be read once for the whole call. */
  private get listsAreFixed(): boolean {
    return this.known.many.every((place) => !this.isDecidedByRange(place));
  }

  /** Reads the lists, for the whole call or for the cell whose other arguments stand in `values`. */
  private readLists(): CellError | undefined {
    const { many } = this.known;
    if (many.length === 0) return undefined;
    const lists = readLists(this.known, this.cells, this.values);
    if (isCellError(lists)) return lists;
    if (isFail(lists)) return fromFail(lists);
    this.lists = lists;
    for (const place of many) this.values[place] = lists.values.get(this.known.arg(place).name);
    return undefined;
  }

  /** An answer for each cell of the ranges. */
  private get spread(): AnswerCell[][] {
    const [first, second] = this.spreads;
    return first && second === undefined && this.columns === 1 && this.isInRange
      ? this.down(first)
      : filled(this.rows, this.columns, (r, c) => cellOf(this.at(r, c)));
  }

  /** Answers down one column, beside what is the same for all of them: where there are many rows, that is most of the calls. */
  private down({ place, column }: Spread): AnswerCell[][] {
    const { values } = this;
    const { run } = this.row;
    const all = Array<AnswerCell[]>(this.rows);
    for (let row = 0; row < this.rows; row++) {
      const number = column.number(row);
      all[row] = Number.isNaN(number)
        ? [cellOf(this.at(row, 0))]
        : lineOf(cellOf(runWith(run, values, place, number)));
    }
    return all;
  }

  /** What the function gives at one place; a cell where there is nothing to calculate. */
  private at(row: number, column: number): Result<FunctionAnswer> | AnswerCell {
    if (this.ranges.length > 1 && isOutside(this.ranges, row, column)) return OUTSIDE_SHAPE;
    let error: CellError | undefined;
    let isBlank = false;
    const { spreads, values } = this;
    for (let i = 0; i < spreads.length; i++) {
      const spread = at(spreads, i);
      const place = spread.column.placeOf(row, column);
      const number = spread.column.number(place);
      if (!Number.isNaN(number)) {
        values[spread.place] = number;
        continue;
      }
      const other = spread.column.other(place);
      if (other === BLANK) isBlank = true;
      else if (typeof other === 'object') error ??= isCellError(other) ? other : fromFail(other);
      values[spread.place] = other;
    }
    if (error !== undefined) return error;
    if (isBlank) return '';
    if (this.known.many.length > 0 && !this.listsAreFixed) error = this.readLists();
    return error ?? (this.isInRange ? this.row.run(...values) : this.result);
  }

  /** What the function gives for the values; a refusal where one of them lies outside its range. */
  private get result(): Result<FunctionAnswer> {
    return outOfRange(this.known.args, this.values) ?? this.row.run(...this.values);
  }

  private get only(): Answer {
    const outcome = this.result;
    if (isFail(outcome)) return fromFail(outcome);
    const { answers } = this.row;
    if (answers === 'list') return listAnswer(outcome as AnswerList, this.lists as Lists);
    if (isTable(answers)) return tableAnswer(outcome as AnswerRows);
    return answers === 'one' ? cellOf(outcome) : [sideBySide(outcome, answers.length)];
  }

  /** A range where the function takes none. */
  private refusedRange(spills: boolean): CellError {
    const wanted = spills
      ? `one cell here, not a range: the answer is ${this.row.answers === 'list' ? 'a list' : 'rows'} already`
      : 'one column here: the answer is several columns wide';
    const { ranges, known } = this;
    const isRange = (_: Arg, i: number): boolean =>
      ranges.some(({ place, grid }) => place === i && !isSingle(grid));
    const { name } = at(known.args.filter(isRange), 0);
    return cellError('#VALUE!', `${name} takes ${wanted}.`);
  }
}

/**
 * Cells in, cells out: the one path from any host to a function.
 *
 * Arguments are read by their quantity. An argument of one cell that is given a range spreads: the answer then has a cell
 * for each, a column against a row gives the full grid, cells outside a mismatched shape are #N/A, an error cell comes out
 * in its own place only, and a row whose cell is blank gives an empty text.
 *
 * @param row - the function's row in the catalogue.
 * @param cells - what the host has for each argument: a value, undefined, or rows of values; error values as `CellError`.
 * @returns values that any cell can hold; refusals as `CellError` with a sentence. Never throws on a cell's content.
 */
export function call(row: AnyRow, cells: readonly unknown[]): Answer {
  const known = prepared(row);
  const most = known.args.length;
  if (cells.length > most && cells.slice(most).some((c) => c !== undefined && c !== null))
    return countFail(row, cells.length);
  return new Call(row, known, cells).answer;
}
