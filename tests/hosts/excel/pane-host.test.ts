import { describe, expect, test } from 'vitest';
import { openExcel, sheetOf } from './support/laid';
import { HOST_FILES } from './support/office-host';

const FORMULA = '=SWEEP.STOPDIFF(8,11)';

describe.each(HOST_FILES)('putting a formula into a cell, through %s', (file) => {
  const open = (address: string) => {
    const opened = openExcel({ file });
    opened.workbook.select('Sheet1', address);
    return { ...opened, sheet: sheetOf(opened.workbook, 'Sheet1') };
  };

  test('that is empty', async () => {
    const { host, sheet } = open('B7');
    expect(await host.putFormula(FORMULA)).toEqual({ done: 'The formula is in B7.' });
    expect([...sheet.cells]).toEqual([['B7', FORMULA]]);
  });
  test('that is empty and preset as text: it is made to calculate', async () => {
    const { host, sheet } = open('B7');
    sheet.formats.set('B7', '@');
    await host.putFormula(FORMULA);
    expect([...sheet.cells]).toEqual([['B7', FORMULA]]);
    expect(sheet.formats.get('B7')).toBe('General');
  });
  test.each([
    ['a number', 11],
    ['a nought', 0],
    ['a formula', '=1+1'],
  ])('that holds %s: it stays', async (_what, content) => {
    const { host, sheet } = open('C3');
    sheet.cells.set('C3', content);
    expect(await host.putFormula(FORMULA)).toEqual({
      refused: 'Cell C3 holds something, and it was left there. Select an empty cell.',
    });
    expect(sheet.cells.get('C3')).toBe(content);
  });
  test('that a list spills into: it stays', async () => {
    const { host, workbook, sheet } = open('C3');
    sheet.spilled.set('C3', 11);
    expect(await host.putFormula(FORMULA)).toEqual({
      refused: 'Cell C3 holds something, and it was left there. Select an empty cell.',
    });
    expect(workbook.log).toEqual([]);
  });
  test('when several are selected: none is touched', async () => {
    const { host, workbook, sheet } = open('A1:A2');
    expect(await host.putFormula(FORMULA)).toEqual({
      refused: 'More than one cell is selected. Nothing was changed. Select a single empty cell.',
    });
    expect(sheet.cells.size).toBe(0);
    expect(workbook.log).toEqual([]);
  });
  test('when the selection is no cell', async () => {
    const { host, workbook } = openExcel({ file });
    expect(await host.putFormula(FORMULA)).toMatchObject({
      refused: expect.stringContaining('Nothing was put into the cell.') as string,
    });
    expect(workbook.log).toEqual([]);
  });
  test('when it is no formula: Excel is not even asked', async () => {
    const { host, workbook } = open('B7');
    expect(await host.putFormula('SWEEP.STOPDIFF(8,11)')).toEqual({
      refused:
        '“SWEEP.STOPDIFF(8,11)” is no formula: a formula is = and something behind it. Nothing was changed.',
    });
    expect(workbook.batches).toEqual([]);
  });
  test('on a protected sheet', async () => {
    const { host, workbook, sheet } = open('B7');
    workbook.failures = [{ batch: 3, action: 0, code: 'AccessDenied' }];
    expect(await host.putFormula(FORMULA)).toMatchObject({
      refused: expect.stringMatching(/protected.*Nothing was put into the cell\./) as string,
    });
    expect(sheet.cells.size).toBe(0);
  });
  test('before Excel knows the functions', async () => {
    const { host, workbook } = open('B7');
    workbook.onFormula = () => '#NAME?';
    expect(await host.putFormula(FORMULA)).toMatchObject({
      done: expect.stringMatching(/^The formula is in B7\. Excel does not know the functions yet/) as string,
    });
  });
});

describe('calculating anew', () => {
  test('is refused in words', async () => {
    const { host, workbook } = openExcel();
    workbook.failures = [{ batch: 1, action: 0, code: 'RequestAborted' }];
    expect(await host.recalculate()).toMatchObject({
      refused: expect.stringContaining('No formula was changed.') as string,
    });
  });
});

test('a sheet that is not among the templates', async () => {
  const { host, workbook } = openExcel();
  expect(await host.insertSheet('no-such-sheet', true)).toEqual({
    refused: 'There is no sheet called “no-such-sheet”. Nothing was changed.',
  });
  expect(workbook.batches).toEqual([]);
});
