import type { IWorkbookData } from '@univerjs/core';
import { withOwnFormulas } from '../../../engine/mends/edits';
import { planAlone } from '../../../sheets/makePlan';
import { SHORT } from '../../../sheets/offeredTemplates';
import type { SheetPlan } from '../../../sheets/plan';
import { withChartsOnSheets } from '../charts/formerCharts';
import type { Grid } from '../grid/grid';
import { workbookOf } from '../book/fromBook';
import { openable } from './openable';

const FIRST_SHEET = 'pops-build';
const IN_VIEW = 'inView';

function firstPlan(): SheetPlan {
  const template = SHORT.find(({ id }) => id === FIRST_SHEET);
  if (!template) throw new Error(`There is no template "${FIRST_SHEET}".`);
  return planAlone(template, true);
}

/** What a newcomer meets: one sheet with the demo job in it, and its first input chosen. */
export function openFirst(grid: Grid): IWorkbookData | undefined {
  const plan = firstPlan();
  const before = replaceWorkbook(grid, workbookOf({ sheets: [plan.sheet], names: [] }));
  chooseFirstInput(grid, plan);
  return before;
}

export function chooseFirstInput({ api }: Grid, { start }: SheetPlan): void {
  if (start) api.getActiveWorkbook()?.getActiveSheet().getRange(start.row, start.column).activate();
}

/** The open workbook as it can be stored, with the sheet that is in view. */
export function snapshotOf({ api }: Grid): IWorkbookData | undefined {
  const workbook = api.getActiveWorkbook();
  if (!workbook) return undefined;
  const snapshot = workbook.save();
  return { ...snapshot, custom: { ...snapshot.custom, [IN_VIEW]: workbook.getActiveSheet().getSheetId() } };
}

/** Opens a workbook at the sheet that was in view. */
export function openWorkbook({ api }: Grid, snapshot: IWorkbookData): void {
  const workbook = api.createWorkbook(withOwnFormulas(withChartsOnSheets(openable(snapshot))));
  const inView: unknown = snapshot.custom?.[IN_VIEW];
  if (typeof inView === 'string' && workbook.getSheetBySheetId(inView)) workbook.setActiveSheet(inView);
}

/** Puts another workbook in the place of the open one, and gives what was there. Throws where it cannot, and leaves that open. */
export function replaceWorkbook(grid: Grid, next: IWorkbookData): IWorkbookData | undefined {
  const before = snapshotOf(grid);
  if (before) grid.api.disposeUnit(before.id);
  try {
    openWorkbook(grid, next);
  } catch (reason) {
    grid.api.disposeUnit(next.id);
    if (before) openWorkbook(grid, before);
    throw reason;
  }
  return before;
}
