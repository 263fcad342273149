import {
  BooleanNumber,
  CellValueType,
  type ICellData,
  type Injector,
  type IWorkbookData,
  LocaleType,
} from '@univerjs/core';
import { address } from '../../src/formula/address';
import type { Book, BookSheet } from '../../src/book/book';
import { hideRows, showRows } from '../../src/engine/filter/hideRows';
import { sortRows } from '../../src/engine/sort/sortRows';
import { type EngineValue, headless } from '../../src/engine/headless';
import { calculatedBook } from '../../src/hosts/command/bookInEngine';
import { readXlsx } from '../../src/xlsx/read';
import type { TestCell } from '../engine/book';
import { random } from '../exposure/random';
import {
  type Axis,
  between,
  type Block,
  built,
  cellKey,
  type Content,
  copyOf,
  duplicate,
  filled,
  insert,
  isFiltered,
  type Model,
  moved,
  type Part,
  type Ref,
  remove,
  removeSheet,
  type Sheet,
  sort,
  type Table,
  type TableRef,
  tableOn,
} from './model';

export class Chance {
  readonly #next: () => number;
  constructor(seed: number) {
    this.#next = random(seed);
  }
  /** A whole number from 0 up to below the other. */
  below(most: number): number {
    return Math.floor(this.#next() * most);
  }
  one<T>(list: readonly T[]): T {
    return list[this.below(list.length)] as T;
  }
  often(share: number): boolean {
    return this.#next() < share;
  }
}

const [ROWS, COLUMNS] = [30, 14];
/** Numbers stand in the first rows and columns, formulas behind them: so none goes round in a circle. */
const DATA = { rows: 8, columns: 4 } as const;

/** A small workbook: numbers, formulas of all sorts beside them and on a second sheet, names, and perhaps a table. */
export function start(chance: Chance): Model {
  const model: Model = { sheets: [], names: new Map(), tables: [], next: 1 };
  const lines = (count: number) => Array.from({ length: count }, () => model.next++);
  for (const name of ['Plan', "Ann's set"])
    model.sheets.push({
      id: model.next++,
      name,
      rows: lines(ROWS),
      columns: lines(COLUMNS),
      cells: new Map(),
      hidden: new Set(),
    });
  const [plan, other] = model.sheets as [Sheet, Sheet];
  const put = (sheet: Sheet, row: number, column: number, content: Content) =>
    sheet.cells.set(cellKey(sheet.rows[row] as number, sheet.columns[column] as number), content);
  for (let row = 0; row < DATA.rows; row++)
    for (let column = 0; column < DATA.columns; column++)
      put(plan, row, column, chance.often(0.1) ? `text ${row}` : chance.below(90) + 1);
  const headings = ['Qty', 'Price', 'Sum'];
  if (chance.often(0.6)) {
    for (const [i, heading] of headings.entries()) put(plan, 1, 1 + i, heading);
    model.tables.push({
      name: 'Kit',
      sheet: plan.id,
      rows: [plan.rows[1] as number, plan.rows[5] as number],
      columns: [plan.columns[1] as number, plan.columns[3] as number],
    });
  }
  const column = (): TableRef => {
    const i = chance.below(headings.length);
    return {
      table: 'Kit',
      column: { id: plan.columns[1 + i] as number, heading: headings[i] as string },
    };
  };
  const ref = (which: 'cell' | 'range' | 'columns' | 'rows', named: boolean): Ref => {
    const pick = (most: number, whole: boolean): [number, number] => {
      const from = chance.below(most);
      return [from, whole ? from + chance.below(most - from) : from];
    };
    const isRange = which !== 'cell';
    const [top, bottom] = pick(DATA.rows, isRange);
    const [left, right] = pick(DATA.columns, isRange);
    return {
      sheet: plan.id,
      ...(which === 'columns' ? {} : { rows: [plan.rows[top], plan.rows[bottom]] as [number, number] }),
      ...(which === 'rows' ? {} : { columns: [plan.columns[left], plan.columns[right]] as [number, number] }),
      fixed: chance.often(0.3),
      named,
    };
  };
  for (const name of ['Fee', 'Block'])
    model.names.set(name, { ...ref(name === 'Fee' ? 'cell' : 'range', true), fixed: true });
  const formula = (named: boolean, isElsewhere: boolean): readonly Part[] => {
    const forms: (() => readonly Part[])[] = [
      () => ['=', ref('cell', named), '*2'],
      () => ['=SUM(', ref('range', named), ')'],
      () => ['=SUM(', ref('columns', named), ')'],
      () => ['=COUNT(', ref('range', named), ',', ref('cell', named), ')'],
      () => ['=', ref('cell', named), '&"6"" dish"'],
      () => ['=IF(', ref('cell', named), '>40,"a ""b""",', ref('cell', named), ')'],
      () => ['=-', ref('cell', named), '+Fee'],
      () => ['=SUM(Block)*2'],
      () => ['=INDEX(', ref('range', named), ',1,1)'],
      () => ['="two\nlines"&', ref('cell', named)],
      ...(isElsewhere ? [() => ['=COUNT(', ref('rows', named), ')'] as readonly Part[]] : []),
      ...(model.tables.length > 0
        ? [
            () => ['=SUM(', column(), ')-SUM(', column(), ')'],
            () => ['=SUBTOTAL(9,', column(), ')*10+SUBTOTAL(102,', column(), ')'],
            () => ['=SUM(', { table: 'Kit' }, ')*100+COLUMNS(', { table: 'Kit' }, ')'],
          ]
        : []),
    ];
    return chance.one(forms)();
  };
  for (let i = 0; i < 14; i++) put(plan, chance.below(DATA.rows), 6 + chance.below(3), formula(false, false));
  for (let i = 0; i < 10; i++) put(other, chance.below(DATA.rows), chance.below(5), formula(true, true));
  return model;
}

const stored = (cell: Exclude<TestCell, null>): ICellData => {
  if (typeof cell === 'string')
    return cell.startsWith('=') ? { f: cell } : { v: cell, t: CellValueType.STRING };
  return { v: Number(cell), t: typeof cell === 'boolean' ? CellValueType.BOOLEAN : CellValueType.NUMBER };
};

/** The workbook that a model is, opened without a page. */
export async function opened(model: Model) {
  const { sheets, names, tables } = built(model);
  const snapshot: Partial<IWorkbookData> = {
    name: 'Book',
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: sheets.map((_, i) => `sheet${i}`),
    sheets: Object.fromEntries(
      sheets.map(({ name, rows, hidden }, i) => [
        `sheet${i}`,
        {
          id: `sheet${i}`,
          name,
          rowCount: rows.length,
          columnCount: rows[0]?.length ?? 1,
          rowData: Object.fromEntries(hidden.map((row) => [row, { hd: BooleanNumber.TRUE }])),
          cellData: Object.fromEntries(
            rows.map((row, r) => [
              r,
              Object.fromEntries(row.flatMap((cell, c) => (cell === null ? [] : [[c, stored(cell)]]))),
            ]),
          ),
        },
      ]),
    ),
  };
  const book = headless(snapshot);
  for (const { name, text } of names) book.workbook.insertDefinedName(name, text);
  for (const { name, sheet, range } of tables) {
    const id = book.workbook.getSheetByName(sheet)?.getSheetId() ?? '';
    await book.workbook.addTable(id, name, range, name);
  }
  return book;
}
export type Opened = Awaited<ReturnType<typeof opened>>;

const shown = (value: EngineValue): unknown =>
  typeof value === 'object' && value !== null ? value.error : value === '' ? null : value;

/** What every cell of a workbook that is not empty holds, once it is calculated, and which rows of each sheet are hidden. */
export async function valuesOf(book: Opened, model: Model): Promise<Record<string, unknown>> {
  await book.calculate();
  const values: Record<string, unknown> = {};
  for (const { name, rows, columns } of model.sheets) {
    const hidden = hiddenIn(book, name);
    if (hidden.length > 0) values[`${name}, hidden rows`] = hidden;
    const last = address({ row: rows.length - 1, column: columns.length - 1 });
    for (const [row, cells] of book.read(name, `A1:${last}`).entries())
      for (const [column, cell] of cells.entries())
        if (shown(cell) !== null) values[`${name}!${address({ row, column })}`] = shown(cell);
  }
  return values;
}

const hiddenIn = ({ workbook }: Opened, name: string): number[] => {
  const rows = workbook.getSheetByName(name)?.getSheet().getRowManager().getRowData() ?? {};
  return Object.entries(rows).flatMap(([row, data]) =>
    data?.hd === BooleanNumber.TRUE ? [Number(row)] : [],
  );
};

/** One edit: done to the model, and to the workbook. */
export interface Edit {
  readonly told: string;
  readonly model: Model;
  /** Commands that it takes, each undone by itself: one where it is left out. */
  readonly commands?: number;
  perform(book: Opened): Promise<void> | void;
}

/** A sheet as a person edits it: it is the one in view. */
const sheetNamed = (book: Opened, name: string) => {
  const sheet = book.workbook.getSheetByName(name);
  if (!sheet) throw new Error(`There is no sheet ${name}.`);
  book.workbook.setActiveSheet(sheet);
  return sheet;
};

const injectorOf = ({ workbook }: Opened): Injector =>
  (workbook as unknown as { readonly _injector: Injector })._injector;

/** The rows of a table without its heading, or some rows and columns where there is none. */
function someRows(sheet: Sheet, table: Table | undefined, chance: Chance): Block {
  if (table)
    return {
      rows: between(sheet.rows, table.rows).slice(1),
      columns: between(sheet.columns, table.columns),
    };
  const some = (lines: readonly number[], most: number): number[] => {
    const first = chance.below(Math.min(most, lines.length));
    return lines.slice(first, first + 1 + chance.below(most));
  };
  return { rows: some(sheet.rows, DATA.rows), columns: some(sheet.columns, 9) };
}

/** Most blocks cannot be sorted, as something names a part of their rows: so many are tried. */
const TRIES = 12;

/** Some block of a sheet sorted by one of its columns. */
function sorted(before: Model, id: number, chance: Chance): Edit | undefined {
  for (let i = 0; i < TRIES; i++) {
    const model = copyOf(before);
    const sheet = model.sheets.find((each) => each.id === id) as Sheet;
    const block = someRows(sheet, tableOn(model, sheet), chance);
    const by = chance.one(block.columns);
    if (!sort(model, sheet, block, by)) continue;
    const ends = (axis: Axis): [number, number] => [
      sheet[axis].indexOf(block[axis][0] as number),
      sheet[axis].indexOf(block[axis].at(-1) as number),
    ];
    const [[startRow, endRow], [startColumn, endColumn]] = [ends('rows'), ends('columns')];
    const column = sheet.columns.indexOf(by);
    return {
      told: `rows ${startRow} to ${endRow}, columns ${startColumn} to ${endColumn}, by ${column}`,
      model,
      perform(book) {
        const outcome = sortRows(injectorOf(book), {
          unitId: book.workbook.getId(),
          subUnitId: sheetNamed(book, sheet.name).getSheetId(),
          range: { startRow, endRow, startColumn, endColumn },
          by: [{ column, largestFirst: false }],
        });
        if ('refused' in outcome) throw new Error(outcome.refused);
      },
    };
  }
  return undefined;
}

/** The rows of a table that hold some of the texts of one of its columns go out of sight; where some are, all come back. */
function filtered(model: Model, sheet: Sheet, table: Table, chance: Chance): Edit | undefined {
  const body = between(sheet.rows, table.rows).slice(1);
  const hidden = body.filter((row) => sheet.hidden.has(row));
  const column = chance.one(between(sheet.columns, table.columns));
  const text = (row: number) => JSON.stringify(sheet.cells.get(cellKey(row, column)));
  const kept = text(chance.one(body));
  const rows = hidden.length > 0 ? hidden : body.filter((row) => text(row) !== kept && chance.often(0.7));
  if (rows.length === 0) return undefined;
  const isShown = hidden.length > 0;
  for (const row of rows) {
    if (isShown) sheet.hidden.delete(row);
    else sheet.hidden.add(row);
  }
  const places = rows.map((row) => sheet.rows.indexOf(row));
  return {
    told: `${isShown ? 'show' : 'hide'} rows ${places.join()} of ${sheet.name}`,
    model,
    perform(book) {
      const subUnitId = sheetNamed(book, sheet.name).getSheetId();
      (isShown ? showRows : hideRows)(injectorOf(book), {
        unitId: book.workbook.getId(),
        subUnitId,
        rows: places,
      });
    },
  };
}

/** Some edit of a workbook; nothing where the one that chance picked is not tried. */
export function edit(before: Model, chance: Chance): Edit | undefined {
  const model = copyOf(before);
  const sheet = chance.one(model.sheets);
  const { name } = sheet;
  const axis: Axis = chance.often(0.5) ? 'rows' : 'columns';
  const lines = sheet[axis];
  const reach = axis === 'rows' ? DATA.rows + 2 : 10;
  const at = chance.below(Math.min(reach, lines.length - 3));
  const count = 1 + chance.below(2);
  const table = tableOn(model, sheet);
  const span = table ? [lines.indexOf(table[axis][0]), lines.indexOf(table[axis][1])] : [-1, -1];
  const [first, last] = span as [number, number];
  const isRows = axis === 'rows';
  switch (chance.below(13)) {
    case 0:
    case 1: {
      insert(model, sheet, axis, at, count);
      return {
        told: `insert ${count} ${axis} at ${at} of ${name}`,
        model,
        perform: (book) => {
          const on = sheetNamed(book, name);
          if (isRows) on.insertRows(at, count);
          else on.insertColumns(at, count);
        },
      };
    }
    case 2:
    case 3: {
      // A heading with no row below it is no table in files.
      if (table && isRows && at === first + 1 && at + count > last) return undefined;
      const gone = lines.slice(at, at + count);
      if (isRows && gone.every((row) => isFiltered(model, sheet, row))) return undefined;
      remove(model, sheet, axis, at, count);
      return {
        told: `delete ${count} ${axis} at ${at} of ${name}`,
        model,
        perform: (book) => {
          const on = sheetNamed(book, name);
          if (isRows) on.deleteRows(at, count);
          else on.deleteColumns(at, count);
        },
      };
    }
    case 4: {
      const to = chance.below(Math.min(reach + 3, lines.length));
      const order = moved(model, sheet, axis, at, count, to);
      const isIntoTable = table && to > first && to <= last;
      if (!order || isIntoTable || to === at) return undefined;
      sheet[axis] = order;
      return {
        told: `move ${count} ${axis} from ${at} to ${to} of ${name}`,
        model,
        perform: (book) => {
          const on = sheetNamed(book, name);
          if (isRows) on.moveRows(on.getRange(at, 0, count, 1), to);
          else on.moveColumns(on.getRange(0, at, 1, count), to);
        },
      };
    }
    case 5: {
      const formulas = [...sheet.cells].filter(([, content]) => Array.isArray(content));
      if (formulas.length === 0) return undefined;
      const [key, content] = chance.one(formulas) as [string, readonly Part[]];
      const [row = 0, column = 0] = key.split(',').map(Number);
      const [r, c] = [sheet.rows.indexOf(row), sheet.columns.indexOf(column)];
      if (isFiltered(model, sheet, row)) return undefined;
      for (let down = 1; down <= count; down++) {
        const below = sheet.rows[r + down];
        const copy = filled(model, content, down);
        if (below === undefined || !copy) return undefined;
        // rows that are filtered out keep what they hold
        if (!isFiltered(model, sheet, below)) sheet.cells.set(cellKey(below, column), copy);
      }
      return {
        told: `fill ${count} down from ${address({ row: r, column: c })} of ${name}`,
        model,
        perform: async (book) => {
          const on = sheetNamed(book, name);
          await on.getRange(r, c).autoFill(on.getRange(r, c, count + 1, 1));
        },
      };
    }
    case 6: {
      const other = `New "${chance.below(100)}" it's`;
      if (model.sheets.some((each) => each.name === other)) return undefined;
      sheet.name = other;
      return {
        told: `rename ${name} to ${other}`,
        model,
        perform: (book) => {
          sheetNamed(book, name).setName(other);
        },
      };
    }
    case 7: {
      if (model.sheets.length > 3) return undefined;
      const copy = `${name} again`;
      if (copy.length > 28 || model.sheets.some((each) => each.name === copy)) return undefined;
      duplicate(model, sheet, copy);
      return {
        told: `copy ${name}`,
        model,
        commands: 2,
        perform: (book) => {
          book.workbook.duplicateSheet(sheetNamed(book, name)).setName(copy);
        },
      };
    }
    case 8:
    case 9: {
      const done = sorted(before, sheet.id, chance);
      return done && { ...done, told: `sort ${done.told} of ${name}` };
    }
    case 10:
    case 11:
      return table && filtered(model, sheet, table, chance);
    default: {
      if (model.sheets.length < 3 || sheet === model.sheets[0]) return undefined;
      removeSheet(model, sheet);
      return {
        told: `delete the sheet ${name}`,
        model,
        perform: (book) => {
          book.workbook.deleteSheet(sheetNamed(book, name));
        },
      };
    }
  }
}

/** The workbook on its way to a file, with what its cells show. */
export function bookOf(open: Opened, model: Model): Book {
  const { workbook } = open;
  const tables = workbook.getTableList();
  const sheets = model.sheets.map(({ name, rows, columns }): BookSheet => {
    const sheet = sheetNamed(open, name);
    const range = sheet.getRange(0, 0, rows.length, columns.length);
    const values = open.read(name, `A1:${address({ row: rows.length - 1, column: columns.length - 1 })}`);
    const cells = range.getFormulas().flatMap((line, row) =>
      line.flatMap((formula, column) => {
        const value = values[row]?.[column] ?? null;
        return value === null && formula === ''
          ? []
          : [{ row, column, value, ...(formula === '' ? {} : { formula }) }];
      }),
    );
    return {
      name,
      hidden: false,
      filteredRows: hiddenIn(open, name),
      widths: {},
      heights: {},
      cells,
      merges: [],
      freeze: { rows: 0, columns: 0 },
      tables: tables.filter(({ subUnitId }) => subUnitId === sheet.getSheetId()).map(tableIn),
      rules: [],
      conditions: [],
      charts: [],
      page: { landscape: false, header: '', titleRows: 0, breaks: [] },
    };
  });
  const names = workbook
    .getDefinedNames()
    .map((name) => ({ name: name.getName(), formula: `=${name.getFormulaOrRefString()}` }));
  return { sheets, names };
}

type TableInfo = ReturnType<Opened['workbook']['getTableList']>[number];
const tableIn = ({ name, range, columns }: TableInfo) => ({
  name,
  area: {
    row: range.startRow,
    column: range.startColumn,
    rows: range.endRow - range.startRow + 1,
    columns: range.endColumn - range.startColumn + 1,
  },
  columns: columns.map(({ displayName }) => ({ name: displayName })),
  // it hides nothing by itself, and says that what is hidden of the table is filtered out
  filters: [{ column: 0, texts: [], blank: false }],
});

/** What every cell holds that is not empty, in a workbook that comes from a file. */
export async function valuesInFile(bytes: Uint8Array): Promise<Record<string, unknown>> {
  const { book } = await readXlsx(bytes);
  const calculated = await calculatedBook(book);
  const values: Record<string, unknown> = {};
  for (const sheet of book.sheets) {
    if (sheet.filteredRows) values[`${sheet.name}, hidden rows`] = sheet.filteredRows;
    const valueAt = calculated.valuesOf(sheet);
    for (const { row, column } of sheet.cells) {
      const value = shown(valueAt(row, column));
      if (value !== null) values[`${sheet.name}!${address({ row, column })}`] = value;
    }
  }
  calculated.dispose();
  return values;
}
