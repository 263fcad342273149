import type { BookSheet } from '../../book/book';
import { usedArea } from '../../book/cells';
import type { KnownTable } from '../../book/kinds/kind';
import { address } from '../../formula/address';
import { couldLink, halfMade, halfMadeByTwo, notLookedUp, UNTOUCHED } from '../../pane/sentences';
import { lackingIn, waitingFor } from '../../sheets/links/waiting';
import { makePlan } from '../../sheets/makePlan';
import { SHORT } from '../../sheets/offeredTemplates';
import { type SheetPlan, tablesOf } from '../../sheets/plan';
import type { Template } from '../../sheets/template';
import { decorate } from './decorate';
import { drawSheet } from './draw';
import { askCells, askWhetherByTwo, type ReadBack } from './readBack';
import { codeOf } from './refusals';
import { askMark, type SheetMark } from './sheetMark';

/** A sheet that is in the workbook. */
export interface LaidInExcel extends ReadBack {
  readonly sheet: string;
  /** What other sheets may look up in it. */
  readonly tables: readonly KnownTable[];
  /** Address of the first cell to type in. */
  readonly start: string | undefined;
  /** For taking it back. */
  readonly mark: SheetMark | undefined;
  /** What Excel could not do for the sheet, and what the person should know of it, in sentences. */
  readonly said: readonly string[];
}

/** Why a sheet could not be laid, and what the workbook is like now. */
export class LayFailure extends Error {
  readonly kept: string;
  constructor(kept: string, cause: unknown) {
    super(kept, { cause });
    this.kept = kept;
  }
}

export const NOT_KNOWN_YET =
  'Excel does not know the functions yet, so their cells show #NAME?. Wait a moment, then press Recalculate.';

export const UNDO_EMPTIED = 'Excel has emptied its undo list.';

/** A button's wish waits until the cell that is being typed in is done, where Excel can wait. */
export const WHEN_READY: Excel.RunOptions = { delayForCellEdit: true };

/** A plan whose names nobody in the workbook has, the ids of the sheets there, and whether the person calculates by hand. */
async function planFor(
  context: Excel.RequestContext,
  template: Template,
  filled: boolean,
  together: readonly KnownTable[],
) {
  const { worksheets, tables, names, application } = context.workbook;
  worksheets.load('items/id,items/name');
  tables.load('items/name,items/columns/items/name');
  names.load('items/name');
  application.load('calculationMode');
  await context.sync();
  const known = tables.items.map(({ name, columns }) => ({
    name,
    columns: columns.items.map((column) => column.name),
  }));
  const plan = makePlan(template, {
    filled,
    sheets: worksheets.items.map(({ name }) => name),
    tables: known,
    together,
    names: names.items.map(({ name }) => name),
  });
  const before = new Set(worksheets.items.map(({ id }) => id));
  const waiting = [
    ...couldLink(waitingFor(template, SHORT, known)),
    ...notLookedUp(lackingIn(template, known)),
  ];
  return { plan, before, waiting, isByHand: application.calculationMode === 'Manual' };
}

/**
 * Adds the sheet, empty, and learns its id: whatever happens later, only the sheet of that id is ours, not one that somebody else
 * gives its name.
 */
async function addSheet(context: Excel.RequestContext, name: string): Promise<string> {
  const sheet = context.workbook.worksheets.add(name).load('id');
  await context.sync();
  return sheet.id;
}

/** What the workbook is like where the sheet was refused, or Excel broke off before it told which it is. */
async function keptUnadded(
  excel: typeof Excel,
  error: unknown,
  name: string,
  before: ReadonlySet<string>,
): Promise<string> {
  if (codeOf(error) === 'ItemAlreadyExists') return UNTOUCHED;
  try {
    return await excel.run(WHEN_READY, async (context) => {
      const sheet = context.workbook.worksheets.getItemOrNullObject(name).load('id');
      await context.sync();
      return sheet.isNullObject || before.has(sheet.id) ? UNTOUCHED : halfMade(name);
    });
  } catch {
    return halfMade(name);
  }
}

async function drawAll(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  plan: SheetPlan,
): Promise<void> {
  const { application } = context.workbook;
  application.suspendApiCalculationUntilNextSync();
  application.suspendScreenUpdatingUntilNextSync();
  drawSheet(sheet, plan);
  sheet.activate();
  const { start } = plan;
  if (start) sheet.getRangeByIndexes(start.row, start.column, 1, 1).select();
  await context.sync();
}

/**
 * Takes the half-made sheet away, and says what the workbook is like then. What was there before is never touched, nor what somebody
 * has written on the sheet since.
 */
async function keptHalfMade(excel: typeof Excel, id: string, planned: BookSheet): Promise<string> {
  const { name } = planned;
  try {
    return await excel.run(WHEN_READY, async (context) => {
      const sheet = context.workbook.worksheets.getItemOrNullObject(id).load('id');
      const isByTwo = askWhetherByTwo(sheet, planned);
      await context.sync();
      if (sheet.isNullObject) return UNTOUCHED;
      if (isByTwo()) return halfMadeByTwo(`sheet “${name}”`);
      sheet.delete();
      await context.sync();
      return UNTOUCHED;
    });
  } catch {
    return halfMade(name);
  }
}

/** What became of the sheet that has just been laid. */
async function lookOver(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  { sheet: planned }: SheetPlan,
  isMarked: boolean,
): Promise<ReadBack & { readonly mark: SheetMark | undefined }> {
  const mark = isMarked ? askMark(sheet, usedArea(planned)) : () => undefined;
  const cells = askCells(sheet, planned);
  await context.sync();
  return { ...cells(), mark: mark() };
}

/** A plan, what was in the workbook before it, and whether the person calculates by hand. */
export interface ToLay {
  readonly plan: SheetPlan;
  readonly before: ReadonlySet<string>;
  readonly isByHand: boolean;
}

/**
 * Lays a new sheet: the sheet itself, everything on it, its decoration, and a look at all of its cells as they have become. Excel does
 * a request action by action and keeps what it did before one fails, so a failure takes the sheet away again before it is thrown; once its
 * cells are all there, no decoration that fails can.
 */
export async function layPlan(
  excel: typeof Excel,
  context: Excel.RequestContext,
  { plan, before, isByHand }: ToLay,
): Promise<LaidInExcel> {
  const { sheet: planned, start } = plan;
  const { name } = planned;
  const id = await addSheet(context, name).catch(async (error: unknown) => {
    throw new LayFailure(await keptUnadded(excel, error, name, before), error);
  });
  const sheet = context.workbook.worksheets.getItem(id);
  await drawAll(context, sheet, plan).catch(async (error: unknown) => {
    throw new LayFailure(await keptHalfMade(excel, id, planned), error);
  });
  const said = await decorate(context, sheet, planned, isByHand);
  // Where Excel does not tell all that a mark takes, the sheet is not offered to be taken back.
  const found = await lookOver(context, sheet, plan, true)
    .catch(() => lookOver(context, sheet, plan, false))
    .catch((error: unknown) => {
      throw new LayFailure(`The sheet “${name}” is in the workbook, whole but not looked over.`, error);
    });
  return { sheet: name, tables: tablesOf(plan), start: start && address(start), said, ...found };
}

/**
 * Lays a template as a new sheet, under names that nobody in the workbook has.
 *
 * @param together - tables of sheets that came in the same step, which it looks up in before all others
 */
export const lay = (
  excel: typeof Excel,
  template: Template,
  filled: boolean,
  together: readonly KnownTable[] = [],
): Promise<LaidInExcel> =>
  excel.run(WHEN_READY, async (context) => {
    const { waiting, ...toLay } = await planFor(context, template, filled, together).catch(
      (error: unknown) => {
        throw new LayFailure(UNTOUCHED, error);
      },
    );
    const laid = await layPlan(excel, context, toLay);
    return { ...laid, said: [...laid.said, ...waiting] };
  });
