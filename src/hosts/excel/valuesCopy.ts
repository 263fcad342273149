import { address } from '../../formula/address';
import type { Area } from '../../formula/area';
import { halfMadeByTwo, UNTOUCHED } from '../../pane/sentences';
import { columnsOfCard, copyName } from '../../pane/valuesCopy';
import { phoneCard } from '../../sheets/phoneCard';
import { type LaidInExcel, LayFailure, layPlan, WHEN_READY } from './lay';
import { excelRange } from './ranges';
import { readSheet } from './readInView';
import { askMark, type SheetMark } from './sheetMark';
import { AREA, areaOfRange, slices } from './usedCells';

/** A sheet of values, and its mark where it can be taken back. */
export interface ValuesCopy {
  readonly name: string;
  readonly mark: SheetMark | undefined;
  /** Whether the person calculates by hand: values may be behind what was typed, and nothing tells which. */
  readonly isByHand: boolean;
}
/** A card as lines for a phone, as it was laid. */
export type CardCopy = Omit<ValuesCopy, 'mark'> & { readonly card: LaidInExcel };
/** A cell that shows no value yet. */
export interface NotReady {
  readonly cell: string;
  readonly shows: string;
}
/** The copy; or that the sheet is empty; or a cell of it that is not ready; or what the workbook is like after Excel's copy was not the same as the sheet. */
export type CopyOutcome =
  ValuesCopy | CardCopy | 'empty' | { readonly notReady: NotReady } | { readonly unlike: string };

/** What stands in a cell while its value is on the way, or where Excel does not know what it calls: nothing for a client. */
const WAITS: ReadonlySet<unknown> = new Set(['#BUSY!', '#GETTING_DATA', '#NAME?', '#CALC!']);

interface Original {
  readonly sheet: Excel.Worksheet;
  readonly used: Excel.Range;
  readonly area: Area;
  /** What the copy is to be called. */
  readonly name: string;
  readonly isByHand: boolean;
  /** How many columns of a card are printed, which is copied to be read on a phone; undefined for any other sheet. */
  readonly printed: number | undefined;
  /** Ids of all sheets that were there. */
  readonly before: ReadonlySet<string>;
}

function untouched(error: unknown): never {
  throw new LayFailure(UNTOUCHED, error);
}

/** The sheet in view and what is on it; undefined where it is empty. */
async function lookAt(context: Excel.RequestContext): Promise<Original | undefined> {
  const { worksheets, application } = context.workbook;
  application.load('calculationMode');
  worksheets.load('items/id,items/name');
  const sheet = worksheets.getActiveWorksheet().load('name');
  const used = sheet.getUsedRangeOrNullObject().load(AREA);
  const start = sheet.getRange('A2').load('values');
  await context.sync();
  if (used.isNullObject) return undefined;
  return {
    sheet,
    used,
    area: areaOfRange(used),
    name: copyName(sheet.name, worksheets.items.map((one) => one.name)), // prettier-ignore
    isByHand: application.calculationMode === 'Manual',
    printed: columnsOfCard((start.values as unknown[][])[0]?.[0]),
    before: new Set(worksheets.items.map(({ id }) => id)),
  };
}

/** The first cell that has no value yet. */
async function firstNotReady(
  context: Excel.RequestContext,
  { sheet, area }: Original,
): Promise<NotReady | undefined> {
  for (const slice of slices(area)) {
    const range = excelRange(sheet, slice).load('values,text');
    await context.sync();
    for (const [r, line] of range.values.entries())
      for (const [c, value] of (line as unknown[]).entries()) {
        const shows = [range.text[r]?.[c], value].find((one) => WAITS.has(one));
        if (shows !== undefined)
          return { cell: address({ row: slice.row + r, column: slice.column + c }), shows: String(shows) };
      }
  }
  return undefined;
}

/** The sheet once more, formulas and all. At this level only Excel's own copy keeps merged cells, charts and print set-up. */
async function copyWhole(context: Excel.RequestContext, { sheet }: Original): Promise<Excel.Worksheet> {
  context.application.suspendApiCalculationUntilNextSync();
  const copy = sheet.copy('End').load('id');
  copy.tables.load('items/name');
  await context.sync();
  return copy;
}

/** Puts the original's values over the copy's formulas. The original is read, never written. */
async function leaveValues(
  context: Excel.RequestContext,
  { used, area, name }: Original,
  copy: Excel.Worksheet,
): Promise<void> {
  context.application.suspendApiCalculationUntilNextSync();
  // The column of a table keeps its formula for rows to come, even where every cell of it holds a value.
  for (const table of copy.tables.items) table.convertToRange();
  excelRange(copy, area).copyFrom(used, 'Values');
  copy.name = name;
  copy.activate();
  await context.sync();
}

/** A card for a phone in a dark room, as a new sheet of lines. */
async function copyCard(
  excel: typeof Excel,
  context: Excel.RequestContext,
  { sheet, name, printed = 0, before, isByHand }: Original,
): Promise<CardCopy> {
  const tables = sheet.tables.load('items/name');
  await context.sync().catch(untouched);
  const read = await readSheet(context, { sheet, tables }).catch(untouched);
  const plan = { sheet: phoneCard(read, printed, name), names: [], start: undefined };
  // nothing on it calculates
  const card = await layPlan(excel, context, { plan, before, isByHand: false });
  return { name, isByHand, card };
}

/** For taking the copy back. Where Excel does not tell all that it takes, the copy is as good without. */
async function markOf(
  context: Excel.RequestContext,
  { area }: Original,
  copy: Excel.Worksheet,
): Promise<SheetMark | undefined> {
  const mark = askMark(copy, area);
  return context.sync().then(mark, () => undefined);
}

const isFormula = (formula: unknown, value: unknown): boolean =>
  typeof formula === 'string' && formula.startsWith('=') && formula !== value;

/** Whether the copy has no formula, and everything that was typed into the original stands where it stood. */
async function isAlike(
  context: Excel.RequestContext,
  { sheet, area }: Original,
  copy: Excel.Worksheet,
): Promise<boolean> {
  for (const slice of slices(area)) {
    const [from, to] = [sheet, copy].map((of) => excelRange(of, slice).load('formulas,values')) as [
      Excel.Range,
      Excel.Range,
    ];
    await context.sync();
    const differs = from.formulas.some((line: unknown[], r) =>
      line.some((formula, c) => {
        const [old, now] = [from.values[r]?.[c], to.values[r]?.[c]] as unknown[];
        return isFormula(to.formulas[r]?.[c], now) || WAITS.has(now) || (formula === old && now !== old);
      }),
    );
    if (differs) return false;
  }
  return true;
}

/** Whether a sheet holds something where the one that it was copied from holds nothing. */
function isLarger(used: Excel.Range, { row, column, rows, columns }: Area): boolean {
  if (used.isNullObject) return false;
  const now = areaOfRange(used);
  return (
    now.row < row ||
    now.column < column ||
    now.row + now.rows > row + rows ||
    now.column + now.columns > column + columns
  );
}

/**
 * Takes the copy away after a failure, by its id, unless somebody has written beside what was copied. Where Excel broke off before it told
 * one, nobody knows whose a sheet is.
 */
async function takeAway(excel: typeof Excel, original: Original, id: string | undefined): Promise<string> {
  const left = `A half-made copy of “${original.sheet.name}” may be left in the workbook: delete it.`;
  try {
    return await excel.run(WHEN_READY, async (context) => {
      const { worksheets } = context.workbook;
      worksheets.load('items/id');
      const copy = id === undefined ? undefined : worksheets.getItemOrNullObject(id).load('id');
      const used = copy?.getUsedRangeOrNullObject().load(AREA);
      await context.sync();
      const isNew = (sheet: Excel.Worksheet): boolean => !original.before.has(sheet.id);
      if (!copy || !used) return worksheets.items.some(isNew) ? left : UNTOUCHED;
      if (copy.isNullObject) return UNTOUCHED;
      if (isLarger(used, original.area)) return halfMadeByTwo(`copy of “${original.sheet.name}”`);
      copy.delete();
      await context.sync();
      return UNTOUCHED;
    });
  } catch {
    return left;
  }
}

/**
 * Adds a copy of the sheet in view that holds values only, with looks, sizes, merged cells, charts and print set-up. Excel
 * empties its undo list for it.
 */
export const copyValues = (excel: typeof Excel): Promise<CopyOutcome> =>
  excel.run(WHEN_READY, async (context) => {
    const original = await lookAt(context).catch(untouched);
    if (!original) return 'empty';
    const notReady = await firstNotReady(context, original).catch(untouched);
    if (notReady) return { notReady };
    if (original.printed !== undefined) return copyCard(excel, context, original);
    let copy: Excel.Worksheet | undefined;
    try {
      copy = await copyWhole(context, original);
      await leaveValues(context, original, copy);
      if (await isAlike(context, original, copy)) {
        const { name, isByHand } = original;
        return { name, isByHand, mark: await markOf(context, original, copy) };
      }
    } catch (error) {
      throw new LayFailure(await takeAway(excel, original, copy?.id), error);
    }
    return { unlike: await takeAway(excel, original, copy.id) };
  });
