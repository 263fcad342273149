import type { Outcome } from '../../pane/host';
import { goTo, JOB_BACK, JOB_STAYS, jobInserted, leftOfJob, UNTOUCHED } from '../../pane/sentences';
import type { Template } from '../../sheets/template';
import { differenceText } from './laidText';
import { type LaidInExcel, lay, LayFailure, NOT_KNOWN_YET, WHEN_READY } from './lay';
import type { SheetMark } from './sheetMark';
import { takeSheetsBack } from './takeSheetBack';
import { told } from './told';

/** What it takes to take all of them back; nothing where it is not known of one of them. */
function marksOf(laid: readonly LaidInExcel[]): readonly SheetMark[] | undefined {
  const marks = laid.flatMap(({ mark }) => mark ?? []);
  return marks.length === laid.length ? marks : undefined;
}

const namesOf = (laid: readonly LaidInExcel[]): string[] => laid.map(({ sheet }) => sheet);

/** Takes away what was laid before a sheet that could not be, and says what the workbook is like then. */
async function keptWithoutRest(
  excel: typeof Excel,
  laid: readonly LaidInExcel[],
  kept: string,
): Promise<string> {
  const marks = marksOf(laid);
  const isBack = marks
    ? await takeSheetsBack(excel, marks, JOB_BACK).then(
        (outcome) => 'done' in outcome,
        () => false,
      )
    : false;
  if (isBack) return kept;
  return [...(kept === UNTOUCHED ? [] : [kept]), leftOfJob(namesOf(laid))].join(' ');
}

/** Lays the sheets, each of which looks up in those before it: all of them or none. */
async function layAll(excel: typeof Excel, templates: readonly Template[]): Promise<LaidInExcel[]> {
  const laid: LaidInExcel[] = [];
  for (const template of templates) {
    try {
      // oxlint-disable-next-line no-await-in-loop -- one looks up in the other
      laid.push(await lay(excel, template, true, laid.flatMap(({ tables }) => tables))); // prettier-ignore
    } catch (error) {
      const [kept, cause] = error instanceof LayFailure ? [error.kept, error.cause] : [UNTOUCHED, error];
      // oxlint-disable-next-line no-await-in-loop -- the last thing that is done
      throw new LayFailure(laid.length > 0 ? await keptWithoutRest(excel, laid, kept) : kept, cause);
    }
  }
  return laid;
}

/** Shows the sheet to begin with, and the cell; says where to go where Excel does not. */
const show = (excel: typeof Excel, { sheet: name, start = 'A1' }: LaidInExcel): Promise<string[]> =>
  excel
    .run(WHEN_READY, async (context) => {
      const sheet = context.workbook.worksheets.getItem(name);
      sheet.activate();
      sheet.getRange(start).select();
      await context.sync();
      return [];
    })
    .catch(() => [goTo(name)]);

/** What is to be said of the sheets, each thing once, with the sheets that it is said of. */
function remarks(laid: readonly LaidInExcel[]): string[] {
  const of = new Map<string, string[]>();
  for (const { sheet, said, differences } of laid)
    for (const sentence of [...said, ...differenceText(differences)])
      of.set(sentence, [...(of.get(sentence) ?? []), `“${sheet}”`]);
  return [...of].map(([sentence, sheets]) => `${sheets.join(', ')}: ${sentence}`);
}

async function takeJobBack(excel: typeof Excel, marks: readonly SheetMark[]): Promise<Outcome> {
  const back = await takeSheetsBack(excel, marks, JOB_BACK);
  return 'refused' in back ? { refused: `${back.refused} ${JOB_STAYS}` } : back;
}

/** Lays the sheets of a job in one step that can be taken back, and shows the first. A failure half-way takes all of them away again. */
export async function newJob(excel: typeof Excel, templates: readonly Template[]): Promise<Outcome> {
  const laid = await layAll(excel, templates);
  const [first, ...others] = laid;
  if (!first) throw new Error('A job without sheets.');
  const done = [
    jobInserted(first.sheet, first.start ?? 'A1', namesOf(others)),
    ...(laid.some(({ unknownFunctions }) => unknownFunctions) ? [NOT_KNOWN_YET] : []),
    ...remarks(laid),
    ...(await show(excel, first)),
  ].join(' ');
  const marks = marksOf(laid);
  return marks
    ? { done, takeBack: () => told(takeJobBack(excel, marks), leftOfJob(namesOf(laid))) }
    : { done };
}
