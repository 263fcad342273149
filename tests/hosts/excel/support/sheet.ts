import { addresses, type Block, blockAt, overlap, rangeText } from './a1';
import { enterFormulas, growTables, isFormula, type Pending } from './entered';
import { type Item, item, itemOn } from './item';
import type { Ways } from './ways';
import { Refusal } from './wire';

export interface Validation {
  Rule?: Record<string, unknown>;
  ErrorAlert?: { message: string; title: string };
  Prompt?: { message: string; title: string };
}
export interface Table {
  name: string;
  readonly sheet: Sheet;
  block: Block;
  readonly item: Item;
}

/** A text that Excel takes for something else, such as 1/3 for a day in January. */
export interface Misread {
  readonly misread: string;
}

const NUMBER_OR_DATE = /^[+-]?(\d+[.,]?\d*|[.,]\d+)%?$|^\d+\s?[/:.-]\s?\d+(\s?[/:.-]\s?\d+)?$|^\d+ \d+\/\d+$/;

const must = (isSo: boolean, message: string, code = 'InvalidArgument'): void => {
  if (!isSo) throw new Refusal(code, message);
};

/** One sheet of the workbook in memory, and what Excel refuses to put on it. */
export class Sheet {
  name: string;
  readonly id: string;
  readonly item: Item;
  /** What was written, by address: "B3". */
  readonly cells = new Map<string, unknown>();
  /**
   * Cells whose words begin as a formula does: written into a cell of texts, or behind an apostrophe. Excel tells them as it tells
   * formulas, without the apostrophe: OfficeDev/office-js #6687. Entered again they become formulas.
   */
  readonly words = new Set<string>();
  /** Values that a list in another cell spills into a cell. */
  readonly spilled = new Map<string, unknown>();
  readonly formats = new Map<string, unknown>();
  /** Formats of each cell by their paths: `looks.get('B3')?.['Format.Font.Bold']`. */
  readonly looks = new Map<string, Record<string, unknown>>();
  readonly validation = new Map<string, Validation>();
  readonly conditions: Item[] = [];
  readonly tables: Table[] = [];
  /** Names that hold for this sheet alone, with their cells, "C6", or their formula, "=Plan!$A$1". */
  readonly names = new Map<string, string>();
  readonly charts: Item[] = [];
  readonly merges: Block[] = [];
  /** Formulas that do not show what they give yet. */
  readonly pending = new Map<string, Pending>();
  /**
   * Nothing can be changed but what is typed into cells that are not locked; a block with one locked cell in it is refused
   * whole, microsoft-graph-docs #4546.
   */
  isProtected = false;
  readonly unlocked = new Set<string>();
  /** Formulas over several cells, entered with Ctrl+Shift+Enter. Microsoft, "Guidelines and examples of array formulas". */
  readonly arrays: Block[] = [];
  /** Rows that a filter hides, and rows that somebody has hidden. */
  readonly filtered = new Set<number>();
  readonly hidden = new Set<number>();
  readonly hiddenColumns = new Set<number>();
  comments = 0;

  constructor(name: string, id: string) {
    this.name = name;
    this.id = id;
    this.item = item('Worksheet', `[${name}]`, {
      sheet: this,
      properties: { Name: name, Id: id, ShowGridlines: true },
    });
  }

  /** A lone value goes to every cell; null leaves a cell as it is, an empty text clears it. */
  write(
    block: Block,
    name: string,
    value: unknown,
    ways: Ways,
    checkFormula: (formula: string) => void,
  ): void {
    this.checkLocks(block, name);
    const lines = Array.isArray(value) ? (value as unknown[][]) : undefined;
    must(
      !lines || (lines.length === block.rows && lines.every((line) => line.length === block.columns)),
      `${rangeText(block)}.${name}: ${lines?.length} by ${lines?.[0]?.length} values for ${block.rows} by ${block.columns} cells`,
    );
    const formulas = new Map<string, string>();
    const filled: string[] = [];
    for (const [i, at] of addresses(block).entries()) {
      const content = lines ? lines[Math.floor(i / block.columns)]?.[i % block.columns] : value;
      if (content === null) continue;
      if (name === 'NumberFormat') this.formats.set(at, content);
      else if (!this.isCovered(at)) {
        if (content !== '' && !this.cells.has(at)) filled.push(at);
        const typed = content === '' ? content : this.typed(at, content, checkFormula);
        const isMarked = typeof content === 'string' && content.startsWith("'");
        if (isFormula(typed) && this.formats.get(at) !== '@' && !isMarked) formulas.set(at, typed);
        else this.put(at, typed);
      }
    }
    if (ways.growsTables) for (const at of filled) growTables(this, at, ways);
    enterFormulas(this, formulas, ways);
  }

  put(at: string, content: unknown): void {
    this.pending.delete(at);
    this.words.delete(at);
    if (content === '') this.cells.delete(at);
    else this.cells.set(at, content);
    if (isFormula(content)) this.words.add(at);
  }

  /** The formula in a cell; nothing where it holds anything else. */
  formulaAt(at: string): string | undefined {
    const content = this.cells.get(at);
    return isFormula(content) && !this.words.has(at) ? content : undefined;
  }

  /** Refuses what protection and formulas over several cells do not let through. */
  checkLocks(block: Block, what: string): void {
    const isTyping = what === 'Formulas' || what === 'Values';
    const isFree = isTyping && addresses(block).every((at) => this.unlocked.has(at));
    must(!this.isProtected || isFree, `${this.name} is protected`, 'AccessDenied');
    const isWithin = ({ row, column, rows, columns }: Block): boolean =>
      row >= block.row &&
      column >= block.column &&
      row + rows <= block.row + block.rows &&
      column + columns <= block.column + block.columns;
    const part = this.arrays.find((array) => overlap(array, block) && !isWithin(array));
    must(!isTyping || !part, `${rangeText(block)} is a part of an array`, 'InvalidOperation');
  }

  /** Of merged cells only the first holds anything. */
  private isCovered(at: string): boolean {
    const cell = blockAt(at);
    const merge = this.merges.find((one) => overlap(one, cell));
    return merge !== undefined && (merge.row !== cell.row || merge.column !== cell.column);
  }

  /** What becomes of something that is typed into a cell. */
  private typed(at: string, content: unknown, checkFormula: (formula: string) => void): unknown {
    if (this.formats.get(at) === '@') return String(content);
    if (typeof content !== 'string') return content;
    if (content.startsWith("'")) return content.slice(1);
    if (content.startsWith('=')) checkFormula(content);
    else must(!/^[+\-@]\D/.test(content), `${at}: Excel takes ${content} for a formula`);
    return NUMBER_OR_DATE.test(content) ? ({ misread: content } satisfies Misread) : content;
  }

  dress(block: Block, path: string, value: unknown): void {
    this.checkLocks(block, path);
    for (const at of addresses(block)) {
      const looks = this.looks.get(at) ?? {};
      looks[path] = value;
      this.looks.set(at, looks);
    }
  }

  validate(block: Block, name: string, value: unknown): void {
    this.checkLocks(block, name);
    const cells = addresses(block);
    if (name === 'Rule') this.checkRule(cells, value as Record<string, unknown>);
    else this.checkMessage(name, value as { message: string; title: string });
    for (const at of cells) this.validation.set(at, { ...this.validation.get(at), [name]: value });
  }

  private checkRule(cells: readonly string[], rule: Record<string, unknown>): void {
    const kinds = Object.entries(rule).filter(([, criterion]) => criterion != null);
    must(kinds.length === 1, `a rule has one criterion, not ${kinds.length}`);
    const { source } = (rule.list ?? {}) as { source?: unknown };
    must(typeof source !== 'string' || source.length <= 255, `a list takes 255 letters: ${String(source)}`);
    const prompted = cells.filter((at) => this.validation.get(at)?.Prompt).length;
    must(
      prompted === 0 || prompted === cells.length,
      'a rule on an area where only some cells have a message',
    );
  }

  private checkMessage(name: string, { title, message }: { title: string; message: string }): void {
    must(title.length <= 32, `${name}: a title takes 32 letters: ${title}`);
    must(message.length <= 255, `${name}: a message takes 255 letters: ${message}`);
  }

  merge(block: Block): void {
    this.checkLocks(block, 'Merge');
    const taken = [...this.merges, ...this.tables.map((table) => table.block)];
    must(
      !taken.some((other) => overlap(block, other)),
      `${rangeText(block)} cannot be merged: it overlaps a table or another merged cell`,
    );
    this.merges.push(block);
    for (const at of addresses(block).slice(1)) this.cells.delete(at);
  }

  addTable(block: Block, name: string): Table {
    must(
      !this.tables.some((other) => overlap(block, other.block)),
      `${rangeText(block)}: a table cannot overlap another`,
      'InvalidOperation',
    );
    must(block.rows > 1, `${rangeText(block)}: a table needs a row below its heading`);
    const label = `[${this.name}].Tables(${rangeText(block)})`;
    const made: Table = { name, sheet: this, block, item: item('Table', label, { sheet: this }) };
    made.item.properties.Name = name;
    this.tables.push(made);
    return made;
  }

  /** Takes over everything from another sheet, as Excel does when it copies one. */
  takeOver(from: Sheet, nameOf: (table: string) => string): void {
    for (const [at, cell] of from.cells) this.cells.set(at, cell);
    for (const at of from.words) this.words.add(at);
    for (const [at, value] of from.spilled) this.spilled.set(at, value);
    for (const [at, format] of from.formats) this.formats.set(at, format);
    for (const [at, looks] of from.looks) this.looks.set(at, { ...looks });
    for (const [at, validation] of from.validation) this.validation.set(at, { ...validation });
    const whole = itemOn(this, from.item, this.item.label);
    Object.assign(this.item.properties, whole.properties, { Name: this.name, Id: this.id });
    for (const [name, part] of whole.children) this.item.children.set(name, part);
    this.conditions.push(...from.conditions.map((condition) => itemOn(this, condition)));
    this.charts.push(...from.charts.map((chart) => itemOn(this, chart)));
    this.merges.push(...from.merges);
    for (const [name, at] of from.names) this.names.set(name, at);
    for (const [at, shows] of from.pending) this.pending.set(at, shows);
    this.isProtected = from.isProtected;
    this.comments = from.comments;
    for (const at of from.unlocked) this.unlocked.add(at);
    for (const row of from.filtered) this.filtered.add(row);
    for (const row of from.hidden) this.hidden.add(row);
    this.arrays.push(...from.arrays);
    for (const { name, block } of from.tables) this.addTable(block, nameOf(name));
  }

  /** The headings of a table, as they stand in its first row. */
  headings({ block }: Table): unknown[] {
    return addresses({ ...block, rows: 1 }).map((at) => this.cells.get(at));
  }
}

/** Whether a table or a cell may have the name, whatever others there are. */
export function checkName(name: string): void {
  must(
    /^[\p{L}_\\][\p{L}\p{N}_.\\]{0,254}$/u.test(name) && !/^([A-Z]{1,3}\d+|R|C|R\d*C\d*)$/i.test(name),
    `no name for a table or a cell: ${name}`,
  );
}

export function checkSheetName(name: string): void {
  must(name !== '' && name.length <= 31 && !/[\\/?*[\]:]|^'|'$/.test(name), `no name for a sheet: ${name}`);
}
