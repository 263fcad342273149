/**
 * A workbook in memory that answers the batches of the Excel library as Excel does on the wire.
 *
 * It proves what we send and how we react, not what Excel calculates. It refuses what Excel refuses: arrays of another size than
 * their range, doubled or impossible sheet names, members of an object that is not there.
 */

/** How the library numbers what it asks for. */
const PATH = { global: 1, property: 4 };
const ACTION = { instantiate: 1, query: 2, method: 3, set: 4 };

interface Arguments {
  Arguments?: unknown[];
  ReferencedObjectPathIds?: number[];
}
interface ObjectPath {
  ObjectPathType: number;
  Name: string;
  ParentObjectPathId?: number;
  ArgumentInfo?: Arguments;
}
interface Action {
  Id: number;
  ActionType: number;
  Name: string;
  ObjectPathId: number;
  ArgumentInfo?: Arguments;
  QueryInfo?: { Select?: string[] };
}

/** One batch: what a `context.sync()` sends. */
export interface Batch {
  Actions: Action[];
  ObjectPaths: Record<string, ObjectPath>;
}
interface Reply {
  Results: { ActionId: number; Value: unknown }[];
  Error?: { Code: string; Message: string; ActionIndex: number; HttpStatusCode: number };
}

interface Block {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** Something in the workbook that the library holds on to. */
export interface Item {
  readonly kind: string;
  readonly label: string;
  readonly sheet: Sheet | undefined;
  readonly block: Block | undefined;
  readonly missing: boolean;
  readonly properties: Record<string, unknown>;
  readonly children: Map<string, Item>;
}
export interface Sheet {
  readonly name: string;
  /** What was written, by address: "B3". */
  readonly cells: Map<string, unknown>;
  readonly formats: Map<string, unknown>;
}

const item = (kind: string, label: string, more: Partial<Item> = {}): Item => ({
  kind,
  label,
  sheet: undefined,
  block: undefined,
  missing: false,
  properties: {},
  children: new Map(),
  ...more,
});

class Refusal extends Error {
  readonly code: string;
  constructor(code: string, message: string) {
    super(message);
    this.code = code;
  }
}

const columnName = (column: number): string =>
  (column < 26 ? '' : columnName(Math.floor(column / 26) - 1)) + String.fromCharCode(65 + (column % 26));
const columnIndex = (letters: string): number =>
  [...letters].reduce((n, letter) => n * 26 + letter.charCodeAt(0) - 64, 0) - 1;
const addressOf = (row: number, column: number): string => `${columnName(column)}${row + 1}`;
const rangeText = ({ row, column, rows, columns }: Block): string =>
  `${addressOf(row, column)}:${addressOf(row + rows - 1, column + columns - 1)}`;

function blockAt(address: string): Block {
  const [, c1, r1, c2 = c1, r2 = r1] = /^\$?([A-Z]+)\$?(\d+)(?::\$?([A-Z]+)\$?(\d+))?$/i.exec(address) ?? [];
  if (c1 === undefined || r1 === undefined || c2 === undefined || r2 === undefined)
    throw new Refusal('InvalidArgument', `no address: ${address}`);
  const [left, right] = [columnIndex(c1.toUpperCase()), columnIndex(c2.toUpperCase())];
  return { row: Number(r1) - 1, column: left, rows: Number(r2) - Number(r1) + 1, columns: right - left + 1 };
}

export class FakeWorkbook {
  readonly sheets: Sheet[] = [];
  /** Every write and every call, in words. */
  readonly log: string[] = [];
  readonly batches: Batch[] = [];
  /** What a method of that name answers. */
  readonly onMethod: Record<string, (args: unknown[]) => unknown> = {};
  private readonly items = new Map<Sheet, Item>();

  constructor(...names: string[]) {
    for (const name of names) this.addSheet(name);
  }

  find(name: string): Sheet | undefined {
    return this.sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  }

  addSheet(name = `Sheet${this.sheets.length + 1}`): Sheet {
    if (name === '' || name.length > 31 || /[\\/?*[\]:]/.test(name))
      throw new Refusal('InvalidArgument', `no name for a sheet: ${name}`);
    if (this.find(name)) throw new Refusal('ItemAlreadyExists', `there is a sheet called ${name}`);
    const sheet: Sheet = { name, cells: new Map(), formats: new Map() };
    this.items.set(sheet, item('Worksheet', `[${name}]`, { sheet, properties: { Name: name } }));
    this.sheets.push(sheet);
    return sheet;
  }

  /** Answers one batch. `known` holds what earlier batches of the same context named: their numbers start anew in each. */
  answer(batch: Batch, known: Map<number, Item>): Reply {
    this.batches.push(batch);
    const reply: Reply = { Results: [] };
    for (const [index, action] of batch.Actions.entries()) {
      try {
        const Value = this.perform(action, batch, known);
        if (Value !== undefined) reply.Results.push({ ActionId: action.Id, Value });
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        return {
          ...reply,
          Error: { Code: error.code, Message: error.message, ActionIndex: index, HttpStatusCode: 400 },
        };
      }
    }
    return reply;
  }

  private perform(action: Action, batch: Batch, known: Map<number, Item>): unknown {
    const target = this.resolve(action.ObjectPathId, batch, known);
    const args = action.ArgumentInfo?.Arguments ?? [];
    if (action.ActionType === ACTION.instantiate) return target.missing ? null : {};
    if (action.ActionType === ACTION.query)
      return target.missing ? null : this.query(target, action.QueryInfo?.Select ?? []);
    if (target.missing) throw new Refusal('ItemNotFound', `${target.label} is not there`);
    if (action.ActionType === ACTION.set) return this.set(target, action.Name, args[0]);
    if (action.ActionType === ACTION.method) return this.invoke(target, action.Name, args);
    return undefined;
  }

  private resolve(id: number, batch: Batch, known: Map<number, Item>): Item {
    const before = known.get(id);
    if (before) return before;
    const path = batch.ObjectPaths[id];
    if (!path) throw new Refusal('InvalidObjectPath', `nothing has number ${id}`);
    const parent = path.ParentObjectPathId ? this.resolve(path.ParentObjectPathId, batch, known) : undefined;
    const referenced = path.ArgumentInfo?.ReferencedObjectPathIds;
    const args = (path.ArgumentInfo?.Arguments ?? []).map((value, i) =>
      referenced?.[i] ? this.resolve(referenced[i], batch, known) : value,
    );
    const found = parent
      ? this.child(parent, path, args)
      : item(path.ObjectPathType === PATH.global ? 'Workbook' : path.Name, path.Name);
    known.set(id, found);
    return found;
  }

  private child(parent: Item, path: ObjectPath, args: unknown[]): Item {
    if (path.ObjectPathType === PATH.property) {
      const label = parent.kind === 'Workbook' ? path.Name : `${parent.label}.${path.Name}`;
      const child =
        parent.children.get(path.Name) ??
        item(path.Name, label, { sheet: parent.sheet, block: parent.block });
      parent.children.set(path.Name, child);
      return child;
    }
    if (parent.kind === 'Worksheets') return this.sheetBy(path.Name, args[0]);
    const block = this.blockBy(path.Name, args);
    if (block) return item('Range', `${parent.label}!${rangeText(block)}`, { sheet: parent.sheet, block });
    const shown = args.map((value) => (value as Item | undefined)?.label ?? JSON.stringify(value)).join(', ');
    const label = `${parent.label}.${path.Name}(${shown})`;
    this.log.push(label);
    return item(path.Name, label, { sheet: parent.sheet, block: parent.block });
  }

  private sheetBy(method: string, name: unknown): Item {
    if (method === 'Add') {
      const added = this.addSheet(name as string | undefined);
      this.log.push(`Worksheets.Add(${JSON.stringify(added.name)})`);
      return this.items.get(added) as Item;
    }
    const sheet = method === 'GetActiveWorksheet' ? this.sheets[0] : this.find(String(name));
    if (sheet) return this.items.get(sheet) as Item;
    if (method.endsWith('OrNullObject')) return item('Worksheet', `[${String(name)}]`, { missing: true });
    throw new Refusal('ItemNotFound', `no sheet is called ${String(name)}`);
  }

  private blockBy(method: string, args: unknown[]): Block | undefined {
    if (method === 'GetRange') return blockAt(String(args[0]));
    if (method !== 'GetRangeByIndexes' && method !== 'GetCell') return undefined;
    const [row, column, rows = 1, columns = 1] = args as number[];
    return { row: row as number, column: column as number, rows, columns };
  }

  private invoke(target: Item, name: string, args: unknown[]): unknown {
    if (name.startsWith('_')) return undefined;
    this.log.push(`${target.label}.${name}(${args.map((value) => JSON.stringify(value)).join(', ')})`);
    if (target.kind === 'Worksheet' && name === 'Delete')
      this.sheets.splice(this.sheets.indexOf(target.sheet as Sheet), 1);
    return this.onMethod[name]?.(args) ?? null;
  }

  private set(target: Item, name: string, value: unknown): undefined {
    if (target.kind === 'Range' && ['Formulas', 'Values', 'NumberFormat'].includes(name))
      this.write(target, name, value);
    target.properties[name] = value;
    this.log.push(`${target.label}.${name} = ${JSON.stringify(value)}`);
  }

  /** A lone value goes to every cell; null leaves a cell as it is, an empty text clears it. */
  private write({ sheet, block, label }: Item, name: string, value: unknown): void {
    const { row, column, rows, columns } = block as Block;
    const lines = Array.isArray(value) ? (value as unknown[][]) : undefined;
    if (lines && (lines.length !== rows || lines.some((line) => line.length !== columns)))
      throw new Refusal(
        'InvalidArgument',
        `${label}.${name}: ${lines.length} by ${lines[0]?.length} values for ${rows} by ${columns} cells`,
      );
    const store = name === 'NumberFormat' ? (sheet as Sheet).formats : (sheet as Sheet).cells;
    for (let r = 0; r < rows; r++)
      for (let c = 0; c < columns; c++) {
        const cell = lines ? lines[r]?.[c] : value;
        if (cell === '') store.delete(addressOf(row + r, column + c));
        else if (cell !== null) store.set(addressOf(row + r, column + c), cell);
      }
  }

  private query(target: Item, select: string[]): unknown {
    const pick = (from: Item): Record<string, unknown> =>
      Object.fromEntries(
        select
          .map((name) => name.charAt(0).toUpperCase() + name.slice(1))
          .map((name) => [name, from.properties[name] ?? null]),
      );
    if (target.kind !== 'Worksheets') return pick(target);
    return {
      _Items: this.sheets.map((sheet) => ({ _Id: sheet.name, ...pick(this.items.get(sheet) as Item) })),
    };
  }
}
