import { describe, expect, test } from 'vitest';
import type { Mended, MendedCell } from '../../../src/pane/host';
import { openExcel, sheetOf } from './support/laid';

const LOST = '=_xldudf_SWEEP_STOPDIFF(8,11)';
const MENDED = '=SWEEP.STOPDIFF(8,11)';

/** A lost name in a formula, one in words behind an apostrophe, and one in a formula whose cell was made one of texts since. */
function open() {
  const opened = openExcel();
  const sheet = sheetOf(opened.workbook, 'Sheet1');
  sheet.cells.set('A1', LOST).set('A2', LOST).set('A3', LOST);
  sheet.words.add('A2');
  sheet.formats.set('A3', '@');
  return { ...opened, sheet };
}
const cellsOf = (outcome: Mended): readonly MendedCell[] => ('cells' in outcome ? outcome.cells : []);

describe('words that begin as a formula does', () => {
  test('are no formula that has lost a name', async () => {
    const { host } = open();
    expect(cellsOf(await host.findLost()).map(({ cell }) => cell)).toEqual(['A1', 'A3']);
  });
  test('that somebody has made of a formula meanwhile stay words', async () => {
    const { host, sheet } = open();
    sheet.words.clear();
    const found = cellsOf(await host.findLost());
    sheet.words.add('A2');
    expect(await host.mendLost(found)).toMatchObject({
      done: '1 cell mended. Left as they are, because they are text, or set to be: A2 on “Sheet1”, A3 on “Sheet1”.',
    });
    expect([...sheet.cells.values()]).toEqual([MENDED, LOST, LOST]);
    expect([...sheet.words]).toEqual(['A2']);
  });
});

describe('a formula in a cell of texts, which would become words if it were entered again,', () => {
  test('is not mended, and that is said', async () => {
    const { host, sheet } = open();
    const outcome = await host.mendLost(cellsOf(await host.findLost()));
    expect(sheet.formulaAt('A3')).toBe(LOST);
    expect(outcome).toMatchObject({
      done: '1 cell mended. Left as they are, because they are text, or set to be: A3 on “Sheet1”.',
    });
  });
  test('is not entered again, and that is said', async () => {
    const { host, workbook } = openExcel();
    const sheet = sheetOf(workbook, 'Sheet1');
    sheet.cells.set('A1', MENDED).set('A2', MENDED);
    for (const at of ['A1', 'A2']) sheet.pending.set(at, { text: '#NAME?', value: '#NAME?', isStale: false });
    sheet.formats.set('A2', '@');
    expect(await host.recalculate()).toMatchObject({
      done: '1 cell of Sweeptable is entered anew and calculated. Left as they are, because they are text, or set to be: A2 on “Sheet1”.',
    });
    expect(sheet.formulaAt('A2')).toBe(MENDED);
  });
});

test('the workbook in memory tells words from formulas', async () => {
  const { excel, sheet } = open();
  const written = await excel.run(async (context) => {
    const on = context.workbook.worksheets.getItem('Sheet1');
    for (const at of ['A1', 'A2', 'A3']) on.getRange(at).formulas = [[MENDED]];
    on.getRange('A4').values = [["'=1+1"]];
    const range = on.getRange('A1:A4').load('formulas,values');
    await context.sync();
    return [range.formulas.flat(), range.values.flat()] as unknown[];
  });
  expect(written).toEqual([[MENDED, MENDED, MENDED, '=1+1'], [0, 0, MENDED, '=1+1']]); // prettier-ignore
  expect([...sheet.words]).toEqual(['A3', 'A4']);
});
