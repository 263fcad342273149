import { at } from '../../exposure/core/at';
import { saysTheSame } from '../../formula/same';
import { parseAddress } from '../../formula/address';
import type { Area } from '../../formula/area';
import type { Place } from '../../formula/address';
import type { MendedCell } from '../../pane/host';
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
 * Why a cell was left: it holds something else by now or its sheet is gone; it is locked; other rows of its table's column would be filled
 * with it; or Excel does not take it.
 */
export type Reason = 'changed' | 'locked' | 'column' | 'refused';

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
): Promise<Changed> {
  const on = await lookAt(context, name);
  const all: Changed = { done: [], left: [] };
  const leave = (some: readonly Change[], why: Reason): void => {
    for (const { of } of some) all.left.push({ cell: of, why });
  };
  if (!on) {
    leave(changes, 'changed');
    return all;
  }
  for (const batch of batches(changes, () => 1, WRITES_AT_ONCE)) {
    const found = await find(context, on, batch);
    const locked = on.isProtected
      ? found.filter(({ range }) => range.format.protection.locked !== false)
      : [];
    const free = found.filter((one) => !locked.includes(one));
    const same = free.filter((one) => isHeld(one, one.change.from));
    const { safe, unsafe } = await apart(context, on, same);
    leave(locked.map(({ change }) => change), 'locked'); // prettier-ignore
    leave(free.filter((one) => !same.includes(one)).map(({ change }) => change), 'changed'); // prettier-ignore
    leave(unsafe.map(({ change }) => change), 'column'); // prettier-ignore
    await write(context, on, safe, all);
  }
  return all;
}

const isHeld = ({ range, table }: Found, formula: string): boolean => {
  const held: unknown = range.formulas[0]?.[0];
  return typeof held === 'string' && saysTheSame(held, formula, table?.name);
};

async function find(
  context: Excel.RequestContext,
  { sheet, tables }: OnSheet,
  changes: readonly Change[],
): Promise<Found[]> {
  const found = changes.map((change) => {
    const range = sheet.getRange(change.of.cell).load('formulas');
    range.format.protection.load('locked');
    return { change, range, table: tables.find(({ body }) => holds(body, placeOf(change))) };
  });
  await context.sync();
  return found;
}

/** Tells those that Excel may fill into other rows, where these hold something else. */
async function apart(
  context: Excel.RequestContext,
  { sheet }: OnSheet,
  found: readonly Found[],
): Promise<{ readonly safe: readonly Found[]; readonly unsafe: readonly Found[] }> {
  const columns = new Map<string, { table: Table; column: number; range: Excel.Range }>();
  const keyOf = ({ table, change }: Found): string =>
    table ? `${placeOf(change).column} ${table.name}` : '';
  for (const one of found) {
    const { table, change } = one;
    if (!table || columns.has(keyOf(one))) continue;
    const { column } = placeOf(change);
    const range = excelRange(sheet, { ...table.body, column, columns: 1 }).load('formulas');
    columns.set(keyOf(one), { table, column, range });
  }
  if (columns.size === 0) return { safe: found, unsafe: [] };
  await context.sync();
  const good = new Set(['']);
  for (const [key, { table, range }] of columns) {
    const after: unknown[] = range.formulas.map((line: unknown[]) => line[0]);
    for (const one of found)
      if (keyOf(one) === key) after[placeOf(one.change).row - table.body.row] = one.change.to;
    if (isOneFormula(after, table.name)) good.add(key);
  }
  return {
    safe: found.filter((one) => good.has(keyOf(one))),
    unsafe: found.filter((one) => !good.has(keyOf(one))),
  };
}

/** Writes cells, and halves of them where Excel refuses one, until it is known which it does not take. */
async function write(
  context: Excel.RequestContext,
  on: OnSheet,
  found: readonly Found[],
  all: Changed,
): Promise<void> {
  if (found.length === 0) return;
  for (const { change, range } of found) {
    range.formulas = [[change.to]];
    range.load('formulas');
  }
  const code = await context.sync().then(() => '', (error: unknown) => {
    if (codeOf(error) === 'AccessDenied' || OF_A_CELL.has(codeOf(error))) return codeOf(error);
    throw error;
  }); // prettier-ignore
  if (code === '') {
    for (const { change, range } of found)
      all.done.push({ ...change.of, after: String(range.formulas[0]?.[0]) });
    return;
  }
  const again = await find(context, on, found.map(({ change }) => change)); // prettier-ignore
  for (const one of again) {
    const held = String(one.range.formulas[0]?.[0]);
    if (isHeld(one, one.change.to)) all.done.push({ ...one.change.of, after: held });
  }
  const rest = again.filter((one) => !isHeld(one, one.change.to));
  if (code === 'AccessDenied' || rest.length <= 1) {
    for (const one of rest)
      all.left.push({ cell: one.change.of, why: code === 'AccessDenied' ? 'locked' : 'refused' });
    return;
  }
  const half = Math.ceil(rest.length / 2);
  await write(context, on, rest.slice(0, half), all);
  await write(context, on, rest.slice(half), all);
}

/**
 * Writes formulas into single cells, each where what it takes the place of still stands, sheet by sheet. No other cell is touched: one that
 * cannot be written without is left, and so is what is locked or refused.
 */
export async function changeCells(
  context: Excel.RequestContext,
  changes: readonly Change[],
): Promise<Changed> {
  const all: Changed = { done: [], left: [] };
  for (const name of new Set(changes.map(({ of }) => of.sheet))) {
    const some = await changeSheet(context, name, changes.filter(({ of }) => of.sheet === name)); // prettier-ignore
    all.done.push(...some.done);
    all.left.push(...some.left);
  }
  return all;
}
