import { columnName } from '../../src/formula/address';
import { quotedSheet } from '../../src/formula/areaText';
import type { TestCell } from '../engine/book';

/**
 * A workbook in which each row and column has a number of its own for life, and a reference names these numbers: what an edit
 * does to references follows from what it does to rows and columns. Written out it is the workbook that a person would have
 * built in the edited form.
 */
export interface Ref {
  readonly sheet: number;
  /** First and last row; without them whole columns. */
  rows?: [number, number];
  columns?: [number, number];
  readonly fixed: boolean;
  /** Whether the sheet is written in front even on that sheet. */
  readonly named: boolean;
  gone?: boolean;
}
/** A column of a table, or all of it. */
export interface TableRef {
  table: string;
  readonly column?: { readonly id: number; readonly heading: string };
  gone?: boolean;
}
/** A text, a reference, or what has a name of its own. */
export type Part = string | Ref | TableRef;
export type Content = number | string | boolean | readonly Part[];

export interface Sheet {
  readonly id: number;
  name: string;
  rows: number[];
  columns: number[];
  cells: Map<string, Content>;
  /** Rows that are not shown. */
  hidden: Set<number>;
}
export interface Table {
  name: string;
  sheet: number;
  rows: [number, number];
  columns: [number, number];
}
export interface Model {
  sheets: Sheet[];
  names: Map<string, Ref>;
  /** One on a sheet at most. */
  tables: Table[];
  next: number;
}
export type Axis = 'rows' | 'columns';

export const copyOf = (model: Model): Model => structuredClone(model);
export const cellKey = (row: number, column: number): string => `${row},${column}`;
const isFormula = (content: Content): content is readonly Part[] => Array.isArray(content);

const sheetOf = (model: Model, id: number): Sheet | undefined =>
  model.sheets.find((sheet) => sheet.id === id);

const isRef = (part: Part): part is Ref => typeof part !== 'string' && 'sheet' in part;
const isTableRef = (part: Part): part is TableRef => typeof part !== 'string' && 'table' in part;
const partsOf = ({ cells }: Sheet): Part[] =>
  [...cells.values()].flatMap((content) => (isFormula(content) ? content : []));

/** Every reference in a workbook. */
export const refsOf = (model: Model): Ref[] => [
  ...model.sheets.flatMap(partsOf).filter(isRef),
  ...model.names.values(),
];

export const tableOn = (model: Model, sheet: Sheet): Table | undefined =>
  model.tables.find((table) => table.sheet === sheet.id);

const index = (lines: readonly number[], id: number): number => lines.indexOf(id);

/** What lies between two lines of a sheet, both of them among it. */
export function between(lines: readonly number[], [first, last]: readonly [number, number]): number[] {
  const [from, to] = [index(lines, first), index(lines, last)];
  return lines.slice(Math.min(from, to), Math.max(from, to) + 1);
}

export function insert(model: Model, sheet: Sheet, axis: Axis, at: number, count: number): void {
  const lines = Array.from({ length: count }, () => model.next++);
  sheet[axis].splice(at, 0, ...lines);
  const table = tableOn(model, sheet);
  if (table && axis === 'columns') nameColumns(sheet, table, lines);
}

/** New columns of a table get the first headings of Column1, Column2, … that it has not. */
function nameColumns(sheet: Sheet, table: Table, lines: readonly number[]): void {
  const keys = between(sheet.columns, table.columns).map((column) => cellKey(table.rows[0], column));
  const taken = new Set(keys.map((key) => sheet.cells.get(key)));
  let number = 1;
  for (const line of lines) {
    const key = cellKey(table.rows[0], line);
    if (!keys.includes(key)) continue;
    while (taken.has(`Column${number}`)) number++;
    taken.add(`Column${number}`);
    sheet.cells.set(key, `Column${number}`);
  }
}

/** What is left of the first and last line when some are taken out. */
function left(lines: readonly number[], ends: readonly [number, number], out: ReadonlySet<number>) {
  const remain = between(lines, ends).filter((line) => !out.has(line));
  const [first, last] = [remain[0], remain.at(-1)];
  return first === undefined || last === undefined ? undefined : ([first, last] as [number, number]);
}

/** A table is gone with its heading or with all of its columns; then formulas find none of that name, or nothing at all. */
function cutTable(model: Model, sheet: Sheet, table: Table, axis: Axis, out: ReadonlySet<number>): void {
  const remain = left(sheet[axis], table[axis], out);
  const isGone = !remain || (axis === 'rows' && out.has(table.rows[0]));
  if (axis === 'columns')
    for (const part of model.sheets.flatMap(partsOf).filter(isTableRef))
      if (part.table === table.name && (isGone || (part.column && out.has(part.column.id)))) part.gone = true;
  if (isGone) model.tables = model.tables.filter((each) => each !== table);
  else table[axis] = remain;
}

/** Whether a row is filtered out: one of a table that is not shown. */
export function isFiltered(model: Model, sheet: Sheet, row: number): boolean {
  const table = tableOn(model, sheet);
  return sheet.hidden.has(row) && !!table && between(sheet.rows, table.rows).slice(1).includes(row);
}

/** A file keeps what is filtered out of sight; all other rows are shown in it. */
export function asInFile(model: Model): Model {
  const copy = copyOf(model);
  for (const sheet of copy.sheets)
    sheet.hidden = new Set([...sheet.hidden].filter((row) => isFiltered(copy, sheet, row)));
  return copy;
}

/** Rows that are filtered out stay. */
export function remove(model: Model, sheet: Sheet, axis: Axis, at: number, count: number): void {
  const out = new Set(
    sheet[axis].slice(at, at + count).filter((line) => axis === 'columns' || !isFiltered(model, sheet, line)),
  );
  for (const ref of refsOf(model)) {
    const ends = ref[axis];
    if (ref.sheet !== sheet.id || ref.gone || !ends) continue;
    const remain = left(sheet[axis], ends, out);
    if (remain) ref[axis] = remain;
    else ref.gone = true;
  }
  const table = tableOn(model, sheet);
  if (table) cutTable(model, sheet, table, axis, out);
  for (const key of sheet.cells.keys()) {
    const [row = 0, column = 0] = key.split(',').map(Number);
    if (out.has(axis === 'rows' ? row : column)) sheet.cells.delete(key);
  }
  sheet[axis] = sheet[axis].filter((line) => !out.has(line));
  if (axis === 'rows') for (const line of out) sheet.hidden.delete(line);
}

/** The lines in their new order; nothing where a range or a table would come to name others than before. */
export function moved(
  model: Model,
  sheet: Sheet,
  axis: Axis,
  from: number,
  count: number,
  to: number,
): number[] | undefined {
  const lines = sheet[axis];
  const taken = lines.slice(from, from + count);
  const behind = lines.slice(to);
  if (to > from && to < from + count + 1) return undefined;
  const rest = lines.filter((line) => !taken.includes(line));
  const place = behind.length === 0 ? rest.length : rest.indexOf(behind[0] as number);
  const order = [...rest.slice(0, place), ...taken, ...rest.slice(place)];
  const spans = refsOf(model).flatMap((ref) =>
    ref.sheet === sheet.id && !ref.gone && ref[axis] ? [ref[axis]] : [],
  );
  const table = tableOn(model, sheet);
  if (table) spans.push(table[axis]);
  const isKept = (ends: [number, number]): boolean => {
    const before = between(lines, ends);
    const after = between(order, ends);
    const touched = before.filter((line) => taken.includes(line)).length;
    return before.join() === after.join() && (touched === 0 || touched === before.length);
  };
  return spans.every((ends) => ends[0] === ends[1] || isKept(ends)) ? order : undefined;
}

/** Cells of a sheet: some of its rows, each with the same columns. */
export interface Block {
  readonly rows: readonly number[];
  readonly columns: readonly number[];
}

const kindOf = (content: Content | undefined): number =>
  content === undefined ? 3 : ['number', 'string', 'boolean'].indexOf(typeof content);

/** Numbers come first, then texts as they are read, then truth values, and at last what is empty; those alike as they were. */
function sortedBy(contents: readonly (Content | undefined)[]): number[] {
  const order = (a: Content | undefined, b: Content | undefined): number => {
    if (kindOf(a) !== kindOf(b)) return kindOf(a) - kindOf(b);
    if (typeof a === 'string')
      return a.localeCompare(String(b), 'en', { numeric: true, sensitivity: 'base' });
    return a === undefined ? 0 : Number(a) - Number(b);
  };
  return contents.map((_, i) => i).sort((i, j) => order(contents[i], contents[j]));
}

/**
 * Sorts the rows of a block that are shown by one of its columns. What names a row goes with it; gives false where something names a part of
 * the rows that would be no part of them any more, or a formula in them names another of them.
 */
export function sort(model: Model, sheet: Sheet, block: Block, by: number): boolean {
  const shown = block.rows.filter((row) => !sheet.hidden.has(row));
  const contents = shown.map((row) => sheet.cells.get(cellKey(row, by)));
  if (contents.some((content) => content !== undefined && isFormula(content))) return false;
  const from = sortedBy(contents);
  if (from.every((was, now) => was === now)) return false;
  const placeOf = new Map([
    ...block.rows.map((row) => [row, row] as const),
    ...from.map((was, now) => [shown[was] as number, shown[now] as number] as const),
  ]);

  // cells that were filled down share what they name
  const named = new Map<Ref, Ref['rows']>();
  const follow = (ref: Ref, at?: { readonly row: number; readonly column: number }): boolean => {
    if (ref.sheet !== sheet.id || ref.gone) return true;
    if (!named.has(ref)) named.set(ref, ref.rows);
    const ends = named.get(ref);
    const rows = ends ? between(sheet.rows, ends) : sheet.rows;
    const columns = ref.columns ? between(sheet.columns, ref.columns) : sheet.columns;
    const isPart =
      rows.some((row) => placeOf.has(row)) &&
      columns.some((column) => block.columns.includes(column)) &&
      !block.rows.every((row) => rows.includes(row));
    if (!isPart) return true;
    const isOwn = at && placeOf.has(at.row) && block.columns.includes(at.column);
    if (isOwn && rows.join() !== String(at.row)) return false;
    if (rows.every((row) => (placeOf.get(row) ?? row) === row)) return true;
    const isWithin =
      rows.every((row) => placeOf.has(row)) && columns.every((column) => block.columns.includes(column));
    if (!isWithin) return false;
    const places = rows.map((row) => index(sheet.rows, placeOf.get(row) as number)).sort((a, b) => a - b);
    const [first = 0, last = 0] = [places[0], places.at(-1)];
    if (last - first !== rows.length - 1) return false;
    ref.rows = [sheet.rows[first] as number, sheet.rows[last] as number];
    return true;
  };
  const isFollowed = model.sheets.every((on) =>
    [...on.cells].every(([key, content]) => {
      const [row = 0, column = 0] = key.split(',').map(Number);
      const at = on === sheet ? { row, column } : undefined;
      return !isFormula(content) || content.filter(isRef).every((ref) => follow(ref, at));
    }),
  );
  if (!isFollowed || ![...model.names.values()].every((ref) => follow(ref))) return false;
  const taken = block.rows.flatMap((row) =>
    block.columns.map((column) => {
      const content = sheet.cells.get(cellKey(row, column));
      sheet.cells.delete(cellKey(row, column));
      return [cellKey(placeOf.get(row) as number, column), content] as const;
    }),
  );
  for (const [key, content] of taken) if (content !== undefined) sheet.cells.set(key, content);
  return true;
}

/** A formula so many rows further down; nothing where it would reach out of the sheet. */
export function filled(model: Model, content: readonly Part[], down: number): readonly Part[] | undefined {
  const parts = content.map((part): Part | undefined => {
    if (!isRef(part) || part.gone || part.fixed || !part.rows) return part;
    const rows = sheetOf(model, part.sheet)?.rows ?? [];
    const [first, last] = part.rows.map((row) => rows[index(rows, row) + down]) as [number?, number?];
    return first === undefined || last === undefined ? undefined : { ...part, rows: [first, last] };
  });
  return parts.includes(undefined) ? undefined : (parts as Part[]);
}

export function removeSheet(model: Model, sheet: Sheet): void {
  for (const ref of refsOf(model)) if (ref.sheet === sheet.id) ref.gone = true;
  model.sheets = model.sheets.filter((each) => each !== sheet);
  model.tables = model.tables.filter((table) => table.sheet !== sheet.id);
}

/** A name for the copy of a table: no table and no name of the workbook is called so. */
function copiedName(model: Model, name: string): string {
  const taken = [...model.tables.map((table) => table.name), ...model.names.keys()];
  let count = 2;
  while (taken.includes(`${name}_${count}`)) count++;
  return `${name}_${count}`;
}

/** A copy of a sheet: what names no sheet means the copy, and what names its table the copy of that. */
export function duplicate(model: Model, sheet: Sheet, name: string): void {
  const copy = structuredClone({ ...sheet, id: model.next++, name });
  const table = tableOn(model, sheet);
  const copied = table && { ...structuredClone(table), sheet: copy.id, name: copiedName(model, table.name) };
  if (copied) model.tables.push(copied);
  for (const [key, content] of copy.cells)
    if (isFormula(content))
      copy.cells.set(
        key,
        content.map((part) => {
          if (isRef(part)) return part.sheet === sheet.id && !part.named ? { ...part, sheet: copy.id } : part;
          return copied && isTableRef(part) && part.table === table.name
            ? { ...part, table: copied.name }
            : part;
        }),
      );
  model.sheets.splice(model.sheets.indexOf(sheet) + 1, 0, copy);
}

function written(model: Model, ref: Ref, on: Sheet | undefined): string {
  const sheet = sheetOf(model, ref.sheet);
  if (ref.gone || !sheet) return '#REF!';
  const before = ref.named || sheet !== on ? `${quotedSheet(sheet.name)}!` : '';
  const sign = ref.fixed ? '$' : '';
  const line = (axis: Axis, end: 0 | 1): string => {
    const ends = ref[axis];
    if (!ends) return '';
    const at = index(sheet[axis], ends[end]);
    return sign + (axis === 'rows' ? String(at + 1) : columnName(at));
  };
  const [from, to] = ([0, 1] as const).map((end) => line('columns', end) + line('rows', end));
  const isCell = ref.rows && ref.columns && from === to;
  return isCell ? `${before}${from}` : `${before}${from}:${to}`;
}

function writtenTable({ table, column, gone }: TableRef): string {
  if (gone) return '#REF!';
  return column ? `${table}[${column.heading}]` : table;
}

const partText = (model: Model, sheet: Sheet, part: Part): string => {
  if (typeof part === 'string') return part;
  return isRef(part) ? written(model, part, sheet) : writtenTable(part);
};
const contentText = (model: Model, sheet: Sheet, content: Content): TestCell =>
  isFormula(content) ? content.map((part) => partText(model, sheet, part)).join('') : content;

/** The rows that are not shown, counted from the first. */
export const hiddenRows = ({ rows, hidden }: Sheet): number[] =>
  rows.flatMap((row, i) => (hidden.has(row) ? [i] : []));

/** A workbook written out: its sheets with their cells in rows, its names, and where its tables lie. */
export function built(model: Model) {
  const sheets = model.sheets.map((sheet) => ({
    name: sheet.name,
    hidden: hiddenRows(sheet),
    rows: sheet.rows.map((row) =>
      sheet.columns.map((column): TestCell => {
        const content = sheet.cells.get(cellKey(row, column));
        return content === undefined ? null : contentText(model, sheet, content);
      }),
    ),
  }));
  const names = [...model.names].map(([name, ref]) => ({ name, text: written(model, ref, undefined) }));
  const tables = model.tables.map(({ name, sheet: id, rows, columns }) => {
    const under = sheetOf(model, id) as Sheet;
    const [startRow, endRow] = rows.map((row) => index(under.rows, row)) as [number, number];
    const [startColumn, endColumn] = columns.map((column) => index(under.columns, column)) as [
      number,
      number,
    ];
    return { name, sheet: under.name, range: { startRow, endRow, startColumn, endColumn } };
  });
  return { sheets, names, tables };
}
