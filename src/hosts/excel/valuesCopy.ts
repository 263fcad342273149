import type { Area } from '../../formula/area';
import { UNTOUCHED } from '../../pane/said';
import { copyName } from '../../pane/valuesCopy';
import { LayFailure, WHEN_READY } from './lay';
import { excelRange } from './ranges';
import { askMark, type SheetMark } from './sheetMark';
import { AREA, areaOfRange, slices } from './usedCells';

/** A sheet of values, and its mark where it can be taken back. */
export interface ValuesCopy {
  readonly name: string;
  readonly mark: SheetMark | undefined;
}
/** The copy; or that the sheet is empty; or what the workbook is like after Excel's copy was not the same as the sheet. */
export type CopyOutcome = ValuesCopy | 'empty' | { readonly unlike: string };

interface Original {
  readonly sheet: Excel.Worksheet;
  readonly used: Excel.Range;
  readonly area: Area;
  /** What the copy is to be called. */
  readonly name: string;
  /** Ids of all sheets that were there. */
  readonly before: ReadonlySet<string>;
}

/** The sheet in view and what is on it; undefined where it is empty. */
async function lookAt(context: Excel.RequestContext): Promise<Original | undefined> {
  const { worksheets } = context.workbook;
  worksheets.load('items/id,items/name');
  const sheet = worksheets.getActiveWorksheet().load('name');
  const used = sheet.getUsedRangeOrNullObject().load(AREA);
  await context.sync();
  if (used.isNullObject) return undefined;
  return {
    sheet,
    used,
    area: areaOfRange(used),
    name: copyName(sheet.name, worksheets.items.map((one) => one.name)), // prettier-ignore
    before: new Set(worksheets.items.map(({ id }) => id)),
  };
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
        return isFormula(to.formulas[r]?.[c], now) || (formula === old && now !== old);
      }),
    );
    if (differs) return false;
  }
  return true;
}

/** What Excel puts behind the name of a sheet that it copies, shortening the name if need be. */
const COUNT = / \(\d+\)$/;

/** Takes the copy away after a failure: by its id, or where Excel broke off before it told one by the name that it gives. */
async function takeAway(excel: typeof Excel, original: Original, id: string | undefined): Promise<string> {
  const called = original.sheet.name;
  const left = `A half-made copy of “${called}” may be left in the workbook: delete it.`;
  const isOurs = (sheet: Excel.Worksheet): boolean =>
    id === undefined
      ? COUNT.test(sheet.name) && called.startsWith(sheet.name.replace(COUNT, ''))
      : sheet.id === id;
  try {
    return await excel.run(WHEN_READY, async (context) => {
      const { worksheets } = context.workbook;
      worksheets.load('items/id,items/name');
      await context.sync();
      const ours = worksheets.items.filter((sheet) => !original.before.has(sheet.id) && isOurs(sheet));
      if (ours.length > 1) return left;
      ours[0]?.delete();
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
    const original = await lookAt(context).catch((error: unknown) => {
      throw new LayFailure(UNTOUCHED, error);
    });
    if (!original) return 'empty';
    let copy: Excel.Worksheet | undefined;
    try {
      copy = await copyWhole(context, original);
      await leaveValues(context, original, copy);
      if (await isAlike(context, original, copy))
        return { name: original.name, mark: await markOf(context, original, copy) };
    } catch (error) {
      throw new LayFailure(await takeAway(excel, original, copy?.id), error);
    }
    return { unlike: await takeAway(excel, original, copy.id) };
  });
