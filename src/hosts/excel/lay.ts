import type { BookCell, BookSheet } from '../../book/book';
import { usedArea } from '../../book/cells';
import { NAMESPACE } from '../../catalogue';
import { address } from '../../formula/address';
import { halfMade, UNTOUCHED } from '../../pane/said';
import { makePlan } from '../../sheets/makePlan';
import type { SheetPlan } from '../../sheets/plan';
import type { Template } from '../../sheets/template';
import { drawSheet } from './draw';
import { codeOf, locationOf } from './refusals';
import { askMark, type SheetMark } from './sheetMark';

/** A sheet that is in the workbook. */
export interface LaidInExcel {
  readonly sheet: string;
  /** Address of the first cell to type in. */
  readonly start: string | undefined;
  /** Whether a cell shows that Excel does not know our functions. */
  readonly unknownFunctions: boolean;
  /** For taking it back. */
  readonly mark: SheetMark | undefined;
}

/** Why a sheet could not be laid, and what the workbook is like now. */
export class LayFailure extends Error {
  readonly kept: string;
  constructor(kept: string, cause: unknown) {
    super(kept, { cause });
    this.kept = kept;
  }
}

export const UNDO_EMPTIED = 'Excel has emptied its undo list.';

/** A button's wish waits until the cell that is being typed in is done, where Excel can wait. */
export const WHEN_READY: Excel.RunOptions = { delayForCellEdit: true };

/** A plan whose names nobody in the workbook has, and the sheets that were there when it was made. */
async function planFor(context: Excel.RequestContext, template: Template, filled: boolean) {
  const { worksheets, tables, names } = context.workbook;
  worksheets.load('items/id,items/name');
  tables.load('items/name,items/columns/items/name');
  names.load('items/name');
  await context.sync();
  const plan = makePlan(template, {
    filled,
    sheets: worksheets.items.map(({ name }) => name),
    tables: tables.items.map(({ name, columns }) => ({
      name,
      columns: columns.items.map((column) => column.name),
    })),
    names: names.items.map(({ name }) => name),
  });
  return { plan, before: new Set(worksheets.items.map(({ id }) => id)) };
}

const callsOurs = ({ formula }: BookCell): boolean => formula?.includes(`${NAMESPACE}.`) ?? false;

async function drawAll(context: Excel.RequestContext, plan: SheetPlan): Promise<void> {
  const { application, worksheets } = context.workbook;
  application.suspendApiCalculationUntilNextSync();
  application.suspendScreenUpdatingUntilNextSync();
  const sheet = worksheets.add(plan.sheet.name);
  drawSheet(sheet, plan);
  sheet.activate();
  const { start } = plan;
  if (start) sheet.getRangeByIndexes(start.row, start.column, 1, 1).select();
  await context.sync();
}

/** What became of the sheet that has just been laid. */
async function lookOver(
  context: Excel.RequestContext,
  { name, cells }: BookSheet,
  isMarked: boolean,
): Promise<Pick<LaidInExcel, 'unknownFunctions' | 'mark'>> {
  const sheet = context.workbook.worksheets.getItem(name);
  const mark = isMarked ? askMark(sheet, usedArea({ cells })) : () => undefined;
  const cell = cells.find(callsOurs);
  const range = cell && sheet.getRangeByIndexes(cell.row, cell.column, 1, 1).load('values');
  await context.sync();
  return { unknownFunctions: range?.values[0]?.[0] === '#NAME?', mark: mark() };
}

/**
 * Whether Excel refused the new sheet itself, because somebody who works in the same workbook was quicker: the sheet that
 * has the name now is theirs. Tables can be refused with the same code.
 */
const isSheetRefused = (error: unknown): boolean =>
  codeOf(error) === 'ItemAlreadyExists' && !locationOf(error).startsWith('Table');

/** Takes the half-made sheet away, if there is one. What was there before is never touched. */
async function takeAway(excel: typeof Excel, name: string, before: ReadonlySet<string>): Promise<void> {
  await excel.run(WHEN_READY, async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(name).load('id');
    await context.sync();
    if (sheet.isNullObject || before.has(sheet.id)) return;
    sheet.delete();
    await context.sync();
  });
}

/** What the workbook is like after a failure, once everything that can be taken back is. */
async function keptAfter(
  excel: typeof Excel,
  error: unknown,
  name: string,
  before: ReadonlySet<string>,
): Promise<string> {
  if (isSheetRefused(error)) return UNTOUCHED;
  try {
    await takeAway(excel, name, before);
    return UNTOUCHED;
  } catch {
    return halfMade(name);
  }
}

/**
 * Lays a template as a new sheet, in three requests: which names are taken, the whole sheet, and a look at the sheet
 * as it has become. Excel does a request action by action and keeps what it did before one fails, so a failure takes the sheet
 * away again before it is thrown.
 */
export const lay = (excel: typeof Excel, template: Template, filled: boolean): Promise<LaidInExcel> =>
  excel.run(WHEN_READY, async (context) => {
    const { plan, before } = await planFor(context, template, filled).catch((error: unknown) => {
      throw new LayFailure(UNTOUCHED, error);
    });
    const { sheet, start } = plan;
    await drawAll(context, plan).catch(async (error: unknown) => {
      throw new LayFailure(await keptAfter(excel, error, sheet.name, before), error);
    });
    // Where Excel does not tell all that a mark takes, the sheet is not offered to be taken back.
    const found = await lookOver(context, sheet, true)
      .catch(() => lookOver(context, sheet, false))
      .catch((error: unknown) => {
        throw new LayFailure(
          `The sheet “${sheet.name}” is in the workbook, whole but not looked over.`,
          error,
        );
      });
    return { sheet: sheet.name, start: start && address(start), ...found };
  });
