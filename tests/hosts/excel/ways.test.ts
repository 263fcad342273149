import { describe, expect, test } from 'vitest';
import { blockAt } from './support/a1';
import { LIGHTS, openExcel, sheetOf } from './support/laid';

/** Every way of Excel must be played by the workbook in memory, or the tests that switch it on prove nothing. */
function open() {
  const opened = openExcel();
  const sheet = sheetOf(opened.workbook, 'Sheet1');
  const ask = (act: (sheet: Excel.Worksheet, context: Excel.RequestContext) => unknown): Promise<string> =>
    opened.excel
      .run(async (context) => {
        act(context.workbook.worksheets.getItem('Sheet1'), context);
        await context.sync();
        return 'done';
      })
      .catch((error: unknown) => (error as { code: string }).code);
  const read = (address: string, what: 'values' | 'formulas' | 'text'): Promise<unknown> =>
    opened.excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem('Sheet1').getRange(address).load(what);
      await context.sync();
      return (range[what] as unknown[][])[0]?.[0];
    });
  return { ...opened, sheet, ask, read };
}

/** Rows 2 to 4 of a table: a number, a formula, nothing. */
function withTable() {
  const on = open();
  on.sheet.cells.set('A1', 'Reading').set('B1', 'Power').set('A2', 8).set('A3', '=A2+1');
  on.sheet.addTable(blockAt('A1:B4'), 'Heads');
  return on;
}

describe('a formula that is written into a table', () => {
  test.each([
    ['never', { A2: 8, A3: '=A2+1', A4: '=B4' }],
    ['formulas', { A2: 8, A3: '=B3', A4: '=B4' }],
    ['everything', { A2: '=B2', A3: '=B3', A4: '=B4' }],
  ] as const)('fills its column: %s', async (fills, wanted) => {
    const { workbook, sheet, ask } = withTable();
    workbook.ways.fillsColumns = fills;
    expect(await ask((one) => (one.getRange('A4').formulas = [['=B4']]))).toBe('done');
    expect(Object.fromEntries(sheet.cells)).toEqual({ A1: 'Reading', B1: 'Power', ...wanted });
  });
  test('of several the last one stays', async () => {
    const { sheet, workbook, ask } = withTable();
    workbook.ways.fillsColumns = 'formulas';
    await ask((one) => (one.getRange('B2:B4').formulas = [['=1+1'], ['=1+2'], ['=1+3']]));
    expect(['B2', 'B3', 'B4'].map((at) => sheet.cells.get(at))).toEqual(['=1+3', '=1+3', '=1+3']);
  });
  test('as a heading, or beside the table, fills nothing', async () => {
    const { sheet, workbook, ask } = withTable();
    workbook.ways.fillsColumns = 'everything';
    await ask((one) => (one.getRange('D2').formulas = [['=1+1']]));
    await ask((one) => (one.getRange('A6').formulas = [['=1+1']]));
    expect(sheet.cells.get('A4')).toBeUndefined();
    expect(sheet.cells.size).toBe(6);
  });
});

describe('what a machine cannot do throws:', () => {
  test.each([
    ['freeze', (sheet: Excel.Worksheet): unknown => sheet.freezePanes.freezeRows(1)],
    ['page', (sheet: Excel.Worksheet): unknown => (sheet.pageLayout.orientation = 'Landscape')],
    ['charts', (sheet: Excel.Worksheet): unknown => sheet.charts.add('Line', sheet.getRange('A1:A3'))],
  ] as const)('%s', async (part, act) => {
    const { workbook, ask } = open();
    expect(await ask(act)).toBe('done');
    workbook.ways.throwsAt.add(part);
    expect(await ask(act)).toBe('GeneralException');
  });
});

describe('a formula shows', () => {
  const FORMULA = '=SWEEP.STOPDIFF(8,11)';
  const enter = (sheet: Excel.Worksheet): unknown => (sheet.getRange('A1').formulas = [[FORMULA]]);

  test('0 until its sheet is calculated, where a person calculates by hand', async () => {
    const { workbook, ask, read } = open();
    workbook.onFormula = () => 1;
    workbook.ways.calculation = 'Manual';
    await ask(enter);
    expect(await read('A1', 'values')).toBe(0);
    await ask((sheet) => sheet.calculate(true));
    expect(await read('A1', 'values')).toBe(1);
  });
  test('that it is not ready, for some looks', async () => {
    const { workbook, ask, read } = open();
    workbook.onFormula = () => 1;
    await ask(enter);
    workbook.ways.unready = { shows: '#BUSY!', looks: 2 };
    const seen = [await read('A1', 'values'), await read('A1', 'text'), await read('A1', 'values')];
    expect(seen).toEqual(['#BUSY!', '#BUSY!', 1]);
  });
  test('#NAME? until it is entered again, whatever is calculated', async () => {
    const { workbook, ask, read } = open();
    workbook.onFormula = () => 1;
    workbook.ways.unregistered = '#CALC!';
    await ask(enter);
    workbook.ways.unregistered = undefined;
    await ask((_sheet, context) => context.application.calculate('FullRebuild'));
    expect([await read('A1', 'text'), await read('A1', 'values')]).toEqual(['#NAME?', '#CALC!']);
    await ask(enter);
    expect(await read('A1', 'values')).toBe(1);
  });
});

describe('a formula reads', () => {
  test.each([
    ['as written', '=sweep.stopdiff(Heads[[#This Row],[Reading]],1E-9)'],
    ['short', '=SWEEP.STOPDIFF([@Reading],0.000000001)'],
    ['at', '=@SWEEP.STOPDIFF([@Reading],0.000000001)'],
  ] as const)('%s', async (spelling, wanted) => {
    const { workbook, ask, read } = withTable();
    workbook.ways.spelling = spelling;
    await ask((one) => (one.getRange('B2').formulas = [['=sweep.stopdiff(Heads[[#This Row],[Reading]],1E-9)']])); // prettier-ignore
    expect(await read('B2', 'formulas')).toBe(wanted);
  });
});

describe('what is protected', () => {
  const write = (sheet: Excel.Worksheet): unknown => (sheet.getRange('A1:A2').values = [[1], [null]]);
  test('is not written, unless every cell of the block is free', async () => {
    const { sheet, ask } = open();
    sheet.isProtected = true;
    sheet.unlocked.add('A1');
    expect(await ask(write)).toBe('AccessDenied');
    sheet.unlocked.add('A2');
    expect(await ask(write)).toBe('done');
    expect(await ask((one) => (one.getRange('A1').format.font.bold = true))).toBe('AccessDenied');
  });
  test('lets no sheet come, go or change its name', async () => {
    const { workbook, ask } = open();
    workbook.addSheet('Other');
    workbook.ways.structureIsProtected = true;
    expect(await ask((_sheet, context) => context.workbook.worksheets.add('New'))).toBe('AccessDenied');
    expect(await ask((sheet) => sheet.copy('End'))).toBe('AccessDenied');
    expect(await ask((sheet) => sheet.delete())).toBe('AccessDenied');
    expect(await ask((sheet) => (sheet.name = 'Old'))).toBe('AccessDenied');
    expect(workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1', 'Other']);
  });
});

test('a part of a formula over several cells cannot be changed, the whole can', async () => {
  const { sheet, ask } = open();
  sheet.arrays.push(blockAt('A1:A2'));
  expect(await ask((one) => (one.getRange('A1').formulas = [['=1+1']]))).toBe('InvalidOperation');
  expect(await ask((one) => (one.getRange('A1:A3').values = [[1], [2], [3]]))).toBe('done');
});

test('of merged cells only the first holds anything', async () => {
  const { sheet, ask } = open();
  sheet.cells.set('A1', 1).set('B1', 2);
  await ask((one) => one.getRange('A1:B1').merge());
  await ask((one) => (one.getRange('A1:B1').values = [[3, 4]]));
  expect([...sheet.cells]).toEqual([['A1', 3]]);
});

test('a filter may leave rows out of a copy, so that what follows moves up', async () => {
  const { workbook, sheet, ask } = open();
  const to = workbook.addSheet('To');
  sheet.cells.set('A1', 1).set('A2', 2).set('A3', 3);
  sheet.filtered.add(1);
  workbook.ways.copiesVisibleRows = true;
  await ask((one, { workbook: book }) => book.worksheets.getItem('To').getRange('A1:A3').copyFrom(one.getRange('A1:A3'), 'Values')); // prettier-ignore
  expect([...to.cells]).toEqual([['A1', 1], ['A2', 3]]); // prettier-ignore
});

test('names of a sheet are told by the sheet alone', async () => {
  const { workbook, excel, host } = openExcel();
  await host.insertSheet(LIGHTS.id, true);
  workbook.names.push('Studio');
  const [all, ours] = await excel.run(async (context) => {
    const ofBook = context.workbook.names.load('items/name');
    const ofSheet = context.workbook.worksheets.getItem(LIGHTS.name).names.load('items/name');
    await context.sync();
    return [ofBook, ofSheet].map(({ items }) => items.map(({ name }) => name));
  });
  expect(all).toEqual(['Studio']);
  expect(ours).toContain('target');
});
