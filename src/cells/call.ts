import type { AnyRow, Arg, Outcome, Table } from '../catalogue/types';
import { isChosen, isTable } from '../catalogue/types';
import type { Quantity } from '../catalogue/quantities';
import { isFail, type Result } from '../exposure/core/result';
import { chosenQuantity, dependsOn, type Read, readArgument } from './argument';
import { type CellError, cellError, fromFail, isCellError } from './errors';
import { type Grid, isSingle, toGrid } from './grid';
import { type Lists, readLists } from './lists';
import { BLANK } from './quantity';

/** What a call gives for one cell. An empty text stands for a blank row. */
export type AnswerCell = number | string | boolean | CellError;
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

/** "reading is missing: reading of one pop." */
const missing = ({ name, about }: Arg): CellError =>
  cellError('#VALUE!', `${name} is missing: ${about.charAt(0).toLowerCase()}${about.slice(1)}.`);

/** The quantity to read an argument as, where it does not depend on another, or depends on one whose value is known. */
function quantityOf(arg: Arg, other: Read): Quantity | undefined {
  if (isChosen(arg.kind)) return chosenQuantity(arg.kind, other);
  return arg.kind as Quantity;
}

/** Reads the arguments of a row in the order in which they decide about each other. */
class Reader {
  private readonly args: readonly Arg[];
  /** For each argument the index of the one that decides its quantity. */
  private readonly deciders: readonly (number | undefined)[];
  private readonly order: readonly number[];
  private readonly fixed: (Read | CellError | undefined)[] = [];
  private readonly isFixed: boolean[] = [];
  private readonly grids: readonly (readonly Grid[])[];

  constructor(row: AnyRow, grids: readonly (readonly Grid[])[]) {
    this.grids = grids;
    this.args = row.args as readonly Arg[];
    this.deciders = this.args.map((arg) => {
      const name = dependsOn(arg);
      return name === undefined ? undefined : this.args.findIndex((a) => a.name === name);
    });
    const indices = [...this.args.keys()].filter((i) => this.args[i]?.takes === 'one');
    this.order = [
      ...indices.filter((i) => this.deciders[i] === undefined),
      ...indices.filter((i) => this.deciders[i] !== undefined),
    ];
    for (const i of this.order) {
      const decider = this.deciders[i];
      this.isFixed[i] = isSingle(this.grid(i)) && (decider === undefined || this.isFixed[decider] === true);
      if (this.isFixed[i])
        this.fixed[i] = this.read(
          i,
          this.grid(i).at(0, 0),
          decider === undefined ? undefined : this.fixed[decider],
        );
    }
  }

  grid(index: number): Grid {
    return this.grids[index]?.[0] as Grid;
  }

  /** The quantity of a list, which another argument may decide; `values` holds that one where it is a range. */
  listQuantity(index: number, values: readonly unknown[] = this.fixed): Quantity | undefined {
    const decider = this.deciders[index];
    return quantityOf(this.args[index] as Arg, decider === undefined ? undefined : (values[decider] as Read));
  }

  /** Whether every list can be read once for the whole call. */
  get listsAreFixed(): boolean {
    return this.args.every((arg, i) => {
      const decider = this.deciders[i];
      return arg.takes === 'one' || decider === undefined || this.isFixed[decider] === true;
    });
  }

  /** A refusal or error among the arguments that are one cell: it is the answer for all. */
  firstFault(): CellError | undefined {
    for (const i of this.order) {
      const arg = this.args[i] as Arg;
      if (!this.isFixed[i]) continue;
      const value = this.fixed[i];
      if (isCellError(value)) return value;
      if (isFail(value)) return fromFail(value);
      if (value === BLANK) return missing(arg);
    }
    return undefined;
  }

  private read(index: number, cell: unknown, other: Read | CellError): Read | CellError {
    if (isCellError(cell)) return cell;
    const arg = this.args[index] as Arg;
    return readArgument(cell, arg, quantityOf(arg, isCellError(other) ? undefined : other));
  }

  /** Fills `values` for one cell of the answer; or says what that cell is instead. */
  readInto(values: unknown[], row: number, column: number): AnswerCell | undefined {
    for (const i of this.order) {
      if (this.isFixed[i]) {
        values[i] = this.fixed[i];
        continue;
      }
      const grid = this.grid(i);
      const r = grid.rows === 1 ? 0 : row;
      const c = grid.columns === 1 ? 0 : column;
      if (r >= grid.rows || c >= grid.columns) return OUTSIDE_SHAPE;
      const decider = this.deciders[i];
      values[i] = this.read(i, grid.at(r, c), decider === undefined ? undefined : (values[decider] as Read));
    }
    let blank = false;
    for (const i of this.order) {
      const value = values[i];
      if (value === BLANK) blank = true;
      else if (typeof value === 'object')
        return isCellError(value) ? value : isFail(value) ? fromFail(value) : undefined;
    }
    return blank ? '' : undefined;
  }
}

function cellOf(outcome: Result<Outcome> | AnswerCell): AnswerCell {
  if (typeof outcome === 'number') {
    if (Number.isFinite(outcome)) return outcome + 0;
    return cellError(
      '#NUM!',
      'The answer is too large or too small for a cell: check the numbers that go in.',
    );
  }
  if (typeof outcome === 'string' || typeof outcome === 'boolean' || isCellError(outcome)) return outcome;
  return isFail(outcome)
    ? fromFail(outcome)
    : cellError('#VALUE!', 'The answer is a list where one value was expected.');
}

/** Rows of cells, each made from its place. */
function filled(
  rows: number,
  columns: number,
  cellAt: (row: number, column: number) => AnswerCell,
): AnswerCell[][] {
  const answer: AnswerCell[][] = [];
  for (let row = 0; row < rows; row++) {
    const cells: AnswerCell[] = [];
    for (let column = 0; column < columns; column++) cells.push(cellAt(row, column));
    answer.push(cells);
  }
  return answer;
}

/** A list answer in the shape of the list it answers, blanks left blank. */
function listAnswer(outcome: Result<Outcome>, { shape, places }: Lists): Answer {
  if (isFail(outcome)) return fromFail(outcome);
  const values = outcome as readonly number[];
  const { rows, columns } = shape as Grid;
  return filled(rows, columns, (r, c) => {
    const place = places[r * columns + c] as number;
    return place < 0 ? '' : cellOf(values[place] as number);
  });
}

/** Several values side by side, or what stands in for all of them. */
const sideBySide = (outcome: Result<Outcome> | AnswerCell, width: number): AnswerCell[] =>
  Array.from({ length: width }, (_, i) =>
    Array.isArray(outcome)
      ? cellOf(outcome[i] as number)
      : isFail(outcome)
        ? fromFail(outcome)
        : (outcome as AnswerCell),
  );

/** The rows of a table, each cell an answer or a refusal of its own. */
const tableAnswer = (outcome: Result<Outcome>): Answer =>
  isFail(outcome) ? fromFail(outcome) : (outcome as Table).map((cells) => cells.map(cellOf));

/** One call of a function, spread or not. */
class Spread {
  readonly rows: number;
  readonly columns: number;
  private readonly row: AnyRow;
  private readonly grids: readonly (readonly Grid[])[];
  private readonly reader: Reader;
  private readonly values: unknown[];
  private lists: Lists | undefined;

  constructor(row: AnyRow, grids: readonly (readonly Grid[])[], reader: Reader) {
    this.row = row;
    this.grids = grids;
    this.reader = reader;
    const ones = (row.args as readonly Arg[]).flatMap((arg, i) =>
      arg.takes === 'one' ? [reader.grid(i)] : [],
    );
    this.rows = ones.reduce((most, g) => Math.max(most, g.rows), 1);
    this.columns = ones.reduce((most, g) => Math.max(most, g.columns), 1);
    this.values = (row.args as readonly Arg[]).map(() => undefined);
  }

  /** Reads the lists, for the whole call or for the cell whose other arguments stand in `values`. */
  readLists(values?: readonly unknown[]): CellError | undefined {
    const lists = readLists(this.row, this.grids, (i) => this.reader.listQuantity(i, values));
    if (isCellError(lists)) return lists;
    if (isFail(lists)) return fromFail(lists);
    this.lists = lists;
    for (const [i, arg] of (this.row.args as readonly Arg[]).entries())
      if (arg.takes !== 'one') this.values[i] = lists.values.get(arg.name);
    return undefined;
  }

  /** What the function gives at one place; a cell where there is nothing to calculate. */
  at(row: number, column: number): Result<Outcome> | AnswerCell {
    const instead = this.reader.readInto(this.values, row, column);
    if (instead !== undefined) return instead;
    const fault =
      this.lists === undefined || !this.reader.listsAreFixed ? this.readLists(this.values) : undefined;
    return fault ?? this.row.run(...this.values);
  }

  get only(): Answer {
    const outcome = this.at(0, 0);
    if (isCellError(outcome) || outcome === '' || isFail(outcome))
      return isFail(outcome) ? fromFail(outcome) : (outcome as AnswerCell);
    if (this.row.answers === 'list') return listAnswer(outcome as Outcome, this.lists as Lists);
    if (isTable(this.row.answers)) return tableAnswer(outcome as Outcome);
    return this.row.answers === 'one'
      ? cellOf(outcome as Outcome)
      : [sideBySide(outcome as Outcome, this.row.answers.length)];
  }

  /** The first argument that is a range where the function takes none. */
  get range(): string | undefined {
    return (this.row.args as readonly Arg[]).find(
      (arg, i) => arg.takes === 'one' && !isSingle(this.reader.grid(i)),
    )?.name;
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
  const args = row.args as readonly Arg[];
  const endless = args.some((a) => a.takes === 'rest');
  if (
    !endless &&
    cells.length > args.length &&
    cells.slice(args.length).some((c) => c !== undefined && c !== null)
  )
    return countFail(row, cells.length);
  const grids = args.map((arg, i) =>
    arg.takes === 'rest' ? cells.slice(i).map(toGrid) : [toGrid(cells[i])],
  );
  const reader = new Reader(row, grids);
  const spread = new Spread(row, grids, reader);
  const fault = reader.firstFault() ?? (reader.listsAreFixed ? spread.readLists() : undefined);
  if (fault !== undefined) return fault;
  const { rows, columns } = spread;
  if (rows === 1 && columns === 1) return spread.only;
  const spills = row.answers === 'list' || isTable(row.answers);
  if (spills || (row.answers !== 'one' && columns > 1)) {
    const wanted = spills
      ? `one cell here, not a range: the answer is ${row.answers === 'list' ? 'a list' : 'rows'} already`
      : 'one column here: the answer is several columns wide';
    return cellError('#VALUE!', `${spread.range} takes ${wanted}.`);
  }
  if (row.answers === 'one') return filled(rows, columns, (r, c) => cellOf(spread.at(r, c)));
  const { length } = row.answers as readonly string[];
  return Array.from({ length: rows }, (_, r) => sideBySide(spread.at(r, 0), length));
}
