import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Outcome } from '../../../src/pane/host';
import { FULL } from '../../full';
import { blockAt } from './support/a1';
import { LIGHTS, openExcel, sheetOf } from './support/laid';
import { hostFiles, type HostFile } from './support/office-host';

const KEPT = 'so the sheet was left as it is. If you do not need it, delete it by its tab.';
const CHANGED = { refused: `“${LIGHTS.name}” has changed since it came in, ${KEPT}` };

/** A workbook with a sheet of somebody's, into which a template has just come. */
async function open(options: { file?: HostFile; excelApi?: string } = {}) {
  const opened = openExcel(options);
  const theirs = sheetOf(opened.workbook, 'Sheet1');
  theirs.cells.set('A1', 'theirs');
  const outcome = await opened.host.insertSheet(LIGHTS.id, true);
  return { ...opened, theirs, sheet: sheetOf(opened.workbook, LIGHTS.name), back: backOf(outcome) };
}
const backOf = (outcome: Outcome): (() => Promise<Outcome>) => {
  if ('takeBack' in outcome) return outcome.takeBack;
  throw new Error('nothing to take back');
};
type Opened = Awaited<ReturnType<typeof open>>;
const names = ({ workbook }: Opened) => workbook.sheets.map(({ name }) => name);

afterEach(() => void vi.unstubAllGlobals());

describe.each(hostFiles(FULL))('a sheet that came in, through %s,', (file) => {
  test('is taken away again, and nothing else is touched', async () => {
    const on = await open({ file });
    on.workbook.log.length = 0;
    expect(await on.back()).toEqual({
      done: `“${LIGHTS.name}” is taken away again. Excel has emptied its undo list.`,
    });
    expect(names(on)).toEqual(['Sheet1']);
    expect([...on.theirs.cells]).toEqual([['A1', 'theirs']]);
    expect(on.workbook.log).toEqual([`[${LIGHTS.name}].Delete()`]);
  });

  const changes: readonly (readonly [string, (on: Opened) => unknown])[] = [
    ['typed over', ({ sheet }) => sheet.cells.set('B5', 16)],
    ['emptied', ({ sheet }) => sheet.cells.delete('B5')],
    ['written beside', ({ sheet }) => sheet.cells.set('Z90', 'note')],
    ['formatted', ({ sheet }) => sheet.formats.set('B5', '0.00')],
    ['coloured', ({ sheet }) => sheet.dress(blockAt('B5'), 'Format.Fill.Color', '#ff0000')],
    ['renamed', ({ sheet }) => Object.assign(sheet, { name: 'Set 1' }) && Object.assign(sheet.item.properties, { Name: 'Set 1' })],
    ['given a table', ({ sheet }) => sheet.addTable(blockAt('Y1:Z2'), 'Theirs')],
    ['given a chart', ({ sheet }) => sheet.charts.push(sheet.charts[0] as (typeof sheet.charts)[0])],
  ]; // prettier-ignore
  test.each(changes)('and was %s stays, and it says so', async (_what, change) => {
    const on = await open({ file });
    change(on);
    const held = new Map(on.sheet.cells);
    expect(await on.back()).toEqual(CHANGED);
    expect(on.workbook.sheets).toContain(on.sheet);
    expect(on.sheet.cells).toEqual(held);
  });
});

describe('a sheet that came in', () => {
  test('and shows other answers since is the same sheet', async () => {
    const on = await open();
    on.workbook.onFormula = () => 99;
    expect(await on.back()).toHaveProperty('done');
  });

  test('and was deleted by hand is gone already', async () => {
    const on = await open();
    on.workbook.sheets.splice(1, 1);
    expect(await on.back()).toEqual({
      refused: `“${LIGHTS.name}” is not in the workbook any more. Nothing was changed.`,
    });
    expect(names(on)).toEqual(['Sheet1']);
  });

  test.each([`='${LIGHTS.name}'!B5*2`, '=SUM(Lights[Light])', `=SUM('${LIGHTS.name}'!A:A)`])(
    'and is used by %s on another sheet stays',
    async (formula) => {
      const on = await open();
      on.theirs.cells.set('C3', formula);
      expect(await on.back()).toEqual({ refused: `The formula in C3 on “Sheet1” uses it, ${KEPT}` });
      expect(names(on)).toEqual(['Sheet1', LIGHTS.name]);
    },
  );
  test('and has a name for its cells stays', async () => {
    const on = await open();
    on.workbook.names.push('Target');
    on.workbook.namedCells.set('Target', { sheet: on.sheet, block: blockAt('B6') });
    expect(await on.back()).toEqual({ refused: `The name “Target” speaks of it, ${KEPT}` });
  });
  test('and has a name for its cells on another sheet stays', async () => {
    const on = await open();
    on.theirs.names.set('Target', `='${LIGHTS.name}'!$B$6`);
    expect(await on.back()).toEqual({ refused: `The name “Target” speaks of it, ${KEPT}` });
    expect(names(on)).toEqual(['Sheet1', LIGHTS.name]);
  });
  test('and changes while the workbook is looked through stays: it is looked at last of all', async () => {
    const on = await open();
    const { length } = on.workbook.batches;
    await on.back();
    const count = on.workbook.batches.length - length;
    expect(count).toBeGreaterThan(3);
    // Whoever is at work before any request but the last, which only deletes.
    for (let nth = 1; nth < count; nth++) {
      // oxlint-disable-next-line no-await-in-loop -- one workbook after the other
      const again = await open();
      const first = again.workbook.batches.length;
      again.workbook.beforeBatch = (number) => {
        if (number === first + nth) again.sheet.cells.set('Z90', 'a colleague’s');
      };
      // oxlint-disable-next-line no-await-in-loop -- one workbook after the other
      expect(await again.back(), `request ${nth} of ${count}`).toEqual(CHANGED);
      expect(names(again)).toEqual(['Sheet1', LIGHTS.name]);
    }
  });
  test('and got another name within it stays', async () => {
    const on = await open();
    on.sheet.names.set('mine', 'B5');
    expect(await on.back()).toEqual(CHANGED);
  });
  test('and was replaced by another of that name is gone already', async () => {
    const on = await open();
    on.workbook.sheets.splice(1, 1);
    on.workbook.addSheet(LIGHTS.name).cells.set('A1', 'theirs');
    expect(await on.back()).toMatchObject({
      refused: expect.stringContaining('not in the workbook') as string,
    });
    expect(names(on)).toEqual(['Sheet1', LIGHTS.name]);
  });
  test('and has a comment stays, where Excel can count comments', async () => {
    vi.stubGlobal('Office', { context: { requirements: { isSetSupported: () => true } } });
    const on = await open({ excelApi: '1.10' });
    on.sheet.comments = 1;
    expect(await on.back()).toEqual(CHANGED);
  });
  test('goes where others only look like it', async () => {
    const on = await open();
    on.theirs.cells
      .set('C1', '=SUM(Sheet1!A1)')
      .set('C2', `="'${LIGHTS.name}'!B5"`)
      .set('C3', `${LIGHTS.name}!B5`);
    expect(await on.back()).toHaveProperty('done');
  });

  test('stays where Excel refuses, and it says why', async () => {
    const on = await open();
    on.workbook.failures = [{ batch: on.workbook.batches.length + 1, action: 0, code: 'AccessDenied' }];
    expect(await on.back()).toMatchObject({
      refused: expect.stringMatching(/protected.*“Lights on set” was left in the workbook\./) as string,
    });
    expect(names(on)).toEqual(['Sheet1', LIGHTS.name]);
  });
});

test('a copy of values is taken back as well, and the sheet it was made of stays', async () => {
  const on = await open();
  const back = backOf(await on.host.copyValues());
  expect(names(on)).toEqual(['Sheet1', LIGHTS.name, `${LIGHTS.name} values`]);
  expect(await back()).toHaveProperty('done');
  expect(names(on)).toEqual(['Sheet1', LIGHTS.name]);
});

test.each([
  "='Ann''s set values'!A1",
  "=SUM('ann''s set values'!A:B)",
  "=SUM('Sheet1:Ann''s set values'!A1)",
])('a copy whose name has an apostrophe stays where %s uses it', async (formula) => {
  const on = await open();
  const theirs = on.workbook.addSheet("Ann's set");
  theirs.cells.set('A1', 1);
  on.workbook.active = theirs;
  const back = backOf(await on.host.copyValues());
  on.theirs.cells.set('C3', formula);
  expect(await back()).toMatchObject({
    refused: expect.stringContaining('C3 on “Sheet1” uses it') as string,
  });
  expect(names(on)).toContain("Ann's set values");
});

test('a sheet too large to be looked over again is not offered to be taken back', async () => {
  const { host, workbook } = openExcel();
  sheetOf(workbook, 'Sheet1').cells.set('A1', 1).set('Z1000', 2);
  const outcome = await host.copyValues();
  expect(outcome).toHaveProperty('done');
  expect(outcome).not.toHaveProperty('takeBack');
});
