import type { FWorkbook } from '@univerjs/sheets/facade';
import { address } from '../../../formula/address';
import type { Outcome } from '../../../pane/host';
import type { KnownTable } from '../../../book/kinds/kind';
import { makePlan } from '../../../sheets/makePlan';
import { type SheetPlan, tablesOf } from '../../../sheets/plan';
import { lackingIn, waitingFor } from '../../../sheets/links/waiting';
import { ESTIMATE, hasPrices, nextEstimate } from '../../../sheets/nextEstimate';
import { SHORT } from '../../../sheets/offeredTemplates';
import type { NamedSheet, SheetRead } from '../../../sheets/sheetRead';
import type { Template } from '../../../sheets/template';
import { jobToLay, templateToLay } from '../../../sheets/templateToLay';
import {
  copied,
  copiedCard,
  couldLink,
  estimateFrom,
  inserted,
  JOB_BACK,
  JOB_STAYS,
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
import { revealStart } from '../grid/reveal';
import { type LaidInGrid, lay, type NewSheet } from './lay';
import { layRefusal } from './layRefusal';
import { chooseFirstInput } from '../state/session';
import { snapshotSheet } from '../book/snapshotSheet';
import { toBook } from '../book/toBook';
import { asLeft, type LeftInGrid, takeSheetBack, takeSheetsBack } from './takeSheetBack';
import { valuesSheet } from './valuesSheet';
import { undoKey } from '../grid/undoKey';

const sheetsTaken = (workbook: FWorkbook): string[] =>
  workbook.getSheets().map((sheet) => sheet.getSheetName());

const tablesIn = (workbook: FWorkbook): KnownTable[] =>
  workbook
    .getTableList()
    .map(({ name, columns }) => ({ name, columns: columns.map(({ displayName }) => displayName) }));

const NO_WORKBOOK = { refused: 'No workbook is open. Reload the page and try again.' } as const;
const undoable = (): string => `${undoKey()} takes it away again.`;

/** In this grid a table may not be called like a sheet either. */
const namesTaken = (workbook: FWorkbook): string[] => [
  ...workbook.getDefinedNames().map((name) => name.getName()),
  ...sheetsTaken(workbook),
];

/** Lays a sheet and shows it; or says why not. */
function laid(
  grid: Grid,
  workbook: FWorkbook,
  name: string,
  made: NewSheet,
): LeftInGrid | { readonly refused: string } {
  let fresh: LaidInGrid;
  try {
    fresh = lay(grid, made);
  } catch (reason) {
    return { refused: layRefusal(reason, name, sheetsTaken(workbook)) };
  }
  const left = asLeft(grid, fresh, name);
  workbook.setActiveSheet(fresh.id);
  return left;
}

const done = (grid: Grid, left: LeftInGrid, said: string): Outcome => ({
  done: said,
  takeBack: takeSheetBack(grid, left),
});

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
  const templates = await jobToLay();
  if ('refused' in templates) return templates;
  return asOneStep(grid, () => Promise.resolve(layJob(grid, templates)));
}

function layJob(grid: Grid, templates: readonly Template[]): Outcome {
  const job: LaidSheet[] = [];
  const back = (): Outcome =>
    takeSheetsBack(
      grid,
      job.map(({ left }) => left),
      `${JOB_BACK} ${undoKey()} brings them back.`,
    );
  for (const template of templates) {
    const together = job.flatMap(({ plan }) => tablesOf(plan));
    const next = layPlanned(grid, template, { filled: true, demo: true, together });
    if ('refused' in next) {
      back();
      return next;
    }
    job.push(next);
  }
  const [first, ...others] = job;
  if (!first) return NO_WORKBOOK;
  const { left, plan } = first;
  grid.api.getActiveWorkbook()?.setActiveSheet(left.id);
  begin(grid, plan);
  const at = plan.start ? address(plan.start) : 'A1';
  return {
    done: `${jobInserted(
      left.name,
      at,
      others.map((other) => other.left.name),
    )} ${undoKey()} takes all away again.`,
    takeBack: () =>
      asOneStep(grid, () => {
        const taken = back();
        return Promise.resolve('refused' in taken ? { refused: `${taken.refused} ${JOB_STAYS}` } : taken);
      }),
  };
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
  /** Tables of sheets that came in the same step. */
  readonly together?: readonly KnownTable[];
}

const layTemplate = (grid: Grid, template: Template, how: How): Outcome => {
  const next = layPlanned(grid, template, how);
  if ('refused' in next) return next;
  begin(grid, next.plan);
  return done(grid, next.left, next.said);
};

/** Chooses the first cell to type in, and has it in sight. */
function begin(grid: Grid, plan: SheetPlan): void {
  chooseFirstInput(grid, plan);
  // the sheet in view is another one as of the next frame
  requestAnimationFrame(() => requestAnimationFrame(() => revealStart(grid)));
}

/** A sheet that was laid, as it was planned, and what is said of it. */
interface LaidSheet {
  readonly plan: SheetPlan;
  readonly left: LeftInGrid;
  readonly said: string;
}

function layPlanned(
  grid: Grid,
  template: Template,
  { filled, demo, together = [] }: How,
): LaidSheet | { readonly refused: string } {
  const workbook = grid.api.getActiveWorkbook();
  if (!workbook) return NO_WORKBOOK;
  const tables = tablesIn(workbook);
  const plan = makePlan(template, {
    filled,
    sheets: sheetsTaken(workbook),
    tables,
    together,
    names: namesTaken(workbook),
  });
  const { sheet } = plan;
  const start = plan.start && address(plan.start);
  const said = [
    inserted(sheet.name, { demo: demo && start !== undefined, start }),
    undoable(),
    ...couldLink(waitingFor(template, SHORT, tables)),
    ...notLookedUp(lackingIn(template, tables)),
  ].join(' ');
  const made = { sheet: snapshotSheet(sheet, ''), beside: decorations(sheet) };
  const left = laid(grid, workbook, sheet.name, made);
  if ('refused' in left) return left;
  chooseFirstInput(grid, plan);
  return { plan, left, said };
}

/** Adds a copy of the sheet in view that holds values only. */
export function copyValues(grid: Grid): Outcome {
  const workbook = grid.api.getActiveWorkbook();
  if (!workbook) return NO_WORKBOOK;
  const name = copyName(workbook.getActiveSheet().getSheetName(), sheetsTaken(workbook));
  const tables = tablesIn(workbook).map((table) => table.name);
  const made = valuesSheet(grid, name, [...tables, ...namesTaken(workbook)]);
  if (!made) return NOTHING_TO_COPY;
  const left = laid(grid, workbook, name, made.sheet);
  if ('refused' in left) return left;
  return done(grid, left, `${made.isCard ? copiedCard(name) : copied(name)} ${undoable()}`);
}
