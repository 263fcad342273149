import { describe, expect, test } from 'vitest';
import type { MendedCell } from '../../../src/pane/host';
import { blockAt } from './support/a1';
import { LIGHTS, openExcel, sheetOf } from './support/laid';

/** What somebody does while formulas are written of which Excel refuses one. */
const LOST = '=_xldudf_SWEEP_STOPDIFF(8,11)';
const MENDED = '=SWEEP.STOPDIFF(8,11)';
const found = (...cells: string[]): MendedCell[] =>
  cells.map((cell) => ({ sheet: 'Sheet1', cell, before: LOST, after: MENDED }));

function open() {
  const opened = openExcel();
  const sheet = sheetOf(opened.workbook, 'Sheet1');
  for (const at of ['A1', 'A2', 'A3', 'A4']) sheet.cells.set(at, LOST);
  // Excel refuses the second.
  sheet.arrays.push(blockAt('A2:B2'));
  return { ...opened, sheet };
}

describe('a repair of which Excel refuses a cell', () => {
  test('leaves what somebody writes before the others are tried again', async () => {
    const whole = open();
    await whole.host.mendLost(found('A1', 'A2', 'A3', 'A4'));
    const { length } = whole.workbook.batches;
    // The cells are looked at with the second request and written with the third.
    for (let nth = 4; nth <= length; nth++) {
      const { host, workbook, sheet } = open();
      let isTheirs = false;
      workbook.beforeBatch = (number) => {
        const isWriting = workbook.batches.at(-1)?.Actions.some(({ Name }) => Name === 'Formulas');
        if (isTheirs || number < nth || isWriting || sheet.cells.get('A4') !== LOST) return;
        isTheirs = true;
        sheet.cells.set('A4', 'theirs');
      };
      // oxlint-disable-next-line no-await-in-loop -- one workbook after the other
      const outcome = await host.mendLost(found('A1', 'A2', 'A3', 'A4'));
      if (isTheirs) expect(sheet.cells.get('A4'), `before request ${nth}`).toBe('theirs');
      if (nth === 4) {
        expect(isTheirs).toBe(true);
        expect(outcome).toMatchObject({
          done: '2 cells mended. Left as they are, because they changed meanwhile: A4 on “Sheet1”. Left as they are, because Excel refused: A2 on “Sheet1”.',
        });
      }
    }
  });
});

test('a cell that somebody has changed when Excel refused it counts as changed', async () => {
  const { host, workbook, sheet } = open();
  workbook.beforeBatch = (number) => {
    if (number === 4) sheet.cells.set('A2', 'theirs');
  };
  expect(await host.mendLost(found('A2'))).toMatchObject({
    done: '0 cells mended. Left as they are, because they changed meanwhile: A2 on “Sheet1”.',
  });
  expect(sheet.cells.get('A2')).toBe('theirs');
});

test('entering again goes on where Excel refuses a cell', async () => {
  const { host, workbook, sheet } = open();
  for (const at of ['A1', 'A2', 'A3', 'A4']) {
    sheet.cells.set(at, MENDED);
    sheet.pending.set(at, { text: '#NAME?', value: '#NAME?', isStale: false });
  }
  expect(await host.recalculate()).toEqual({
    done: '3 cells of Sweeptable are entered anew and calculated. Left as they are, because Excel refused: A2 on “Sheet1”.',
  });
  expect([...sheet.pending.keys()]).toEqual(['A2']);
  expect(workbook.log.filter((line) => line.includes('Calculate'))).toEqual([]);
});

test('a repair that breaks off takes nothing back that somebody had mended by hand', async () => {
  const whole = openExcel();
  const lay = ({ workbook }: typeof whole) => {
    const sheet = sheetOf(workbook, 'Sheet1');
    sheet.cells.set('A1', MENDED).set('A2', LOST);
    return sheet;
  };
  lay(whole);
  await whole.host.mendLost(found('A1', 'A2'));
  const requests = whole.workbook.batches.map(({ Actions }) => Actions.length);
  for (const [i, actions] of requests.entries())
    for (const action of [0, actions - 1]) {
      const on = openExcel();
      const sheet = lay(on);
      on.workbook.failures = [{ batch: i + 1, action, code: 'RequestAborted' }];
      // oxlint-disable-next-line no-await-in-loop -- one workbook after the other
      expect(await on.host.mendLost(found('A1', 'A2'))).toHaveProperty('refused');
      expect([...sheet.cells.values()], `request ${i}, action ${action}`).toEqual([MENDED, LOST]);
    }
});

describe('a half-made sheet on which somebody has written', () => {
  const KEPT = 'is left in the workbook, as somebody has written on it: look at it before you delete it.';
  const writeOn = ({ workbook }: ReturnType<typeof openExcel>, name: string, at: string): void => {
    const { length } = workbook.batches;
    workbook.beforeBatch = (number) => {
      if (number > length + 3) workbook.find(name)?.cells.set(at, 'theirs');
    };
  };
  test.each(['Z90', 'B5'])('in %s stays, and that is said', async (at) => {
    const on = openExcel();
    on.workbook.failures = [{ batch: 3, action: 200, code: 'RequestAborted' }];
    writeOn(on, LIGHTS.name, at);
    expect(await on.host.insertSheet(LIGHTS.id, true)).toMatchObject({
      refused: expect.stringContaining(`A half-made sheet “${LIGHTS.name}” ${KEPT}`) as string,
    });
    expect(on.workbook.find(LIGHTS.name)?.cells.get(at)).toBe('theirs');
  });
  test('stays where it is a copy of values, and that is said', async () => {
    const on = openExcel();
    sheetOf(on.workbook, 'Sheet1').cells.set('A1', 1);
    on.workbook.failures = [{ batch: 4, action: 2, code: 'RequestAborted' }];
    writeOn(on, 'Sheet1 (2)', 'C9');
    expect(await on.host.copyValues()).toMatchObject({
      refused: expect.stringContaining(`A half-made copy of “Sheet1” ${KEPT}`) as string,
    });
    expect(on.workbook.find('Sheet1 (2)')?.cells.get('C9')).toBe('theirs');
  });
  test('goes where somebody has deleted it and given its name to a sheet of theirs: theirs stays', async () => {
    const on = openExcel();
    on.workbook.failures = [{ batch: 3, action: 200, code: 'RequestAborted' }];
    on.workbook.beforeBatch = (number) => {
      if (number !== 4) return;
      on.workbook.sheets.pop();
      on.workbook.addSheet(LIGHTS.name).cells.set('A1', 'theirs');
    };
    expect(await on.host.insertSheet(LIGHTS.id, true)).toMatchObject({
      refused: expect.stringContaining('The workbook is as it was.') as string,
    });
    expect(on.workbook.find(LIGHTS.name)?.cells.get('A1')).toBe('theirs');
  });
});
