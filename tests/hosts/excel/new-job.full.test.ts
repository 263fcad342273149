import { describe, expect, test } from 'vitest';
import { REFUSALS } from '../../../src/hosts/excel/refusals';
import { oneOf } from '../../full';
import { backOf, JOB, jobIn, NEW_JOB, namesIn } from './support/newJob';
import { openExcel, sheetOf } from './support/laid';
import { HOST_FILES } from './support/office-host';

test.each(HOST_FILES)('a new job comes in and goes in one step through %s', async (file) => {
  const { workbook, outcome } = await jobIn({ file });
  expect(outcome).toMatchObject({ done: NEW_JOB });
  expect(namesIn(workbook)).toEqual(['Sheet1', ...JOB]);
  expect(await backOf(outcome)()).toHaveProperty('done');
  expect(namesIn(workbook)).toEqual(['Sheet1']);
});

describe('a new job', () => {
  test('stays whole where one of its sheets was deleted by hand', async () => {
    const { workbook, outcome } = await jobIn();
    workbook.sheets.splice(3, 1);
    expect(await backOf(outcome)()).toMatchObject({
      refused: expect.stringContaining('“Set card” is not in the workbook any more.') as string,
    });
    expect(namesIn(workbook)).toEqual(['Sheet1', 'Heads', 'Pops plan']);
  });

  test('broken off while it is taken back says what may be left', async () => {
    const { workbook, outcome } = await jobIn();
    // the last request deletes: one sheet is gone when Excel refuses the next
    workbook.beforeBatch = (number) => {
      const deletes = workbook.batches
        .at(-1)
        ?.Actions.flatMap(({ Name }, i) => (Name === 'Delete' ? [i] : []));
      const [, action] = deletes ?? [];
      if (action !== undefined) workbook.failures = [{ batch: number, action, code: 'AccessDenied' }];
    };
    const back = await backOf(outcome)();
    expect(namesIn(workbook)).toEqual(['Sheet1', 'Heads', 'Pops plan']);
    expect(back).toMatchObject({
      refused: expect.stringContaining(
        '“Heads”, “Pops plan”, “Set card” may be left in the workbook: look, and delete what you do not need.',
      ) as string,
    });
  });

  test('leaves a sheet of somebody’s that is called like one of its own', async () => {
    const { workbook, host } = openExcel();
    const theirs = workbook.addSheet('Heads');
    theirs.cells.set('A1', 'theirs');
    await host.newJob();
    expect(namesIn(workbook)).toEqual(['Sheet1', 'Heads', 'Heads (2)', 'Pops plan', 'Set card']);
    expect([...theirs.cells]).toEqual([['A1', 'theirs']]);
    expect(workbook.active?.name).toBe('Heads (2)');
  });

  test('says once what holds for all of its sheets, and of which', async () => {
    const { workbook, host } = openExcel();
    workbook.ways.throwsAt.add('freeze');
    workbook.ways.unregistered = '#NAME?';
    const outcome = await host.newJob();
    const said = 'done' in outcome ? outcome.done : '';
    expect(said.match(/Excel does not know the functions yet/g)).toHaveLength(1);
    expect(said).toContain('“Heads”, “Pops plan”, “Set card”: Excel could not keep its headings in view.');
  });
});

const CODES = ['AccessDenied', 'RequestAborted', 'GeneralException'] as const;

describe('a new job that Excel breaks off', () => {
  /** What Excel is asked, request by request, until the job is in. */
  const requests = async () => {
    const whole = openExcel();
    await whole.host.newJob();
    return whole.workbook.batches.map(({ Actions }) => Actions.length);
  };

  test('after its first sheet in any request leaves the workbook as it was and says why, or is whole', async () => {
    const all = await requests();
    const alone = openExcel();
    await alone.host.insertSheet('heads', true);
    const { length } = alone.workbook.batches;
    let refusedTimes = 0;
    for (const [j, actions] of all.slice(length).entries()) {
      const i = length + j;
      const { workbook, host } = openExcel();
      sheetOf(workbook, 'Sheet1').cells.set('A1', 'theirs');
      const code = CODES[i % CODES.length] as (typeof CODES)[number];
      workbook.failures = [{ batch: i + 1, action: oneOf(actions), code }];
      // oxlint-disable-next-line no-await-in-loop -- one workbook after the other
      const outcome = await host.newJob();
      if ('refused' in outcome) {
        refusedTimes++;
        expect(outcome.refused, `request ${i + 1}`).toContain(REFUSALS[code]?.happened ?? code);
        // one that Excel has added, and breaks off before it tells which it is, nobody takes away
        const halfMade = JOB.filter((name) =>
          outcome.refused.includes(`A half-made sheet “${name}” may be left`),
        );
        if (halfMade.length === 0) expect(outcome.refused).toContain('The workbook is as it was.');
        expect(namesIn(workbook)).toEqual(['Sheet1', ...halfMade]);
        expect(workbook.tables).toEqual([]);
      } else {
        expect(namesIn(workbook), `request ${i + 1}`).toEqual(['Sheet1', ...JOB]);
      }
      expect(sheetOf(workbook, 'Sheet1').cells.get('A1')).toBe('theirs');
    }
    // each sheet: what is there, the sheet, its cells
    expect(refusedTimes).toBe(6);
  });

  test('and that cannot be taken away says what is left', async () => {
    const all = await requests();
    const { workbook, host } = openExcel();
    // the request that fills the second sheet, and all that would clear up
    const second = all.indexOf(Math.max(...all)) + 1;
    workbook.failures = Array.from({ length: 9 }, (_, i) => ({
      batch: second + i,
      action: 0,
      code: 'RequestAborted',
    }));
    const outcome = await host.newJob();
    expect(outcome).toMatchObject({
      refused: expect.stringContaining('“Heads” may be left in the workbook') as string,
    });
    expect(outcome).toMatchObject({
      refused: expect.stringContaining('A half-made sheet “Pops plan” may be left') as string,
    });
    expect(namesIn(workbook)).toEqual(['Sheet1', 'Heads', 'Pops plan']);
  });

  test('while its first sheet is shown is whole, and says where to go', async () => {
    const all = await requests();
    const { workbook, host } = openExcel();
    workbook.failures = [{ batch: all.length, action: 0, code: 'AccessDenied' }];
    expect(await host.newJob()).toMatchObject({ done: `${NEW_JOB} Go to “Heads” by its tab.` });
  });
});
