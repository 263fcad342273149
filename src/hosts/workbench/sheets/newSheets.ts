import type { FWorkbook } from '@univerjs/sheets/facade';
import { address } from '../../../formula/address';
import type { Done, Outcome } from '../../../pane/host';
import type { KnownTable } from '../../../book/kinds/kind';
import { makePlan } from '../../../sheets/makePlan';
import { JOB } from '../../../sheets/byUse';
import type { SheetPlan } from '../../../sheets/plan';
import { lackingIn, waitingFor } from '../../../sheets/links/waiting';
import { ESTIMATE, hasPrices, nextEstimate } from '../../../sheets/nextEstimate';
import { SHORT } from '../../../sheets/offeredTemplates';
import type { NamedSheet, SheetRead } from '../../../sheets/sheetRead';
import type { Template } from '../../../sheets/template';
import { templateToLay } from '../../../sheets/templateToLay';
import {
  copied,
  copiedCard,
  couldLink,
  estimateFrom,
  inserted,
  JOB_BACK,
  jobInserted,
  NO_ESTIMATE,
  noSheet,
  notLookedUp,
  NOTHING_TO_COPY,
} from '../../../pane/sentences';
import { copyName } from '../../../pane/valuesCopy';
import { decorations } from '../book/besideCells';
import type { Grid } from '../grid/grid';
import { asOneStep } from '../grid/oneStep';
import { revealSelected } from '../grid/reveal';
import { type LaidInGrid, lay, type NewSheet } from './lay';
import { layRefusal } from './layRefusal';
import { chooseFirstInput } from '../state/session';
import { snapshotSheet } from '../book/snapshotSheet';
import { toBook } from '../book/toBook';
import { takeSheetBack } from './takeSheetBack';
import { valuesSheet } from './valuesSheet';

const sheetsTaken = (workbook: FWorkbook): string[] =>
  workbook.getSheets().map((sheet) => sheet.getSheetName());

const tablesIn = (workbook: FWorkbook): KnownTable[] =>
  workbook
    .getTableList()
    .map(({ name, columns }) => ({ name, columns: columns.map(({ displayName }) => displayName) }));

const NO_WORKBOOK = { refused: 'No workbook is open. Reload the page and try again.' } as const;
const UNDOABLE = 'Ctrl+Z takes it away again.';

/** In this grid a table may not be called like a sheet either. */
const namesTaken = (workbook: FWorkbook): string[] => [
  ...workbook.getDefinedNames().map((name) => name.getName()),
  ...sheetsTaken(workbook),
];

/** Lays a sheet, shows it, and says what became of it. */
function laid(grid: Grid, workbook: FWorkbook, name: string, made: NewSheet, done: string): Outcome {
  let fresh: LaidInGrid;
  try {
    fresh = lay(grid, made);
  } catch (reason) {
    return { refused: layRefusal(reason, name, sheetsTaken(workbook)) };
  }
  const takeBack = takeSheetBack(grid, fresh, name);
  workbook.setActiveSheet(fresh.id);
  return { done, takeBack };
}

/** Lays the template of an id as a new sheet. */
export async function insertSheet(grid: Grid, id: string, filled: boolean): Promise<Outcome> {
  const template = await templateToLay(id);
  if (template && 'refused' in template) return template;
  return template ? insertTemplate(grid, template, filled) : noSheet(id);
}

/** Lays a template that is there already, with the demo job where it is filled. */
export const insertTemplate = (grid: Grid, template: Template, filled: boolean): Outcome =>
  layTemplate(grid, template, { filled, demo: filled });

/** Of the sheets that are wanted the one in view, or else the first. */
export function readInView(
  grid: Grid,
  isWanted: (sheet: Pick<SheetRead, 'tables'>) => boolean,
): NamedSheet | undefined {
  const name = grid.api.getActiveWorkbook()?.getActiveSheet().getSheetName();
  const all = toBook(grid).book.sheets.filter(isWanted);
  return all.find((sheet) => sheet.name === name) ?? all[0];
}

/** Lays a sheet with what was made for this workbook. */
export const layMade = (grid: Grid, template: Template): Outcome =>
  layTemplate(grid, template, { filled: true, demo: false });

/** Lays the sheets of a job, each of which looks up in those before it, in one step, and shows the first. */
export async function newJob(grid: Grid): Promise<Outcome> {
  const templates: Template[] = [];
  for (const id of JOB) {
    const template = await templateToLay(id);
    if (!template) return noSheet(id);
    if ('refused' in template) return template;
    templates.push(template);
  }
  return asOneStep(grid, async () => {
    const laidSheets: LaidSheet[] = [];
    for (const template of templates) {
      const laidSheet = layPlanned(grid, template, { filled: true, demo: true });
      if ('refused' in laidSheet) {
        await allBack(laidSheets);
        return laidSheet;
      }
      laidSheets.push(laidSheet);
    }
    const [first, ...others] = laidSheets;
    if (!first) return NO_WORKBOOK;
    grid.api.getActiveWorkbook()?.setActiveSheet(first.id);
    chooseFirstInput(grid, first.plan);
    // the sheet in view is another one as of the next frame
    requestAnimationFrame(() => requestAnimationFrame(() => revealSelected(grid)));
    const names = others.map(({ plan }) => plan.sheet.name);
    const at = first.plan.start ? address(first.plan.start) : 'A1';
    return {
      done: jobInserted(first.plan.sheet.name, at, names),
      takeBack: () => asOneStep(grid, () => allBack(laidSheets)),
    };
  });
}

/** The last first: those before it are looked up in. */
async function allBack(laidSheets: readonly LaidSheet[]): Promise<Outcome> {
  const said: string[] = [];
  for (const { outcome } of [...laidSheets].reverse()) {
    const back = await outcome.takeBack?.();
    if (!back) continue;
    if ('refused' in back) return { refused: [...said, back.refused].join(' ') };
    said.push(back.done);
  }
  return { done: JOB_BACK };
}

/** Lays an estimate with the prices of the one in view, or else of the first. */
export async function newEstimate(grid: Grid): Promise<Outcome> {
  const template = await templateToLay(ESTIMATE);
  if (template && 'refused' in template) return template;
  if (!template) return noSheet(ESTIMATE);
  const from = readInView(grid, hasPrices);
  if (!from) return NO_ESTIMATE;
  const outcome = layMade(grid, nextEstimate(template, from));
  return 'done' in outcome ? { ...outcome, done: `${outcome.done} ${estimateFrom(from.name)}` } : outcome;
}

interface How {
  /** Whether what the template holds in its inputs comes along, and whether that is the demo job. */
  readonly filled: boolean;
  readonly demo: boolean;
}

const layTemplate = (grid: Grid, template: Template, how: How): Outcome => {
  const laidSheet = layPlanned(grid, template, how);
  return 'refused' in laidSheet ? laidSheet : laidSheet.outcome;
};

/** A sheet that was laid, as it was planned. */
interface LaidSheet {
  readonly id: string;
  readonly plan: SheetPlan;
  readonly outcome: Done;
}

function layPlanned(
  grid: Grid,
  template: Template,
  { filled, demo }: How,
): LaidSheet | { readonly refused: string } {
  const workbook = grid.api.getActiveWorkbook();
  if (!workbook) return NO_WORKBOOK;
  const tables = tablesIn(workbook);
  const plan = makePlan(template, {
    filled,
    sheets: sheetsTaken(workbook),
    tables,
    names: namesTaken(workbook),
  });
  const { sheet } = plan;
  const start = plan.start && address(plan.start);
  const done = [
    inserted(sheet.name, { demo: demo && start !== undefined, start }),
    UNDOABLE,
    ...couldLink(waitingFor(template, SHORT, tables)),
    ...notLookedUp(lackingIn(template, tables)),
  ].join(' ');
  const made = { sheet: snapshotSheet(sheet, ''), beside: decorations(sheet) };
  const outcome = laid(grid, workbook, sheet.name, made, done);
  if ('refused' in outcome) return outcome;
  chooseFirstInput(grid, plan);
  return { id: workbook.getActiveSheet().getSheetId(), plan, outcome };
}

/** Adds a copy of the sheet in view that holds values only. */
export function copyValues(grid: Grid): Outcome {
  const workbook = grid.api.getActiveWorkbook();
  if (!workbook) return NO_WORKBOOK;
  const name = copyName(workbook.getActiveSheet().getSheetName(), sheetsTaken(workbook));
  const tables = tablesIn(workbook).map((table) => table.name);
  const made = valuesSheet(grid, name, [...tables, ...namesTaken(workbook)]);
  if (!made) return NOTHING_TO_COPY;
  const done = `${made.isCard ? copiedCard(name) : copied(name)} ${UNDOABLE}`;
  return laid(grid, workbook, name, made.sheet, done);
}
