import type { Outcome } from '../../../../src/pane/host';
import type { FakeWorkbook } from './fake-workbook';
import { openExcel, sheetOf } from './laid';

export const JOB = ['Heads', 'Pops plan', 'Set card'];
export const NEW_JOB =
  '“Heads”, “Pops plan”, “Set card” are inserted with the demo job. First type your heads over those in “Heads”, from A44 on, then their names over those in “Pops plan”.';

export const namesIn = (workbook: FakeWorkbook): string[] => workbook.sheets.map(({ name }) => name);

export const backOf = (outcome: Outcome): (() => Promise<Outcome>) => {
  if ('takeBack' in outcome) return outcome.takeBack;
  throw new Error('nothing to take back');
};

export const formulasOf = (workbook: FakeWorkbook, name: string): string =>
  [...sheetOf(workbook, name).cells.values()].filter((cell) => String(cell).startsWith('=')).join('\n');

/** A workbook with a sheet of somebody's, into which a job has just come. */
export async function jobIn(options: Parameters<typeof openExcel>[0] = {}) {
  const opened = openExcel(options);
  const theirs = sheetOf(opened.workbook, 'Sheet1');
  theirs.cells.set('A1', 'theirs');
  const outcome = await opened.host.newJob();
  return { ...opened, theirs, outcome };
}
