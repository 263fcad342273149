import { describe, expect, test } from 'vitest';
import { FakeWorkbook } from './support/fake-workbook';
import { HOST_FILES, loadOffice } from './support/office-host';

/** The stand-in for Excel has to refuse what Excel refuses, or tests on it prove nothing. */
describe.each(HOST_FILES)('the workbook behind %s', (file) => {
  const open = (excelApi = '1.15') => {
    const workbook = new FakeWorkbook('Sheet1');
    return { workbook, excel: loadOffice(workbook, { file, excelApi }).Excel };
  };

  test('keeps what is written, in one batch', async () => {
    const { workbook, excel } = open();
    await excel.run(async (context) => {
      const sheet = context.workbook.worksheets.add('Pops');
      sheet.getRange('B2:C3').formulas = [['Reading', 'Pops'], [8, '=SWEEP.POPSFORTARGET(B3,16)']]; // prettier-ignore
      sheet.getRangeByIndexes(2, 1, 1, 1).numberFormat = [['0.0']];
      await context.sync();
    });
    expect([...(workbook.find('pops')?.cells ?? [])]).toEqual([
      ['B2', 'Reading'],
      ['C2', 'Pops'],
      ['B3', 8],
      ['C3', '=SWEEP.POPSFORTARGET(B3,16)'],
    ]);
    expect([...(workbook.find('Pops')?.formats ?? [])]).toEqual([['B3', '0.0']]);
    expect(workbook.batches.length).toBe(1);
  });

  test('tells the names of its sheets, and that another is not there', async () => {
    const { excel } = open();
    await excel.run(async (context) => {
      const sheets = context.workbook.worksheets.load('items/name');
      const absent = sheets.getItemOrNullObject('Elsewhere').load('name');
      await context.sync();
      expect(sheets.items.map(({ name }) => name)).toEqual(['Sheet1']);
      expect(absent.isNullObject).toBe(true);
    });
  });

  const refused: [string, string, (sheets: Excel.WorksheetCollection) => unknown][] = [
    [
      'values of another size than their range',
      'InvalidArgument',
      (s) => (s.getItem('Sheet1').getRange('A1:B1').values = [[1]]),
    ],
    ['a second sheet of one name', 'ItemAlreadyExists', (s) => s.add('sheet1')],
    ['a name that no sheet can have', 'InvalidArgument', (s) => s.add('f/8')],
    [
      'a name that a sheet has already',
      'ItemAlreadyExists',
      (s) => {
        const sheet = s.getItem('Sheet1');
        for (const name of ['pops', 'Pops']) sheet.names.add(name, sheet.getRange('A1'));
      },
    ],
    [
      'a name that is the address of a cell',
      'InvalidArgument',
      (s) => s.getItem('Sheet1').names.add('T05', s.getItem('Sheet1').getRange('A1')),
    ],
    ['work on a sheet that is not there', 'ItemNotFound', (s) => s.getItem('Elsewhere').activate()],
  ];
  test.each(refused)('refuses %s', async (_what, code, act) => {
    const { excel } = open();
    const attempt = excel.run(async (context) => {
      act(context.workbook.worksheets);
      await context.sync();
    });
    await expect(attempt).rejects.toMatchObject({ code });
  });

  test('refuses what its level of the library does not have yet', async () => {
    const newer = (excel: typeof Excel) =>
      excel.run(async (context) => {
        context.workbook.worksheets.getItem('Sheet1').getRange('A1').getSpillingToRange(); // ExcelApi 1.12
        await context.sync();
      });
    await expect(newer(open('1.9').excel)).rejects.toMatchObject({ code: 'ApiNotFound' });
    await expect(newer(open('1.15').excel)).resolves.toBeUndefined();
  });
});
