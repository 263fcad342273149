import type { Quantity } from '../catalogue/quantities';
import type { Arg } from '../catalogue/types';
import { inRange, type Range } from '../exposure/core/range';
import { type ArgumentRead, readArgument, readWithReason } from './argument';
import { type CellError, isCellError } from '../formula/errors';
import { type Bare, bareNumber, bareOf } from './bareNumber';
import type { CellRange } from './cellRange';
import { commonText } from './quickText';
import { valueOf } from './quantityReader';

/** So many texts are kept. A column that has more, and has not repeated as many, is read without. */
const MOST_TEXTS = 4096;

/** Reads cells of one argument as one quantity. What a text is read as is kept, as columns repeat their texts. */
export class ArgumentReader {
  private readonly arg: Arg;
  private readonly quantity: Quantity | undefined;
  private readonly exact: boolean;
  /** How bare numbers are read, in cells of numbers and in texts. */
  private readonly bare: Bare | undefined;
  private readonly written: Bare | undefined;
  private texts: Map<string, ArgumentRead> | undefined = new Map<string, ArgumentRead>();
  private repeats = 0;

  constructor(arg: Arg, quantity: Quantity | undefined, exact = false) {
    this.arg = arg;
    this.quantity = quantity;
    this.exact = exact;
    this.bare = quantity && bareOf(quantity, exact);
    this.written = quantity && bareOf(quantity, exact, true);
  }

  /** The number that a cell with a plain number stands for; NaN for every other cell, and where there is more to say. */
  number(cell: unknown): number {
    return typeof cell === 'number' && this.bare !== undefined ? bareNumber(cell, this.bare) : NaN;
  }

  read(cell: unknown): ArgumentRead | CellError {
    if (typeof cell === 'string') return this.text(cell);
    return isCellError(cell) ? cell : readArgument(cell, this.arg, this.quantity, this.exact);
  }

  private text(cell: string): ArgumentRead {
    const known = this.texts?.get(cell);
    if (known !== undefined) {
      this.repeats++;
      return known;
    }
    const read = this.fresh(cell);
    if (this.texts !== undefined && this.texts.size < MOST_TEXTS) this.texts.set(cell, read);
    else if (this.repeats < MOST_TEXTS) this.texts = undefined;
    return read;
  }

  private fresh(cell: string): ArgumentRead {
    const { quantity, written } = this;
    const quick = quantity && written ? commonText(cell, quantity, written) : NaN;
    return Number.isNaN(quick) ? valueOf(readWithReason(cell, this.arg, quantity, this.exact)) : quick;
  }
}

/** What the cells of an argument were read as: numbers lie close together, everything else beside them. */
export class ReadColumn {
  readonly rows: number;
  readonly columns: number;
  private readonly numbers: Float64Array;
  private others: unknown[] | undefined;

  constructor(rows: number, columns: number) {
    this.rows = rows;
    this.columns = columns;
    this.numbers = new Float64Array(rows * columns);
  }

  get length(): number {
    return this.numbers.length;
  }

  /** Where the cell lies that stands beside a cell of the answer: one row or column counts for all. */
  placeOf(row: number, column: number): number {
    return (this.rows === 1 ? 0 : row) * this.columns + (this.columns === 1 ? 0 : column);
  }

  set(place: number, value: ArgumentRead | CellError): void {
    const isNumber = typeof value === 'number' && !Number.isNaN(value);
    this.numbers[place] = isNumber ? value : NaN;
    if (isNumber) return;
    this.others ??= Array<unknown>(this.length);
    this.others[place] = value;
  }

  /** The number at a place; NaN where something else is there. */
  number(place: number): number {
    return this.numbers[place] as number;
  }

  other(place: number): ArgumentRead | CellError {
    return this.others?.[place] as ArgumentRead | CellError;
  }

  at(place: number): ArgumentRead | CellError {
    const number = this.number(place);
    return Number.isNaN(number) ? this.other(place) : number;
  }

  /** Whether every number lies in a range. */
  isWithin(range: Range): boolean {
    // by place: an iterator makes an object of each number
    for (let place = 0; place < this.length; place++) {
      const number = this.number(place);
      if (!Number.isNaN(number) && !inRange(number, range)) return false;
    }
    return true;
  }

  /** Reads all cells of a grid. */
  fill(grid: CellRange, reader: ArgumentReader): this {
    let place = 0;
    for (let row = 0; row < this.rows; row++)
      for (let column = 0; column < this.columns; column++, place++) {
        const cell = grid.at(row, column);
        const number = reader.number(cell);
        if (Number.isNaN(number)) this.set(place, reader.read(cell));
        else this.numbers[place] = number;
      }
    return this;
  }
}
