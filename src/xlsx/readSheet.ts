import { type Place, parseAddress } from '../formula/address';
import type { Area } from '../formula/area';
import type { BookCell, BookPage, BookSheet } from '../book/book';
import { LONGEST_TEXT } from '../book/cells';
import { cut } from '../book/legal/names';
import { looksOutside } from '../formula/looksOutside';
import { type Shift, shifter } from '../formula/shift';
import { asTyped, isTooLong } from '../formula/spelling';
import { ConditionReader } from './conditions';
import { count } from './lineCount';
import { from1904 } from './daysFrom1904';
import { elementLeftOut, HIDDEN_COLUMNS, type LeftOut, PROTECTION, TOO_LONG } from './notKept';
import { withMergedEdges } from './mergedEdges';
import { PageReader } from './page';
import { RuleReader } from './readRules';
import { RunLooks } from './runLooks';
import type { Styles } from './readStyles';
import { cellValue } from './readValue';
import { DAMAGED, UnreadableFile, TOO_LARGE } from './refused';
import { parseArea, parseAreas, MOST_COLUMNS, MOST_ROWS } from '../formula/areaText';
import { type XmlAttributes, type Handlers, isTrue, scan } from './xml';

const MOST_CELLS = 2_000_000;
/** Letters of formulas that a file holds once for many cells, and of references to areas. */
const MOST_LETTERS = { shared: 50_000_000, areas: 5_000_000 } as const;
/** What spreadsheets take: a height in points, a width in characters. */
const TALLEST = 409.5;
const WIDEST = 255;

/** What the sheets of a file have in common. */
export interface Common {
  readonly texts: readonly string[];
  readonly styles: Styles;
  readonly leftOut: LeftOut;
  /** Whether the file counts days from 1904. */
  readonly isFrom1904: boolean;
  /** Cells read so far. */
  cells: number;
  /** Cells that formulas fill beside their own. */
  spilled: number;
  sharedLetters: number;
  areaLetters: number;
}

/** What the part of a sheet says by itself; tables, notes and charts have parts of their own. */
export type Body = Pick<
  BookSheet,
  'widths' | 'heights' | 'cells' | 'merges' | 'freeze' | 'gridlines' | 'rules' | 'conditions'
> & {
  readonly pages: Pick<BookPage, 'landscape' | 'breaks'> & Pick<PageReader, 'short'>;
  /** Rows that are not shown, whatever hides them. */
  readonly unseen: readonly number[];
};

export function readSheet(bytes: Uint8Array, common: Common): Body {
  const reader = new SheetReader(common);
  scan(bytes, reader);
  return reader.body();
}

const tooMany = (): UnreadableFile =>
  new UnreadableFile(TOO_LARGE(`more than ${MOST_CELLS / 1_000_000} million cells`));

function shortened(value: BookCell['value'], say: (sentence: string) => void): BookCell['value'] {
  if (typeof value !== 'string' || value.length <= LONGEST_TEXT) return value;
  say(`Texts of more than ${LONGEST_TEXT} letters, which no cell can hold, are cut.`);
  return cut(value, LONGEST_TEXT);
}

class SheetReader implements Handlers {
  private readonly common: Common;
  private readonly rules: RuleReader;
  private readonly conditions: ConditionReader;
  private readonly pages = new PageReader();
  private readonly looks: RunLooks;
  private readonly widths: Record<number, number> = {};
  private readonly heights: Record<number, number> = {};
  private readonly unseen: number[] = [];
  private readonly cells: BookCell[] = [];
  private readonly merges: Area[] = [];
  private readonly spills: Area[] = [];
  private readonly shared = new Map<string, { readonly shift: Shift; readonly at: Place }>();
  private freeze = { rows: 0, columns: 0 };
  private hasGridlines = true;
  /** Columns that widths were given for, each as often as it was named. */
  private columns = 0;
  private at = { row: -1, column: -1 };
  /** The cell that is being read. */
  private inCell = this.at;
  private cell: XmlAttributes = {};
  private formula: { readonly attributes: XmlAttributes; text: string } | undefined;
  private value: string | undefined;
  private inline: string | undefined;
  private words = '';
  private isReading = false;

  constructor(common: Common) {
    this.common = common;
    const { styles, leftOut } = common;
    const areas = (text: string): Area[] => this.areas(text);
    this.looks = new RunLooks(leftOut);
    this.rules = new RuleReader(leftOut, areas);
    this.conditions = new ConditionReader(styles, leftOut, areas);
  }

  body(): Body {
    const { widths, heights, merges, freeze, pages, unseen } = this;
    return {
      widths,
      heights,
      merges,
      freeze,
      pages,
      unseen,
      ...(this.hasGridlines ? {} : { gridlines: false }),
      rules: this.rules.rules,
      conditions: this.conditions.conditions,
      cells: merges.length === 0 ? this.withoutSpilled() : withMergedEdges(this.withoutSpilled(), merges),
    };
  }

  open(name: string, attributes: XmlAttributes): void {
    this.rules.open(name, attributes);
    this.conditions.open(name, attributes);
    this.pages.open(name, attributes);
    this.looks.open(name, attributes);
    this.words = '';
    const leftOut = elementLeftOut(name);
    if (leftOut !== undefined) this.common.leftOut.say(leftOut);
    if (name === 'c') this.openCell(attributes);
    else if (name === 'f') this.formula = { attributes, text: '' };
    else if (name === 'rPh') this.isReading = true;
    else if (name === 'row') this.openRow(attributes);
    else if (name === 'col') this.column(attributes);
    else if (name === 'mergeCell') this.merge(attributes.ref ?? '');
    else if (name === 'sheetProtection' && isTrue(attributes.sheet)) this.common.leftOut.say(PROTECTION);
    else if (name === 'sheetView')
      this.hasGridlines = !['0', 'false'].includes(attributes.showGridLines ?? '');
    else if (name === 'pane' && attributes.state?.startsWith('frozen'))
      this.freeze = {
        rows: count(attributes.ySplit),
        columns: Math.min(count(attributes.xSplit), MOST_COLUMNS),
      };
  }

  text(more: string): void {
    this.rules.text(more);
    this.conditions.text(more);
    this.words += more;
  }

  close(name: string): void {
    this.rules.close(name);
    this.conditions.close(name);
    this.looks.close(name);
    if (name === 'c') this.closeCell();
    else if (name === 'v') this.value = this.words;
    else if (name === 'f' && this.formula) this.formula.text = this.words;
    else if (name === 't' && !this.isReading) this.inline = (this.inline ?? '') + this.words;
    else if (name === 'rPh') this.isReading = false;
  }

  private openRow({ r, ht, hidden }: XmlAttributes): void {
    const row = r === undefined ? this.at.row + 1 : Math.floor(Number(r)) - 1;
    if (!(row >= 0 && row < MOST_ROWS)) throw new UnreadableFile(DAMAGED);
    this.at = { row, column: -1 };
    if (Number(ht) > 0) this.heights[row] = Math.min(Number(ht), TALLEST);
    if (isTrue(hidden)) this.unseen.push(row);
  }

  private column({ min, max, width, hidden }: XmlAttributes): void {
    if (isTrue(hidden)) this.common.leftOut.say(HIDDEN_COLUMNS);
    const [first, last] = [Math.max(1, count(min)), Math.min(count(max), MOST_COLUMNS)];
    const characters = Math.min(Math.round(Number(width) * 100) / 100, WIDEST);
    // A width for all columns to the right end is the usual width of the sheet, not one of its columns.
    if (last === MOST_COLUMNS || !(characters > 0)) return;
    this.columns += Math.max(0, last - first);
    if (this.columns > 10 * MOST_COLUMNS) throw new UnreadableFile(DAMAGED);
    for (let column = first; column <= last; column++) this.widths[column - 1] = characters;
  }

  private openCell(attributes: XmlAttributes): void {
    if (++this.common.cells > MOST_CELLS) throw tooMany();
    const at = attributes.r === undefined ? undefined : parseAddress(attributes.r);
    this.at = at ?? { row: this.at.row, column: this.at.column + 1 };
    if (this.at.row < 0 || this.at.row >= MOST_ROWS || this.at.column >= MOST_COLUMNS)
      throw new UnreadableFile(DAMAGED);
    this.inCell = this.at;
    this.cell = attributes;
    this.formula = undefined;
    this.value = undefined;
    this.inline = undefined;
  }

  private closeCell(): void {
    const style = this.common.styles.cells[Number(this.cell.s ?? 0)];
    const { formula, spill } = this.calculation();
    // What a formula last gave is calculated anew: nothing of it is lost.
    const say = (sentence: string): void => {
      if (formula === undefined) this.common.leftOut.say(sentence);
    };
    const stored = shortened(cellValue(this.cell.t, this.value, this.inline, this.common.texts, say), say);
    const value = this.common.isFrom1904 ? from1904(stored, this.cell.t, style?.format) : stored;
    if (value === null && formula === undefined && style === undefined) return;
    this.cells.push({
      ...this.inCell,
      value,
      ...(formula === undefined ? {} : { formula }),
      ...(spill === undefined ? {} : { spill }),
      ...(style === undefined ? {} : { style }),
    });
  }

  private calculation(): { readonly formula?: string; readonly spill?: Area } {
    if (!this.formula) return {};
    const { attributes, text } = this.formula;
    if (attributes.t === 'dataTable') {
      this.common.leftOut.say('What-if tables are left out; their last figures stay.');
      return {};
    }
    const stored = attributes.t === 'shared' ? this.sharedFormula(attributes.si ?? '', text) : text;
    if (stored.trim() === '') return {};
    if (isTooLong(stored)) {
      this.common.leftOut.say(TOO_LONG);
      return {};
    }
    const formula = asTyped(stored);
    if (looksOutside(formula)) {
      this.common.leftOut.say(
        'Links to other files are left out; what they last gave stays as plain values.',
      );
      return {};
    }
    const spill = attributes.t === 'array' ? parseArea(attributes.ref ?? '') : undefined;
    if (!spill || (spill.rows === 1 && spill.columns === 1)) return { formula };
    this.spills.push(spill);
    return { formula, spill };
  }

  /** Alike formulas are written out once, for the first cell, and named by number in the others. */
  private sharedFormula(id: string, text: string): string {
    if (text !== '') {
      if (!isTooLong(text)) this.shared.set(id, { shift: shifter(text), at: this.inCell });
      return text;
    }
    const first = this.shared.get(id);
    if (!first) return '';
    const formula = first.shift(this.inCell.row - first.at.row, this.inCell.column - first.at.column);
    this.common.sharedLetters += formula.length;
    if (this.common.sharedLetters > MOST_LETTERS.shared)
      throw new UnreadableFile(
        TOO_LARGE(`formulas of more than ${MOST_LETTERS.shared / 1_000_000} million letters`),
      );
    return formula;
  }

  private merge(ref: string): void {
    for (const area of this.areas(ref)) this.merges.push(area);
  }

  private areas(text: string): Area[] {
    this.common.areaLetters += text.length;
    if (this.common.areaLetters > MOST_LETTERS.areas)
      throw new UnreadableFile(TOO_LARGE('merged cells or rules for more areas than anyone can tell apart'));
    return parseAreas(text);
  }

  /** Cells that a formula fills get their values from it alone: a value of their own would be in its way. */
  private withoutSpilled(): BookCell[] {
    if (this.spills.length === 0) return this.cells;
    const filled = new Set<number>();
    for (const { row, column, rows, columns } of this.spills) {
      this.common.spilled += rows * columns;
      if (this.common.spilled > MOST_CELLS) throw tooMany();
      for (let r = row; r < row + rows; r++)
        for (let c = column; c < column + columns; c++) filled.add(r * MOST_COLUMNS + c);
    }
    return this.cells.map((cell) =>
      cell.formula === undefined && filled.has(cell.row * MOST_COLUMNS + cell.column)
        ? { ...cell, value: null }
        : cell,
    );
  }
}
