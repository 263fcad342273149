import { expect, test } from 'vitest';
import { REFUSALS } from '../../../src/hosts/excel/refusals';
import { backOf, formulasOf, JOB, jobIn, NEW_JOB, namesIn } from './support/newJob';
import { openExcel, sheetOf } from './support/laid';

const JOB_LEFT = 'What there is of the job stays as it is.';

test('a new job comes in as three sheets, each linked to those before it, stays whole while anybody needs one, and goes in one step', async () => {
  const { workbook, outcome, theirs } = await jobIn();
  const all = ['Sheet1', ...JOB];
  expect(outcome).toMatchObject({ done: NEW_JOB });
  expect(namesIn(workbook)).toEqual(all);
  expect(formulasOf(workbook, 'Pops plan')).toContain('INDEX(Models[Most],');
  expect(formulasOf(workbook, 'Set card')).toContain('INDEX(Dial[Set to],');
  // row 44, counted from 0
  const heads = sheetOf(workbook, 'Heads');
  expect(workbook.active).toBe(heads);
  expect(workbook.selection).toMatchObject({ sheet: heads, block: { row: 43, column: 0 } });

  const back = backOf(outcome);
  for (const name of JOB) {
    const { cells } = sheetOf(workbook, name);
    cells.set('Z90', 'a colleague’s');
    // oxlint-disable-next-line no-await-in-loop -- one after the other in one workbook
    expect(await back()).toMatchObject({
      refused: expect.stringMatching(`“${name}” has changed since it came in.*${JOB_LEFT}`) as string,
    });
    expect(namesIn(workbook)).toEqual(all);
    cells.delete('Z90');
  }
  theirs.cells.set('C3', '=SUM(Models[Most])');
  expect(await back()).toMatchObject({
    refused: expect.stringMatching(`C3 on “Sheet1” uses it.*${JOB_LEFT}`) as string,
  });
  expect(namesIn(workbook)).toEqual(all);
  theirs.cells.delete('C3');

  workbook.log.length = 0;
  expect(await back()).toEqual({
    done: 'The sheets of the new job are taken away again. Excel has emptied its undo list.',
  });
  expect(namesIn(workbook)).toEqual(['Sheet1']);
  // of none it may be said that others are left
  expect(await back()).toEqual({
    refused: `“Heads” is not in the workbook any more. Nothing was changed. ${JOB_LEFT}`,
  });
  expect([...theirs.cells]).toEqual([['A1', 'theirs']]);
  expect(workbook.log).toEqual([...JOB].reverse().map((name) => `[${name}].Delete()`));
});

test('a new job beside an earlier one gets names of its own, and looks up in its own sheets', async () => {
  const { workbook, host } = await jobIn();
  expect(await host.newJob()).toMatchObject({
    done: expect.stringContaining(
      'First type your heads over those in “Heads (2)”, from A44 on, then their names over those in “Pops plan (2)”.',
    ) as string,
  });
  const second = JOB.map((name) => `${name} (2)`);
  expect(namesIn(workbook)).toEqual(['Sheet1', ...JOB, ...second]);
  expect(formulasOf(workbook, 'Pops plan (2)')).toContain('INDEX(Models_2[Most],');
  expect(formulasOf(workbook, 'Pops plan (2)')).not.toContain('INDEX(Models[');
  expect(formulasOf(workbook, 'Set card (2)')).toContain('INDEX(Dial_2[Set to],');
  expect(formulasOf(workbook, 'Set card (2)')).not.toContain('INDEX(Dial[');
});

test('a new job that Excel breaks off in its last sheet leaves the workbook as it was, and says why', async () => {
  const { workbook, host } = openExcel();
  const isLast = () => workbook.sheets.length === 4;
  // the request after the one that adds it fills it
  workbook.beforeBatch = (number) => {
    const fills = isLast() && workbook.failures.length === 0;
    if (fills) workbook.failures = [{ batch: number, action: 100, code: 'AccessDenied' }];
  };
  const outcome = await host.newJob();
  const refused = 'refused' in outcome ? outcome.refused : '';
  expect(refused).toContain(REFUSALS['AccessDenied']?.happened);
  expect(refused).toContain('The workbook is as it was.');
  expect(namesIn(workbook)).toEqual(['Sheet1']);
  expect(workbook.tables).toEqual([]);
});
