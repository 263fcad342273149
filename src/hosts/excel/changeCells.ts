import { at } from '../../exposure/core/at';
import { saysTheSame } from '../../formula/same';
import { parseAddress } from '../../formula/address';
import type { Area } from '../../formula/area';
import type { Place } from '../../formula/address';
import type { MendedCell } from '../../pane/host';
import { TEXT } from './cells';
import { isOneFormula } from './columns';
import { holds } from './formulaBlocks';
import { codeOf } from './refusals';
import { excelRange } from './ranges';
import { AREA, areaOfRange, batches } from './usedCells';

/** Each cell that is written is an object of its own on the way to Excel. */
const WRITES_AT_ONCE = 500;

/** What a cell should hold, and what it must hold before. */
export interface Change {
  readonly of: MendedCell;
  readonly from: string;
  readonly to: string;
}

/**
 * Why a cell was left: it holds something else by now or its sheet is gone; it is locked; it is a text, or a formula that would become one;
 * other rows of its table's column would be filled with it; or Excel does not take it.
 */
export type Reason = 'changed' | 'locked' | 'text' | 'column' | 'refused';

export interface Changed {
  /** What was written, with what Excel makes of it in `after`. */
  readonly done: MendedCell[];
  readonly left: { readonly cell: MendedCell; readonly why: Reason }[];
}

interface Table {
  readonly name: string;
  /** Without its headings. */
  readonly body: Area;
}

interface OnSheet {
  readonly sheet: Excel.Worksheet;
  readonly tables: readonly Table[];
  readonly isProtected: boolean;
  /** All that is to be changed on it. */
  readonly changes: readonly Change[];
  /** Columns of tables that were written into: Excel may have filled them. */
  readonly written: Set<string>;
  readonly all: Changed;
  readonly tried: MendedCell[];
}

/** A change, with the cell as it is now. */
interface Found {
  readonly change: Change;
  readonly range: Excel.Range;
  readonly table: Table | undefined;
}

/** Excel refuses a cell by one of these; by any other code it is out of reach, or gone altogether. */
const OF_A_CELL: ReadonlySet<string> = new Set(['InvalidArgument', 'InvalidOperation', 'UnsupportedOperation', 'GeneralException']); // prettier-ignore

const placeOf = ({ of }: Change): Place => parseAddress(of.cell) ?? { row: -1, column: -1 };

const columnOf = (change: Change, table: Table): string => `${placeOf(change).column} ${table.name}`;

/** The tables of a sheet; nothing where the sheet is gone. */
async function lookAt(context: Excel.RequestContext, name: string) {
  const sheet = context.workbook.worksheets.getItemOrNullObject(name).load('name');
  sheet.protection.load('protected');
  sheet.tables.load('items/name');
  await context.sync();
  if (sheet.isNullObject) return undefined;
  const { items } = sheet.tables;
  const bodies = items.map((table) => table.getDataBodyRange().load(AREA));
  if (bodies.length > 0) await context.sync();
  const tables = items.map((table, i) => ({
    name: table.name,
    body: areaOfRange(at(bodies, i)),
  }));
  return { sheet, tables, isProtected: sheet.protection.protected };
}

async function changeSheet(
  context: Excel.RequestContext,
  name: string,
  changes: readonly Change[],
  tried: MendedCell[],
): Promise<Changed> {
  const seen = await lookAt(context, name);
  const all: Changed = { done: [], left: [] };
  if (!seen) return { ...all, left: changes.map(({ of }) => ({ cell: of, why: 'changed' })) };
  const on: OnSheet = { ...seen, changes, written: new Set(), all, tried };
  for (const batch of batches(changes, () => 1, WRITES_AT_ONCE)) await attempt(context, on, batch);
  return all;
}

const heldBy = ({ range }: Found): unknown => range.formulas[0]?.[0];

const isHeld = (found: Found, formula: string): boolean => {
  const held = heldBy(found);
  return typeof held === 'string' && saysTheSame(held, formula, found.table?.name);
};

/** Words are told as a formula is, without the apostrophe before them (OfficeDev/office-js #6687); what is entered into a cell of texts becomes one. */
const isText = (found: Found): boolean =>
  found.range.numberFormat[0]?.[0] === TEXT || found.range.values[0]?.[0] === heldBy(found);

/** Whether Excel has filled a cell with what we wrote into others of its column. */
const isFilled = (on: OnSheet, found: Found): boolean =>
  found.table !== undefined &&
  on.written.has(columnOf(found.change, found.table)) &&
  isHeld(found, found.change.to);

async function find(
  context: Excel.RequestContext,
  { sheet, tables }: OnSheet,
  changes: readonly Change[],
): Promise<Found[]> {
  const found = changes.map((change) => {
    const range = sheet.getRange(change.of.cell).load('formulas,values,numberFormat');
    range.format.protection.load('locked');
    return { change, range, table: tables.find(({ body }) => holds(body, placeOf(change))) };
  });
  await context.sync();
  return found;
}

/** Looks at cells as they are now, writes those of them that can be written, and notes why others are left. */
async function attempt(
  context: Excel.RequestContext,
  on: OnSheet,
  changes: readonly Change[],
): Promise<void> {
  const ready: Found[] = [];
  for (const one of await find(context, on, changes)) {
    const isLocked = on.isProtected && one.range.format.protection.locked !== false;
    if (isFilled(on, one)) noteDone(on, one);
    else if (isLocked) leave(on, one, 'locked');
    else if (!isHeld(one, one.change.from)) leave(on, one, 'changed');
    else if (isText(one)) leave(on, one, 'text');
    else ready.push(one);
  }
  const isSafe = await apart(context, on, ready);
  for (const one of ready) if (!isSafe(one)) leave(on, one, 'column');
  await write(context, on, ready.filter(isSafe));
}

const noteDone = ({ all }: OnSheet, found: Found): void => {
  all.done.push({ ...found.change.of, after: String(heldBy(found)) });
};
const leave = ({ all }: OnSheet, { change }: Found, why: Reason): void => {
  all.left.push({ cell: change.of, why });
};

/** Tells those apart that Excel may fill into other rows, where these hold something else. */
async function apart(
  context: Excel.RequestContext,
  { sheet, changes }: OnSheet,
  found: readonly Found[],
): Promise<(one: Found) => boolean> {
  const columns = new Map<string, { table: Table; range: Excel.Range }>();
  for (const { table, change } of found) {
    if (!table || columns.has(columnOf(change, table))) continue;
    const { column } = placeOf(change);
    const range = excelRange(sheet, { ...table.body, column, columns: 1 }).load('formulas');
    columns.set(columnOf(change, table), { table, range });
  }
  if (columns.size > 0) await context.sync();
  const good = new Set<string>();
  for (const [key, { table, range }] of columns) {
    const after: unknown[] = range.formulas.map((line: unknown[]) => line[0]);
    for (const change of changes) {
      if (!holds(table.body, placeOf(change)) || columnOf(change, table) !== key) continue;
      const row = placeOf(change).row - table.body.row;
      const held = after[row];
      if (typeof held === 'string' && saysTheSame(held, change.from, table.name)) after[row] = change.to;
    }
    if (isOneFormula(after, table.name)) good.add(key);
  }
  return ({ table, change }) => !table || good.has(columnOf(change, table));
}

/** Writes cells, and halves of them where Excel refuses one, until it is known which it does not take. */
async function write(context: Excel.RequestContext, on: OnSheet, found: readonly Found[]): Promise<void> {
  if (found.length === 0) return;
  for (const { change, range, table } of found) {
    on.tried.push(change.of);
    if (table) on.written.add(columnOf(change, table));
    range.formulas = [[change.to]];
    range.load('formulas');
  }
  const code = await context.sync().then(() => '', (error: unknown) => {
    if (codeOf(error) === 'AccessDenied' || OF_A_CELL.has(codeOf(error))) return codeOf(error);
    throw error;
  }); // prettier-ignore
  if (code === '') {
    for (const one of found) noteDone(on, one);
    return;
  }
  const rest: Found[] = [];
  for (const one of await find(
    context,
    on,
    found.map(({ change }) => change),
  ))
    // prettier-ignore
    // What is entered again as it was does not show whether it is.
    if (one.change.from !== one.change.to && isHeld(one, one.change.to)) noteDone(on, one);
    else if (!isHeld(one, one.change.from)) leave(on, one, 'changed');
    else rest.push(one);
  if (code === 'AccessDenied' || rest.length <= 1) {
    for (const one of rest) leave(on, one, code === 'AccessDenied' ? 'locked' : 'refused');
    return;
  }
  const again = rest.map(({ change }) => change);
  const half = Math.ceil(again.length / 2);
  await attempt(context, on, again.slice(0, half));
  await attempt(context, on, again.slice(half));
}

/**
 * Writes formulas into single cells, each where what it takes the place of still stands, sheet by sheet. No other cell is touched: one that
 * cannot be written without is left, and so is what is locked, a text or refused.
 * @param tried - is told each cell before it is written: Excel may break off then
 */
export async function changeCells(
  context: Excel.RequestContext,
  changes: readonly Change[],
  tried: MendedCell[] = [],
): Promise<Changed> {
  const all: Changed = { done: [], left: [] };
  for (const name of new Set(changes.map(({ of }) => of.sheet))) {
    const some = await changeSheet(context, name, changes.filter(({ of }) => of.sheet === name), tried); // prettier-ignore
    all.done.push(...some.done);
    all.left.push(...some.left);
  }
  return all;
}
