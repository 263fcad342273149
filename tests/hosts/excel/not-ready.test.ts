import { describe, expect, test } from 'vitest';
import { LIGHTS, openExcel, sheetOf } from './support/laid';

const FORMULA = '=SWEEP.STOPDIFF(8,11)';

describe('a copy of values', () => {
  test.each(['#BUSY!', '#GETTING_DATA', '#NAME?', '#CALC!'] as const)(
    'is refused while a cell shows %s, with the first of them named',
    async (shows) => {
      const { host, workbook } = openExcel();
      await host.insertSheet(LIGHTS.id, true);
      const sheet = sheetOf(workbook, LIGHTS.name);
      sheet.cells.set('Z7', FORMULA);
      workbook.onFormula = (formula) => (formula === FORMULA ? shows : 12.5);
      expect(await host.copyValues()).toEqual({
        refused: `Z7 shows ${shows}, so the values are not all there yet. Nothing was copied. Wait until Excel has calculated, or press Recalculate, then try again.`,
      });
      expect(workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1', LIGHTS.name]);
    },
  );
  test('may be behind where a person calculates by hand, and that is said', async () => {
    const { host, workbook } = openExcel();
    const sheet = sheetOf(workbook, 'Sheet1');
    workbook.onFormula = () => 12.5;
    sheet.cells.set('A1', FORMULA);
    sheet.pending.set('A1', { text: '0', value: 0, isStale: true });
    const SAID =
      'Excel calculates this workbook by hand: what was typed since it last did so is not in these values.';
    expect(await host.copyValues()).toMatchObject({ done: expect.not.stringContaining('by hand') as string });
    workbook.active = sheet;
    workbook.ways.calculation = 'Manual';
    expect(await host.copyValues()).toMatchObject({
      done: expect.stringContaining(
        `${SAID} If you typed, take the copy back, press F9, and copy again.`,
      ) as string,
    });
    // What the person's own sheet shows is theirs to decide.
    expect(sheet.pending.size).toBe(1);
  });
  test('holds errors that are answers', async () => {
    const { host, workbook } = openExcel();
    await host.insertSheet(LIGHTS.id, true);
    workbook.onFormula = () => '#N/A';
    expect(await host.copyValues()).toHaveProperty('done');
  });
  test('in which a value is lost on the way is taken away again', async () => {
    const { host, workbook } = openExcel();
    await host.insertSheet(LIGHTS.id, true);
    let looks = 0;
    // Ready when it is looked at, and busy again when Excel pastes.
    workbook.beforeBatch = () => {
      if (++looks === 3) workbook.ways.unready = { shows: '#BUSY!', looks: 99 };
    };
    expect(await host.copyValues()).toHaveProperty('refused');
    expect(workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1', LIGHTS.name]);
  });
});

describe('calculating anew', () => {
  test.each([
    ['#NAME?', '#NAME?'],
    ['#NAME?', '#CALC!'],
    // A column that is too narrow shows neither.
    ['####', '#CALC!'],
    // What is told of the value beside the word is not documented.
    ['#NAME?', 0],
  ] as const)('enters what shows %s once more, told as %s', async (text, value) => {
    const { host, workbook } = openExcel();
    const sheet = sheetOf(workbook, 'Sheet1');
    sheet.cells.set('A1', FORMULA).set('A2', '=NOSUCH(1)').set('A3', 'words').set('A4', FORMULA);
    for (const at of ['A1', 'A2']) sheet.pending.set(at, { text, value, isStale: false });
    workbook.onFormula = () => 1;
    expect(await host.recalculate()).toEqual({
      done: '1 cell of Sweeptable is entered anew and calculated.',
    });
    expect([...sheet.pending.keys()]).toEqual(['A2']);
    expect(workbook.log).toEqual(['[Sheet1]!A1:A1.Formulas = \n  1: ["=SWEEP.STOPDIFF(8,11)"]']);
  });
  test('rebuilds everything only where entering does not help', async () => {
    const { host, workbook } = openExcel();
    const sheet = sheetOf(workbook, 'Sheet1');
    sheet.cells.set('A1', FORMULA);
    workbook.onFormula = () => '#NAME?';
    expect(await host.recalculate()).toMatchObject({
      done: expect.stringContaining('A1 on “Sheet1” still shows #NAME?') as string,
    });
    expect(workbook.log.at(-1)).toBe('Application.Calculate("FullRebuild")');
  });
  test('calculates what is there where no cell is lost', async () => {
    const { host, workbook } = openExcel();
    workbook.onFormula = () => 1;
    sheetOf(workbook, 'Sheet1').cells.set('A1', FORMULA);
    await host.recalculate();
    expect(workbook.log).toEqual(['Application.Calculate("Full")']);
  });
});
