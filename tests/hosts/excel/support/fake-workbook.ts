import { addresses, addressOf, type Block, blockAt, overlap, rangeText } from './a1';
import { isOurs } from './entered';
import { checkFormula } from './formula-check';
import { type Item, item, shown } from './item';
import { checkName, checkSheetName, Sheet, type Table } from './sheet';
import { spelled } from './spelled';
import { newExcel, type Ways } from './ways';
import {
  type Action,
  ACTION,
  type Arguments,
  type Batch,
  type ObjectPath,
  PATH,
  Refusal,
  type Reply,
} from './wire';

/** Where a batch is made to fail: what comes before is done and stays, as in Excel. */
export interface Failure {
  /** Counted from 1. */
  readonly batch: number;
  /** Counted from 0. */
  readonly action: number;
  readonly code: string;
}

const CLASSES: Readonly<Record<string, string>> = {
  Worksheets: 'WorksheetCollection',
  Tables: 'TableCollection',
  Charts: 'ChartCollection',
  Series: 'ChartSeriesCollection',
};
const locationOf = (kind: string, name: string): string =>
  `${CLASSES[kind] ?? kind}.${name.charAt(0).toLowerCase()}${name.slice(1)}`;

/**
 * A workbook in memory that answers the batches of the Excel library as Excel does on the wire.
 *
 * It proves what we send and how we react, not what Excel calculates. It refuses what Excel refuses: arrays of another size than
 * their range, names that are doubled or impossible, tables that overlap, formulas that speak of what is not there, members
 * of an object that is not there.
 */
export class FakeWorkbook {
  readonly sheets: Sheet[] = [];
  /** Names of cells, which tables may not take. */
  readonly names: string[] = [];
  /** Cells that a name stands for; the others stand for constants. */
  readonly namedCells = new Map<string, { readonly sheet: Sheet; readonly block: Block }>();
  /** Every write and every call, in words. */
  readonly log: string[] = [];
  /** Requests in their order, without those in which the library only lets go of ranges it has held on to. */
  readonly batches: Batch[] = [];
  failures: readonly Failure[] = [];
  /** How this Excel is set up, and what it is known for. */
  readonly ways: Ways = newExcel();
  /** What the library says of each batch beside its content; 64 asks Excel to wait for a cell that is being typed in. */
  readonly flags: number[] = [];
  /** Somebody else at work in the same workbook, before the batch of that number is answered. */
  beforeBatch: (number: number) => void = () => {};
  /** What a method of that name answers. */
  readonly onMethod: Record<string, (args: unknown[]) => unknown> = {};
  /** What a formula gives. */
  onFormula: (formula: string) => unknown = () => 0;
  /** What a formula reads as once it is entered. */
  onFormulaWritten: (formula: string) => string = (formula) => formula;
  active: Sheet | undefined;
  selection: { readonly sheet: Sheet; readonly block: Block } | undefined;
  #made = 0;
  /** Ranges that the library asked to keep between requests, by the number that it was told. */
  readonly #kept = new Map<string, Item>();
  readonly #numbers = new Map<Item, string>();

  constructor(...names: string[]) {
    for (const name of names) this.addSheet(name);
    this.active = this.sheets[0];
  }

  find(name: string): Sheet | undefined {
    return this.sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  }

  addSheet(name = `Sheet${this.sheets.length + 1}`): Sheet {
    checkSheetName(name);
    if (this.find(name)) throw new Refusal('ItemAlreadyExists', `there is a sheet called ${name}`);
    const sheet = new Sheet(name, `{${++this.#made}}`);
    this.sheets.push(sheet);
    return sheet;
  }

  select(sheetName: string, address: string): void {
    const sheet = this.find(sheetName);
    if (!sheet) throw new Error(`no sheet ${sheetName}`);
    this.selection = { sheet, block: blockAt(address) };
  }

  get tables(): Table[] {
    return this.sheets.flatMap((sheet) => sheet.tables);
  }

  /** Answers one batch. `known` holds what earlier batches of the same context named: their numbers start anew in each. */
  answer(batch: Batch, known: Map<number, Item>, flags: number): Reply {
    if (onlyLetsGo(batch)) return { Results: [] };
    this.batches.push(batch);
    this.flags.push(flags);
    this.beforeBatch(this.batches.length);
    const traces: number[] = [];
    const reply: Reply = { Results: [], TraceIds: traces };
    for (const [index, action] of batch.Actions.entries()) {
      try {
        this.failWhereTold(index);
        if (action.ActionType === ACTION.trace) {
          traces.push(action.Id);
          reply.Results.push({ ActionId: action.Id, Value: null });
          continue;
        }
        const Value = this.perform(action, batch, known);
        if (Value !== undefined) reply.Results.push({ ActionId: action.Id, Value });
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        const { code: Code, message: Message, location: Location } = error;
        this.waitLess(batch);
        return { ...reply, Error: { Code, Message, Location, ActionIndex: index, HttpStatusCode: 400 } };
      }
    }
    this.waitLess(batch);
    return reply;
  }

  /** What was not ready comes nearer with each look. */
  private waitLess({ Actions }: Batch): void {
    const { unready } = this.ways;
    if (
      !unready ||
      !Actions.some(({ QueryInfo }) => QueryInfo?.Select?.some((name) => /^(values|text)$/i.test(name)))
    )
      // prettier-ignore
      return;
    if (--unready.looks <= 0) this.ways.unready = undefined;
  }

  private failWhereTold(action: number): void {
    const told = this.failures.find((one) => one.batch === this.batches.length && one.action === action);
    if (told) throw new Refusal(told.code, 'as the test wants it');
  }

  private perform(action: Action, batch: Batch, known: Map<number, Item>): unknown {
    const target = this.resolve(action.ObjectPathId, batch, known);
    if (action.ActionType === ACTION.instantiate) return target.missing ? null : this.reference(target);
    if (action.ActionType === ACTION.query)
      return target.missing ? null : this.query(target, action.QueryInfo?.Select ?? []);
    if (target.sheet && !this.sheets.includes(target.sheet))
      throw new Refusal('ItemNotFound', `${target.label} was deleted`);
    // The library's own calls, such as keeping hold of a range, pass over what is not there.
    if (target.missing && action.Name.startsWith('_')) return undefined;
    if (target.missing) throw new Refusal('ItemNotFound', `${target.label} is not there`);
    return this.located(target.kind, action.Name, () => {
      const args = this.args(action.ArgumentInfo, batch, known);
      if (action.ActionType === ACTION.set) return this.set(target, action.Name, args[0]);
      if (action.ActionType === ACTION.method) return this.invoke(target, action.Name, args);
      return undefined;
    });
  }

  private reference(target: Item): Record<string, unknown> {
    const number = this.#numbers.get(target);
    return number === undefined ? {} : { _ReferenceId: number };
  }

  private keep(target: Item): void {
    const number = `kept ${this.#kept.size}`;
    this.#kept.set(number, target);
    if (!this.#numbers.has(target)) this.#numbers.set(target, number);
  }

  private located<T>(kind: string, name: string, work: () => T): T {
    try {
      return work();
    } catch (error) {
      if (error instanceof Refusal) error.location ||= locationOf(kind, name);
      throw error;
    }
  }

  private args(info: Arguments | undefined, batch: Batch, known: Map<number, Item>): unknown[] {
    const referenced = info?.ReferencedObjectPathIds;
    return (info?.Arguments ?? []).map((value, i) =>
      referenced?.[i] ? this.resolve(referenced[i], batch, known) : value,
    );
  }

  private resolve(id: number, batch: Batch, known: Map<number, Item>): Item {
    const before = known.get(id);
    if (before) return before;
    const path = batch.ObjectPaths[id];
    if (!path) throw new Refusal('InvalidObjectPath', `nothing has number ${id}`);
    const kept = path.ObjectPathType === PATH.reference ? this.#kept.get(path.Name) : undefined;
    if (kept) return kept;
    const parent = path.ParentObjectPathId ? this.resolve(path.ParentObjectPathId, batch, known) : undefined;
    const args = this.args(path.ArgumentInfo, batch, known);
    const found = parent
      ? this.located(parent.kind, path.Name, () => this.child(parent, path, args))
      : item(path.ObjectPathType === PATH.global ? 'Workbook' : path.Name, path.Name);
    known.set(id, found);
    return found;
  }

  private child(parent: Item, path: ObjectPath, args: unknown[]): Item {
    if (path.ObjectPathType === PATH.property) return this.part(parent, path.Name, path.Name);
    if (parent.kind === 'Worksheets') return this.sheetBy(path.Name, args[0]);
    if (path.Name === 'GetSelectedRange') return this.selected();
    if (path.Name === 'GetActiveCell') return this.activeCell();
    if (path.Name === 'GetTables') return tablesAround(parent);
    if (parent.kind === 'Tables' && path.ObjectPathType === PATH.indexer)
      return this.tableBy(String(args[0])).item;
    if (parent.kind === 'Shapes') return this.shape(parent, path, args);
    if (parent.kind === 'Table') return this.tablePart(parent, path.Name);
    if (parent.kind === 'Names' && path.Name === 'GetItemOrNullObject')
      return this.nameOrNothing(String(args[0]), parent.sheet);
    if (parent.kind === 'Names' && path.ObjectPathType === PATH.indexer)
      return this.nameBy(String(args[0]), parent.sheet);
    if (parent.kind === 'NamedItem' && parent.missing) return parent;
    if (parent.kind === 'NamedItem') return this.cellsNamed(parent);
    if (path.Name === 'Copy') return this.copiedSheet(parent.sheet as Sheet).item;
    if (path.Name === 'GetRow') return rowOfRange(parent, args[0] as number);
    if (path.Name === 'GetBoundingRect') return around(parent, args[0] as Item);
    if (path.Name === 'GetUsedRangeOrNullObject')
      return parent.missing
        ? item('Range', parent.label, { missing: true })
        : usedRange(parent.sheet as Sheet);
    if (path.Name === 'GetCell' && parent.kind === 'Range') return cellOfRange(parent, args as number[]);
    const block = blockBy(path.Name, args);
    if (block) return rangeItem(parent.sheet as Sheet, block);
    if (path.Name === 'Add') return this.added(parent, args);
    if (parent.kind === 'Series') {
      const member = parent.members[args[0] as number];
      if (!member) throw new Refusal('InvalidArgument', `${parent.label} has no member ${String(args[0])}`);
      return member;
    }
    if (parent.kind === 'Points') return this.part(parent, 'ChartPoint', `(${String(args[0])})`);
    if (parent.kind === 'Borders') return this.part(parent, 'Border', `(${String(args[0])})`);
    if (parent.kind === 'Range') return item(path.Name, `${parent.label}.${path.Name}`);
    throw new Error(`The workbook in memory does not know ${parent.label}.${path.Name}.`);
  }

  /** A property that is an object of its own, or a member of a collection that is always there. */
  private part(parent: Item, kind: string, name: string): Item {
    const known = parent.children.get(name);
    if (known) return known;
    const dot = name.startsWith('(') ? '' : '.';
    const made = item(kind, parent.kind === 'Workbook' ? name : `${parent.label}${dot}${name}`, {
      sheet: parent.sheet,
      block: parent.block,
      missing: parent.missing,
      within: parent.block ? `${parent.within}${parent.within ? dot : ''}${name}` : '',
    });
    parent.children.set(name, made);
    return made;
  }

  private sheetBy(method: string, name: unknown): Item {
    if (method === 'Add') {
      this.checkStructure();
      const added = this.addSheet(name as string | undefined);
      this.log.push(`Worksheets.Add(${JSON.stringify(added.name)})`);
      return added.item;
    }
    const sheet = method === 'GetActiveWorksheet' ? this.active : this.byNameOrId(String(name));
    if (sheet) return sheet.item;
    if (method.endsWith('OrNullObject')) return item('Worksheet', `[${String(name)}]`, { missing: true });
    throw new Refusal('ItemNotFound', `no sheet is called ${String(name)}`);
  }

  private checkStructure(): void {
    if (this.ways.structureIsProtected)
      throw new Refusal('AccessDenied', 'the structure of the workbook is protected');
  }

  /** Members of a list that was read come back by their ids. */
  private byNameOrId(key: string): Sheet | undefined {
    return this.find(key) ?? this.sheets.find(({ id }) => id === key);
  }

  private selected(): Item {
    if (!this.selection) throw new Refusal('InvalidSelection', 'no cells are selected');
    return rangeItem(this.selection.sheet, this.selection.block);
  }

  private activeCell(): Item {
    const { sheet, block } = this.selected();
    return rangeItem(sheet as Sheet, { ...(block as Block), rows: 1, columns: 1 });
  }

  private tableBy(name: string): Table {
    const found = this.tables.find((table) => table.name.toLowerCase() === name.toLowerCase());
    if (!found) throw new Refusal('ItemNotFound', `no table is called ${name}`);
    return found;
  }

  /** A sheet once more, with everything on it, under the name that Excel gives to copies. */
  private copiedSheet(from: Sheet): Sheet {
    this.checkStructure();
    const base = from.name.replace(/ \(\d+\)$/, '');
    const nth = (n: number): string => ` (${n})`;
    let n = 2;
    while (this.find(base.slice(0, 31 - nth(n).length) + nth(n))) n++;
    const copy = this.addSheet(base.slice(0, 31 - nth(n).length) + nth(n));
    this.log.push(`${from.item.label}.Copy() = ${JSON.stringify(copy.name)}`);
    copy.takeOver(from, (table) => this.freeTableName(table));
    return copy;
  }

  /** Lights3 beside Lights and Lights2. */
  private freeTableName(name: string): string {
    const used = this.tables.map((table) => table.name);
    let n = 2;
    while (used.includes(`${name}${n}`)) n++;
    return `${name}${n}`;
  }

  private tablePart({ properties }: Item, part: string): Item {
    const table = this.tableBy(String(properties.Name));
    const { sheet, block } = table;
    if (part === 'ConvertToRange') {
      sheet.tables.splice(sheet.tables.indexOf(table), 1);
      this.log.push(`${table.item.label}.ConvertToRange()`);
      return rangeItem(sheet, block);
    }
    if (part === 'GetRange') return rangeItem(sheet, block);
    if (part === 'GetHeaderRowRange') return rangeItem(sheet, { ...block, rows: 1 });
    if (part === 'GetDataBodyRange')
      return rangeItem(sheet, { ...block, row: block.row + 1, rows: block.rows - 1 });
    throw new Error(`The workbook in memory does not know Table.${part}.`);
  }

  private nameOrNothing(name: string, sheet: Sheet | undefined): Item {
    try {
      return this.nameBy(name, sheet);
    } catch (error) {
      if (error instanceof Refusal) return item('NamedItem', name, { missing: true });
      throw error;
    }
  }

  private nameBy(name: string, sheet: Sheet | undefined): Item {
    if (sheet) return nameOnSheet(sheet, name);
    const found = this.names.find((one) => one.toLowerCase() === name.toLowerCase());
    if (found === undefined) throw new Refusal('ItemNotFound', `nothing is called ${name}`);
    return item('NamedItem', found, { properties: { Name: found } });
  }

  private cellsNamed({ label, sheet, block }: Item): Item {
    if (sheet) return block ? rangeItem(sheet, block) : item('Range', label, { missing: true });
    const cells = this.namedCells.get(label);
    return cells ? rangeItem(cells.sheet, cells.block) : item('Range', label, { missing: true });
  }

  private added(parent: Item, args: unknown[]): Item {
    const sheet = parent.sheet as Sheet;
    this.throwWhereKnown(parent, 'Add');
    if (parent.kind === 'Tables') sheet.checkLocks((args[0] as Item).block as Block, 'Tables');
    this.log.push(`${parent.label}.Add(${args.map(shown).join(', ')})`);
    if (parent.kind === 'Tables') return this.addedTable(sheet, args[0] as Item);
    if (parent.kind === 'Names') return addedName(sheet, String(args[0]), args[1] as Item);
    const made = item(parent.kind, `${parent.label}(${parent.members.length + 1})`, { sheet });
    if (parent.kind === 'Charts') {
      made.properties.Type = args[0];
      sheet.charts.push(made);
      this.part(made, 'Series', 'Series').members.push(item('ChartSeries', `${made.label}.Series(1)`));
    } else if (parent.kind === 'ConditionalFormats') {
      sheet.conditions.push({ ...made, block: parent.block });
      return sheet.conditions[sheet.conditions.length - 1] as Item;
    }
    parent.members.push(made);
    return made;
  }

  /** A picture that is new on a sheet, or one that is there, by its id. */
  private shape(shapes: Item, { Name }: ObjectPath, args: unknown[]): Item {
    if (Name === 'AddImage') {
      shapes.sheet?.checkLocks({ row: 0, column: 0, rows: 1, columns: 1 }, 'Shapes');
      this.#made++;
      const made = item('Shape', `${shapes.label}(${this.#made})`, { sheet: shapes.sheet });
      Object.assign(made.properties, { Id: `shape ${this.#made}`, Name: `Picture ${this.#made}` });
      this.log.push(`${shapes.label}.AddImage(${args.map(shown).join(', ')})`);
      shapes.members.push(made);
      return made;
    }
    const found = shapes.members.find(({ properties }) => properties.Id === args[0]);
    if (!found) throw new Refusal('ItemNotFound', `${shapes.label} has no ${String(args[0])}`);
    return found;
  }

  private addedTable(sheet: Sheet, { block }: Item): Item {
    const used = this.tables.map(({ name }) => name);
    let n = 1;
    while (used.includes(`Table${n}`)) n++;
    return sheet.addTable(block as Block, `Table${n}`).item;
  }

  /** Decoration that some machines cannot make. */
  private throwWhereKnown({ kind, label }: Item, name: string): void {
    const isPage = /\.(PageLayout|HorizontalPageBreaks)\b/.test(label);
    const part = isPage
      ? 'page'
      : kind === 'FreezePanes'
        ? 'freeze'
        : kind === 'Charts'
          ? 'charts'
          : undefined;
    if (part && !name.startsWith('Get') && this.ways.throwsAt.has(part))
      throw new Refusal('GeneralException', `${label}.${name} does not work on this machine`);
  }

  private invoke(target: Item, name: string, args: unknown[]): unknown {
    if (!name.startsWith('_')) this.throwWhereKnown(target, name);
    if (name === '_KeepReference') this.keep(target);
    if (name.startsWith('_')) return undefined;
    if (!name.startsWith('Get')) this.log.push(`${target.label}.${name}(${args.map(shown).join(', ')})`);
    target.calls[name] = args.map((value) => (value as Item | null)?.label ?? value);
    const { sheet, block } = target;
    if (target.kind === 'Worksheet' && sheet) {
      if (name === 'Delete') this.remove(sheet);
      if (name === 'Activate') this.active = sheet;
      if (name === 'Calculate') calculate([sheet]);
    }
    if (target.kind === 'Application' && name === 'Calculate') calculate(this.sheets);
    if (target.kind === 'Shape' && name === 'Delete') {
      const shapes = this.part((sheet as Sheet).item, 'Shapes', 'Shapes').members;
      shapes.splice(shapes.indexOf(target), 1);
    }
    if (name === 'GetCount') return this.countOf(target);
    if (name === 'GetColumnProperties') return columnProperties(sheet as Sheet, block as Block);
    if (name === 'GetRowProperties') return rowProperties(sheet as Sheet, block as Block);
    if (name === 'GetCellProperties') return cellProperties(sheet as Sheet, block as Block);
    if (target.kind === 'Range' && sheet && block) {
      if (name === 'Merge') sheet.merge(block);
      if (name === 'Select') this.selection = { sheet, block };
      if (name === 'CopyFrom') this.copy(target, args[0] as Item, String(args[1]));
    }
    if (name === 'SetPosition') for (const corner of args) blockAt(String(corner));
    return this.onMethod[name]?.(args) ?? null;
  }

  /** What a special paste brings over: values as they show, or formats. Widths of columns stay behind. */
  private copy(to: Item, from: Item, what: string): void {
    const [target, source] = [to.sheet as Sheet, from.sheet as Sheet];
    target.checkLocks(to.block as Block, what);
    const places = addresses(to.block as Block);
    const isLeftOut = (at: string): boolean =>
      this.ways.copiesVisibleRows && source.filtered.has(blockAt(at).row);
    for (const [i, at] of addresses(from.block as Block)
      .filter((one) => !isLeftOut(one))
      .entries()) {
      const place = places[i] as string;
      if (what === 'Values') {
        const cell = source.cells.get(at) ?? source.spilled.get(at);
        target.pending.delete(place);
        if (cell !== undefined) target.put(place, this.valueOf(source, at, 'value'));
      } else if (what === 'Formats') {
        target.formats.set(place, source.formats.get(at) ?? 'General');
        const {
          'Format.ColumnWidth': _width,
          'Format.RowHeight': _height,
          ...looks
        } = source.looks.get(at) ?? {};
        target.looks.set(place, looks);
      } else throw new Error(`The workbook in memory does not copy ${what}.`);
    }
  }

  private countOf({ kind, sheet, members }: Item): number {
    if (kind === 'Comments') return (sheet as Sheet).comments;
    if (kind === 'Charts') return (sheet as Sheet).charts.length;
    return kind === 'Tables' ? (sheet as Sheet).tables.length : members.length;
  }

  private remove(sheet: Sheet): void {
    this.checkStructure();
    if (this.sheets.length === 1) throw new Refusal('InvalidOperation', 'the last sheet cannot be deleted');
    this.sheets.splice(this.sheets.indexOf(sheet), 1);
    if (this.active === sheet) this.active = this.sheets[0];
    if (this.selection?.sheet === sheet) this.selection = undefined;
  }

  private set(target: Item, name: string, value: unknown): undefined {
    this.throwWhereKnown(target, name);
    const { sheet, block, within } = target;
    if (sheet && block) {
      if (within.startsWith('Format')) sheet.dress(block, `${within}.${name}`, value);
      else if (within === 'DataValidation') sheet.validate(block, name, value);
      else if (target.kind === 'Range' && ['Formulas', 'Values', 'NumberFormat'].includes(name))
        sheet.write(block, name, value, this.ways, (formula) =>
          checkFormula(
            formula,
            this.tables,
            this.sheets.map((one) => one.name),
          ),
        );
    }
    if (target.kind === 'Worksheet' && name === 'Name') this.rename(sheet as Sheet, String(value));
    if (target.kind === 'Table' && name === 'Name') this.nameTable(target, String(value));
    if (target.kind === 'Rule' && name === 'Formula' && /[\p{L}_]\[/u.test(String(value)))
      throw new Refusal('InvalidArgument', `a condition cannot speak of tables: ${String(value)}`);
    target.properties[name] = value;
    // Written by one name, read by another.
    if (name === 'Gridlines') target.properties.ShowGridlines = value;
    this.log.push(`${target.label}.${name} = ${shown(value)}`);
  }

  private rename(sheet: Sheet, name: string): void {
    this.checkStructure();
    checkSheetName(name);
    const other = this.find(name);
    if (other && other !== sheet) throw new Refusal('ItemAlreadyExists', `there is a sheet called ${name}`);
    sheet.name = name;
  }

  private nameTable(target: Item, name: string): void {
    checkName(name);
    const used = [...this.names, ...this.tables.map((table) => table.name)].map((one) => one.toLowerCase());
    if (used.includes(name.toLowerCase()))
      throw new Refusal('ItemAlreadyExists', `something is called ${name} already`);
    for (const table of this.tables) if (table.item === target) table.name = name;
  }

  private query(target: Item, select: string[]): unknown {
    const pick = (from: Record<string, unknown>): Record<string, unknown> =>
      Object.fromEntries(
        select
          .map((name) => name.charAt(0).toUpperCase() + name.slice(1))
          .map((name) => {
            if (!(name in from)) throw new Error(`The workbook in memory tells no ${target.kind}.${name}.`);
            return [name, from[name]];
          }),
      );
    const collections: Record<string, () => Record<string, unknown>[]> = {
      Worksheets: () => this.sheets.map((sheet) => sheet.item.properties),
      Tables: () =>
        (target.sheet?.tables ?? this.tables).map((table) => ({
          Id: table.name,
          Name: table.name,
          'Columns/name': table.sheet.headings(table).map((Name, i) => ({ _Id: i + 1, Name })),
        })),
      Shapes: () => target.members.map(({ properties }) => properties),
      Names: () =>
        target.sheet
          ? namesOn(target.sheet)
          : this.names.map((name) => ({ Id: name, Name: name, Formula: this.formulaNamed(name) })),
    };
    const members =
      target.kind === 'TablesAround'
        ? target.members.map((one) => one.properties)
        : collections[target.kind]?.();
    /** Columns are asked for by their names, and told as a collection of their own. */
    const nested = ({ 'Columns/name': columns, ...own }: Record<string, unknown>): Record<string, unknown> =>
      columns === undefined ? own : { ...own, Columns: { _Items: columns } };
    if (members) return { _Items: members.map((one) => ({ _Id: one.Id, ...nested(pick(one)) })) };
    if (target.within === 'Format') return pick(formatOf(target));
    if (target.kind === 'Protection' && target.sheet) return pick(protectionOf(target));
    if (target.kind === 'Application') return pick({ CalculationMode: this.ways.calculation });
    return pick(
      target.kind === 'Range' ? { ...target.properties, ...this.contents(target) } : target.properties,
    );
  }

  private formulaNamed(name: string): string {
    const cells = this.namedCells.get(name);
    return cells ? `=${quoted(cells.sheet.name)}!${rangeText(cells.block)}` : '=12';
  }

  /** What a cell shows, or the value in it: not always the same where a formula is not done yet. */
  private valueOf(sheet: Sheet, at: string, as: 'text' | 'value'): unknown {
    const cell = sheet.cells.get(at);
    const formula = sheet.formulaAt(at);
    if (formula === undefined) return cell ?? sheet.spilled.get(at) ?? '';
    const pending = sheet.pending.get(at);
    if (pending) return pending[as];
    return this.ways.unready && isOurs(formula) ? this.ways.unready.shows : this.onFormula(formula);
  }

  /** What a range holds, as it is read. */
  private contents({ sheet, block }: Item): Record<string, unknown> {
    const { row, column, rows, columns } = block as Block;
    const { cells, spilled, formats, name, hidden, filtered, hiddenColumns } = sheet as Sheet;
    const lines = (read: (cell: unknown, at: string) => unknown): unknown[][] =>
      Array.from({ length: rows }, (_, r) =>
        addresses({ row: row + r, column, rows: 1, columns }).map((at) => read(cells.get(at), at)),
      );
    const [first, last] = [addressOf(row, column), addressOf(row + rows - 1, column + columns - 1)];
    return {
      Address: `${/^[\p{L}_][\p{L}\p{N}_.]*$/u.test(name) ? name : quoted(name)}!${first === last ? first : `${first}:${last}`}`,
      CellCount: rows * columns,
      Text: lines((_cell, at) => String(this.valueOf(sheet as Sheet, at, 'text'))),
      RowHidden: alike(rows, (i) => hidden.has(row + i) || filtered.has(row + i)),
      ColumnHidden: alike(columns, (i) => hiddenColumns.has(column + i)),
      RowIndex: row,
      ColumnIndex: column,
      RowCount: rows,
      ColumnCount: columns,
      Formulas: lines((cell, at) => {
        const formula = (sheet as Sheet).formulaAt(at);
        return formula === undefined
          ? (cell ?? '')
          : spelled(this.onFormulaWritten(formula), sheet as Sheet, at, this.ways.spelling);
      }),
      Values: lines((_cell, at) => this.valueOf(sheet as Sheet, at, 'value')),
      NumberFormat: lines((_cell, at) => formats.get(at) ?? 'General'),
      ValueTypes: lines((cell, at) => ((cell ?? spilled.get(at)) === undefined ? 'Empty' : 'String')),
    };
  }
}

/** What all are; null where some are and others are not. Microsoft, Excel.Range, rowHidden and columnHidden. */
function alike(count: number, is: (i: number) => boolean): boolean | null {
  const each = new Set(Array.from({ length: count }, (_, i) => is(i)));
  return each.size > 1 ? null : each.has(true);
}

/** What a column has until somebody makes it wider. */
const USUAL_WIDTH = 48;
const USUAL_HEIGHT = 15;
const formatOf = ({ sheet, block }: Item): Record<string, unknown> => {
  const at = addressOf((block as Block).row, (block as Block).column);
  return { ColumnWidth: (sheet as Sheet).looks.get(at)?.['Format.ColumnWidth'] ?? USUAL_WIDTH };
};

/** Gives formulas their values that waited for no more than this. */
function calculate(sheets: readonly Sheet[]): void {
  for (const { pending } of sheets) for (const [at, { isStale }] of pending) if (isStale) pending.delete(at);
}

const quoted = (sheet: string): string => `'${sheet.replaceAll("'", "''")}'`;
const formulaOnSheet = ({ name }: Sheet, stands: string): string =>
  stands.startsWith('=') ? stands : `=${quoted(name)}!${stands}`;
const namesOn = (sheet: Sheet): Record<string, unknown>[] =>
  [...sheet.names].map(([name, stands]) => ({
    Id: name,
    Name: name,
    Formula: formulaOnSheet(sheet, stands),
  }));
function nameOnSheet(sheet: Sheet, name: string): Item {
  const [found] = [...sheet.names].filter(([one]) => one.toLowerCase() === name.toLowerCase());
  if (!found) throw new Refusal('ItemNotFound', `nothing on ${sheet.name} is called ${name}`);
  const [called, stands] = found;
  const properties = { Name: called };
  return item(
    'NamedItem',
    called,
    stands.startsWith('=') ? { sheet, properties } : { sheet, properties, block: blockAt(stands) },
  );
}

/** Of a sheet whether it is protected; of cells whether they are locked: null where some are. */
function protectionOf({ sheet, block }: Item): Record<string, unknown> {
  if (!block) return { Protected: (sheet as Sheet).isProtected };
  const locked = new Set(addresses(block).map((at) => !(sheet as Sheet).unlocked.has(at)));
  return { Locked: locked.size === 1 ? [...locked][0] : null };
}

/** A name that holds for its sheet alone. */
function addedName(sheet: Sheet, name: string, cells: Item): Item {
  checkName(name);
  if ([...sheet.names.keys()].some((one) => one.toLowerCase() === name.toLowerCase()))
    throw new Refusal('ItemAlreadyExists', `something on ${sheet.name} is called ${name} already`);
  sheet.names.set(name, rangeText(cells.block as Block));
  return item('NamedItem', name);
}

/** The looks of each cell, whichever of them are asked for. */
const cellProperties = (sheet: Sheet, block: Block): unknown[][] =>
  Array.from({ length: block.rows }, (_, row) =>
    addresses({ ...block, row: block.row + row, rows: 1 }).map((at) => ({
      format: { ...sheet.looks.get(at) },
    })),
  );

const columnProperties = (sheet: Sheet, { column, columns }: Block): unknown[] =>
  addresses({ row: 0, column, rows: 1, columns }).map((at) => ({
    columnHidden: false,
    format: { columnWidth: sheet.looks.get(at)?.['Format.ColumnWidth'] ?? USUAL_WIDTH },
  }));
const rowProperties = (sheet: Sheet, { row, rows }: Block): unknown[] =>
  Array.from({ length: rows }, (_, i) => ({
    rowHidden: sheet.hidden.has(row + i),
    format: { rowHeight: USUAL_HEIGHT },
  }));

const onlyLetsGo = ({ Actions }: Batch): boolean =>
  Actions.some(({ Name }) => Name === '_RemoveReference') &&
  Actions.every(({ Name, ActionType }) => Name === '_RemoveReference' || ActionType === ACTION.instantiate);

/** The tables that a range has a part in. */
const tablesAround = ({ sheet, block }: Item): Item =>
  item('TablesAround', 'tables', {
    members: (sheet as Sheet).tables
      .filter((table) => overlap(table.block, block as Block))
      .map((table) => table.item),
  });

const rangeItem = (sheet: Sheet, block: Block): Item =>
  item('Range', `[${sheet.name}]!${rangeText(block)}`, { sheet, block });

/** A cell of a range, counted from its first. */
const cellOfRange = ({ sheet, block }: Item, [row = 0, column = 0]: number[]): Item =>
  rangeItem(sheet as Sheet, {
    row: (block as Block).row + row,
    column: (block as Block).column + column,
    rows: 1,
    columns: 1,
  });

/** One row of a range: the library writes large ranges in bands of rows. */
function rowOfRange({ sheet, block }: Item, index: number): Item {
  const { row, rows, ...across } = block as Block;
  if (index < 0 || index >= rows) throw new Refusal('InvalidArgument', `there is no row ${index}`);
  return rangeItem(sheet as Sheet, { ...across, row: row + index, rows: 1 });
}

/** The smallest range that holds both. */
function around({ sheet, block }: Item, other: Item): Item {
  const [a, b] = [block as Block, other.block as Block];
  const [row, column] = [Math.min(a.row, b.row), Math.min(a.column, b.column)];
  return rangeItem(sheet as Sheet, {
    row,
    column,
    rows: Math.max(a.row + a.rows, b.row + b.rows) - row,
    columns: Math.max(a.column + a.columns, b.column + b.columns) - column,
  });
}

/** From the first cell that holds something to the last. */
function usedRange(sheet: Sheet): Item {
  const blocks = [...sheet.cells.keys(), ...sheet.spilled.keys()].map(blockAt);
  if (blocks.length === 0) return item('Range', `[${sheet.name}]!`, { missing: true });
  const row = Math.min(...blocks.map((one) => one.row));
  const column = Math.min(...blocks.map((one) => one.column));
  const rows = Math.max(...blocks.map((one) => one.row)) + 1 - row;
  const columns = Math.max(...blocks.map((one) => one.column)) + 1 - column;
  return rangeItem(sheet, { row, column, rows, columns });
}

function blockBy(method: string, args: unknown[]): Block | undefined {
  if (method === 'GetRange') return blockAt(String(args[0]));
  if (method !== 'GetRangeByIndexes' && method !== 'GetCell') return undefined;
  const [row, column, rows = 1, columns = 1] = args as number[];
  return { row: row as number, column: column as number, rows, columns };
}
