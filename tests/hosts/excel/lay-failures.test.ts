import { describe, expect, test } from 'vitest';
import { FULL, oneOf } from '../../full';
import { REFUSALS } from '../../../src/hosts/excel/refusals';
import type { FakeWorkbook } from './support/fake-workbook';
import { LIGHTS, openExcel, sheetsThroughFiles } from './support/laid';

const CODES = [
  'AccessDenied',
  'RequestAborted',
  'InvalidArgument',
  'GeneralException',
  'ApiNotFound',
] as const;
const SAMPLES = 10;

const names = (workbook: FakeWorkbook): string[] => workbook.sheets.map(({ name }) => name);

/** The first, the last and one from each stretch between: its first for every commit, another in each run in full. */
function sample(count: number): number[] {
  const stretch = (count - 1) / (SAMPLES - 1);
  const within = oneOf(Math.max(1, Math.floor(stretch)));
  const between = Array.from({ length: SAMPLES - 2 }, (_, i) => Math.ceil((i + 1) * stretch) - within);
  return [0, ...between, count - 1];
}

// all are of the same kinds of requests: one with a chart and warnings; the others in full
const cases = sheetsThroughFiles(FULL).filter(({ template }) => FULL || template === LIGHTS);
describe.each(cases)('$template.name through $file, broken off', ({ file, template }) => {
  test('anywhere while its cells are written, leaves the workbook as it was and says why', async () => {
    const whole = openExcel({ file });
    await whole.host.insertSheet(template.id, true);
    const actions = whole.workbook.batches[2]?.Actions.length ?? 0;
    expect(actions).toBeGreaterThan(SAMPLES);

    const { workbook, host } = openExcel({ file });
    for (const [i, action] of sample(actions).entries()) {
      const code = CODES[i % CODES.length] as (typeof CODES)[number];
      workbook.failures = [{ batch: workbook.batches.length + 3, action, code }];
      const outcome = await host.insertSheet(template.id, true);
      const refused = 'refused' in outcome ? outcome.refused : '';
      expect(refused, `action ${action}`).toContain(REFUSALS[code]?.happened ?? code);
      expect(refused).toContain('The workbook is as it was.');
      expect(names(workbook)).toEqual(['Sheet1']);
      expect(workbook.tables).toEqual([]);
    }
    workbook.failures = [];
    expect(await host.insertSheet(template.id, true)).toHaveProperty('done');
  });
});

describe('broken off', () => {
  test('while names are looked up: nothing was sent that writes', async () => {
    const { workbook, host } = openExcel();
    workbook.failures = [{ batch: 1, action: 0, code: 'InvalidOperationInCellEditMode' }];
    expect(await host.insertSheet(LIGHTS.id, true)).toEqual({
      refused:
        'A cell is being typed in, and Excel takes nothing else meanwhile. The workbook is as it was. Press Enter or Esc in that cell, then try again.',
    });
    expect(workbook.batches.length).toBe(1);
    expect(workbook.log).toEqual([]);
  });
  test('where it is only looked over: it is asked for less, and the sheet is not offered back', async () => {
    const { workbook, host } = openExcel();
    workbook.failures = [{ batch: 7, action: 0, code: 'GeneralException' }];
    const outcome = await host.insertSheet(LIGHTS.id, true);
    expect(outcome).toEqual({ done: '“Lights on set” is inserted with the demo job. Start in B5.' });
  });
  test('with the last cell unread: the sheet stays, for it is whole', async () => {
    const { workbook, host } = openExcel();
    workbook.failures = [7, 8].map((batch) => ({ batch, action: 0, code: 'ConnectionFailure' }));
    const outcome = await host.insertSheet(LIGHTS.id, true);
    expect(outcome).toMatchObject({
      refused: expect.stringContaining(
        '“Lights on set” is in the workbook, whole but not looked over.',
      ) as string,
    });
    expect(names(workbook)).toEqual(['Sheet1', 'Lights on set']);
  });
  test.each([
    ['looked for', 4],
    ['deleted', 5],
  ])('and again while the half-made sheet is %s: says that it may be left', async (_what, batch) => {
    const { workbook, host } = openExcel();
    workbook.failures = [
      { batch: 3, action: 200, code: 'RequestAborted' },
      { batch, action: 0, code: 'RequestAborted' },
    ];
    const outcome = await host.insertSheet(LIGHTS.id, true);
    expect(outcome).toEqual({
      refused:
        'The connection to Excel broke off. A half-made sheet “Lights on set” may be left in the workbook: delete it. Check the network, wait until the workbook answers again, then try again.',
    });
  });
});

test('broken off after Excel added the sheet, before it told which it is: says that it may be left', async () => {
  const { workbook, host } = openExcel();
  workbook.failures = [{ batch: 2, action: 3, code: 'RequestAborted' }];
  expect(await host.insertSheet(LIGHTS.id, true)).toMatchObject({
    refused: expect.stringContaining(
      'A half-made sheet “Lights on set” may be left in the workbook',
    ) as string,
  });
  expect(names(workbook)).toEqual(['Sheet1', 'Lights on set']);
});

describe('somebody else in the same workbook', () => {
  test('who adds a sheet of that name at the same moment keeps it', async () => {
    const { workbook, host } = openExcel();
    workbook.beforeBatch = (number) => {
      if (number === 2) workbook.addSheet('Lights on set').cells.set('A1', 'theirs');
    };
    const outcome = await host.insertSheet(LIGHTS.id, true);
    expect(outcome).toMatchObject({ refused: expect.stringContaining('at the same moment') as string });
    expect(names(workbook)).toEqual(['Sheet1', 'Lights on set']);
    expect([...(workbook.find('Lights on set')?.cells ?? [])]).toEqual([['A1', 'theirs']]);
  });
  test('who adds a table of that name at the same moment keeps it; our sheet goes', async () => {
    const { workbook, host } = openExcel();
    workbook.beforeBatch = (number) => {
      if (number === 2) workbook.sheets[0]?.addTable({ row: 0, column: 0, rows: 2, columns: 1 }, 'Lights');
    };
    const outcome = await host.insertSheet(LIGHTS.id, true);
    expect(outcome).toMatchObject({ refused: expect.stringContaining('at the same moment') as string });
    expect(names(workbook)).toEqual(['Sheet1']);
    expect(workbook.tables.map(({ name }) => name)).toEqual(['Lights']);
  });
  test('who gives an old sheet that name while ours is refused keeps it', async () => {
    const { workbook, host } = openExcel();
    const old = workbook.addSheet('Ours since spring');
    workbook.beforeBatch = (number) => {
      if (number !== 2) return;
      Object.assign(old, { name: 'Lights on set' });
      workbook.failures = [{ batch: 2, action: 0, code: 'GeneralException' }];
    };
    const outcome = await host.insertSheet(LIGHTS.id, true);
    expect(outcome).toMatchObject({
      refused: expect.stringContaining('The workbook is as it was.') as string,
    });
    expect(names(workbook)).toEqual(['Sheet1', 'Lights on set']);
  });
});
