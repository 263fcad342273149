import { describe, expect, test } from 'vitest';
import { headless } from '../../../src/engine/headless';
import { snapshot, type TestCell } from '../book';

/** A workbook with what an edit does to it; `read` calculates first. */
function opened(sheets: Readonly<Record<string, readonly (readonly TestCell[])[]>>) {
  const workbook = snapshot(sheets);
  for (const sheet of Object.values(workbook.sheets ?? {})) sheet.rowCount = 100;
  const book = headless(workbook);
  const [first = ''] = Object.keys(sheets);
  const sheet = book.workbook.getSheetByName(first);
  if (!sheet) throw new Error('There is no first sheet.');
  const read = async (a1: string) => {
    await book.calculate();
    return book.read(first, a1);
  };
  const formula = (a1: string) => sheet.getRange(a1).getFormula();
  return { book, sheet, read, formula };
}

describe('a table beside which columns come and go', () => {
  const DATA: TestCell[][] = [
    [null, 'Qty', 'Price', null, '=SUM(Kit[Qty])', '=SUM(Kit[Price])'],
    [null, 2, 10],
    [null, 3, 20],
  ];
  const withTable = async () => {
    const all = opened({ Data: DATA });
    const place = { startRow: 0, endRow: 2, startColumn: 1, endColumn: 2 };
    await all.book.workbook.addTable('Data', 'Kit', place, 'kit');
    return all;
  };

  test('moves as a whole, there and back', async () => {
    const { book, sheet, read } = await withTable();
    sheet.insertColumnBefore(0);
    expect(await read('F1:G1')).toEqual([[5, 30]]);
    expect(book.workbook.getTableInfo('kit')?.columns.map(({ displayName }) => displayName)).toEqual([
      'Qty',
      'Price',
    ]);
    await book.workbook.undo();
    expect(await read('E1:F1')).toEqual([[5, 30]]);
    await book.workbook.redo();
    expect(await read('F1:G1')).toEqual([[5, 30]]);
    sheet.deleteColumns(0, 2);
    expect(await read('D1:E1')).toEqual([[5, 30]]);
    await book.workbook.undo();
    expect(await read('F1:G1')).toEqual([[5, 30]]);
    book.dispose();
  });
});

test('a table goes on or back by the rows and columns that are moved past it, there and back', async () => {
  const { book, sheet, read } = opened({
    Data: [['=SUM(Kit[Qty])', 'Qty', 'Price', '=SUM(Kit[Price])'], [null, 2, 10], [null, 3, 20], ['below']],
  });
  const place = { startRow: 0, endRow: 2, startColumn: 1, endColumn: 2 };
  await book.workbook.addTable('Data', 'Kit', place, 'kit');
  const area = () => book.workbook.getTableInfo('kit')?.range;
  sheet.moveColumns(sheet.getRange('A1:A4'), 4);
  expect(area()).toEqual({ ...place, startColumn: 0, endColumn: 1 });
  expect(await read('C1:D1')).toEqual([[30, 5]]);
  await book.workbook.undo();
  expect(area()).toEqual(place);
  sheet.moveRows(sheet.getRange('A4:D4'), 0);
  expect(area()).toEqual({ ...place, startRow: 1, endRow: 3 });
  expect(await read('A2:D2')).toEqual([[5, 'Qty', 'Price', 30]]);
  sheet.moveColumns(sheet.getRange('B1:C4'), 0);
  expect(area()).toEqual({ startRow: 1, endRow: 3, startColumn: 0, endColumn: 1 });
  expect(await read('C2:D2')).toEqual([[5, 30]]);
  // What is moved elsewhere leaves it where it is.
  sheet.moveColumns(sheet.getRange('C1:C4'), 4);
  expect(await read('C2:D2')).toEqual([[30, 5]]);
  book.dispose();
});

describe('a table that edits cut into', () => {
  const withTable = async () => {
    const all = opened({
      Data: [
        ['=SUM(Kit[Qty])', '=SUM(Kit[Price])', '=SUM(Kit)', '=COLUMNS(Kit)'],
        [null, 'Qty', 'Price', 'Sum'],
        [null, 2, 10, 100],
        [null, 3, 20, 200],
        [null, 4, 30, 300],
        ['below', 7, 7, 7],
      ],
    });
    all.book.workbook.insertDefinedName('Kit_2', 'Data!$B$3');
    const place = { startRow: 1, endRow: 4, startColumn: 1, endColumn: 3 };
    await all.book.workbook.addTable('Data', 'Kit', place, 'kit');
    const table = () => all.book.workbook.getTableInfo('kit');
    return { ...all, place, table };
  };

  test('keeps the rows that are not deleted with others below it', async () => {
    const { book, sheet, read, place, table } = await withTable();
    sheet.deleteRows(4, 2);
    expect(table()?.range).toEqual({ ...place, endRow: 3 });
    expect(await read('A1:D1')).toEqual([[5, 30, 335, 3]]);
    await book.workbook.undo();
    expect(await read('A1:D1')).toEqual([[9, 60, 669, 3]]);
    await book.workbook.redo();
    expect(table()?.range).toEqual({ ...place, endRow: 3 });
    sheet.deleteRows(2, 3);
    expect(table()?.range).toEqual({ ...place, endRow: 1 });
    book.dispose();
  });

  test('keeps the columns that are not deleted with others in front of it', async () => {
    const { book, sheet, read, place, table } = await withTable();
    sheet.insertColumnBefore(4);
    sheet.getRange('E1').setValue('=SUM(Kit[Sum])');
    const columns = () => table()?.columns.map(({ displayName }) => displayName);
    const cut = { ...place, startColumn: 0, endColumn: 1 };
    sheet.deleteColumns(0, 2);
    expect([table()?.range, columns()]).toEqual([cut, ['Price', 'Sum']]);
    expect(await read('A1:C1')).toEqual([[660, 2, 600]]);
    await book.workbook.undo();
    expect([table()?.range, columns()]).toEqual([place, ['Qty', 'Price', 'Sum']]);
    await book.workbook.redo();
    expect([table()?.range, columns()]).toEqual([cut, ['Price', 'Sum']]);
    book.dispose();
  });

  test('formulas beside it go along with their cells, and find no column that is deleted', async () => {
    const { book, sheet, formula } = await withTable();
    sheet.getRange('F1:H1').setValues([['=SUM(C3:D3)', '=SUM(Kit[[Qty]:[Sum]])', '=SUM(Kit[Qty])+E6']]);
    sheet.deleteColumns(1, 1);
    const formulas = () => ['A1', 'B1', 'C1', 'E1', 'F1', 'G1'].map(formula);
    const after = [
      '=SUM(#REF!)',
      '=SUM(Kit)',
      '=COLUMNS(Kit)',
      '=SUM(B3:C3)',
      '=SUM(#REF!)',
      '=SUM(#REF!)+D6',
    ];
    expect(formulas()).toEqual(after);
    await book.workbook.undo();
    expect(['A1', 'F1', 'G1', 'H1'].map(formula)).toEqual([
      '=SUM(Kit[Qty])',
      '=SUM(C3:D3)',
      '=SUM(Kit[[Qty]:[Sum]])',
      '=SUM(Kit[Qty])+E6',
    ]);
    await book.workbook.redo();
    expect(formulas()).toEqual(after);
    book.dispose();
  });

  test('names and heads each column that comes in, and keeps all in their order', async () => {
    const { book, sheet, read, table } = await withTable();
    const columns = () => table()?.columns.map(({ displayName }) => displayName);
    sheet.insertColumns(2, 2);
    sheet.insertColumns(2, 1);
    const headings = ['Qty', 'Column3', 'Column1', 'Column2', 'Price', 'Sum'];
    expect(columns()).toEqual(headings);
    expect(await read('B2:G2')).toEqual([headings]);
    sheet.getRange('C3').setValue(5);
    sheet.getRange('A9').setValue('=SUM(Kit[Column3])');
    expect(await read('A9')).toEqual([[5]]);
    for (let i = 0; i < 4; i++) await book.workbook.undo();
    expect(await read('B2:D2')).toEqual([['Qty', 'Price', 'Sum']]);
    for (let i = 0; i < 3; i++) await book.workbook.redo();
    expect(await read('B2:G2')).toEqual([headings]);
    book.workbook.duplicateSheet(sheet);
    const copied = book.workbook.getTableList().find(({ name }) => name !== 'Kit');
    expect(copied?.columns.map(({ displayName }) => displayName)).toEqual(headings);
    book.dispose();
  });

  test('has a name of its own in a copy of its sheet, and the formulas there mean it', async () => {
    const { book, sheet, read } = await withTable();
    book.workbook.duplicateSheet(sheet).setName('Copy');
    const copy = book.workbook.getSheetByName('Copy');
    copy?.getRange('B3').setValue(1000);
    expect(await read('A1:D1')).toEqual([[9, 60, 669, 3]]);
    expect(book.read('Copy', 'A1:D1')).toEqual([[1007, 60, 1667, 3]]);
    const formulas = copy?.getRange('A1:D1').getFormulas()[0];
    expect(formulas).toEqual(['=SUM(Kit_3[Qty])', '=SUM(Kit_3[Price])', '=SUM(Kit_3)', '=COLUMNS(Kit_3)']);
    for (let i = 0; i < 3; i++) await book.workbook.undo();
    expect(await read('A1:D1')).toEqual([[9, 60, 669, 3]]);
    for (let i = 0; i < 3; i++) await book.workbook.redo();
    expect(await read('A1:D1')).toEqual([[9, 60, 669, 3]]);
    expect(book.read('Copy', 'A1')).toEqual([[1007]]);
    book.dispose();
  });
});

test('whole columns and rows move, grow small and are gone with what is deleted', async () => {
  const { book, sheet, read, formula } = opened({
    Data: [
      [1, 2, 3, 4, '=SUM(C:C)', '=SUM(B:D)', '=SUM(A:A)'],
      [10, 20, 30, 40, '=SUM(3:3)'],
      [7, 7, 7, 7],
    ],
  });
  sheet.deleteColumns(0, 1);
  expect([formula('D1'), formula('E1'), formula('F1')]).toEqual(['=SUM(B:B)', '=SUM(A:C)', '=SUM(#REF!)']);
  expect(await read('D1:F1')).toEqual([
    [3 + 30 + 7, 2 + 20 + 7 + 3 + 30 + 7 + 4 + 40 + 7, { error: '#REF!' }],
  ]);
  await book.workbook.undo();
  expect([formula('E1'), formula('F1'), formula('G1')]).toEqual(['=SUM(C:C)', '=SUM(B:D)', '=SUM(A:A)']);
  sheet.deleteRows(0, 1);
  expect(formula('E1')).toBe('=SUM(2:2)');
  sheet.deleteRows(1, 1);
  expect(formula('E1')).toBe('=SUM(#REF!)');
  book.dispose();
});

test('names go along with their cells', async () => {
  const { book, sheet, read } = opened({
    Data: [
      [5, '=Fee*2', '=SUM(Both)'],
      [7, null, null, '=SUM(Wide)'],
    ],
  });
  book.workbook.insertDefinedName('Fee', 'Data!$A$1');
  book.workbook.insertDefinedName('Both', 'Data!$A$1:$A$2');
  book.workbook.insertDefinedName('Wide', 'Data!$A:$A');
  expect(await read('B1:C1')).toEqual([[10, 12]]);
  sheet.insertRowBefore(0);
  sheet.insertColumnBefore(0);
  expect(await read('C2:D2')).toEqual([[10, 12]]);
  sheet.getRange('B2').setValue(6);
  expect(await read('C2:D2')).toEqual([[12, 13]]);
  expect(await read('E3')).toEqual([[13]]);
  await book.workbook.undo();
  await book.workbook.undo();
  await book.workbook.undo();
  expect(await read('B1:C1')).toEqual([[10, 12]]);
  sheet.deleteColumns(0, 1);
  expect(await read('A1:B1')).toEqual([[{ error: '#REF!' }, { error: '#REF!' }]]);
  expect(await read('C2')).toEqual([[{ error: '#REF!' }]]);
  book.dispose();
});

test('quotation marks stay when rows come in, go away and are filled', async () => {
  const { book, sheet, read, formula } = opened({
    Data: [
      ['=B1&"6"" dish"', 'a'],
      [null, 'b'],
      ['="""" & B3', 'c'],
    ],
  });
  sheet.insertRowBefore(0);
  expect(await read('A2')).toEqual([['a6" dish']]);
  expect(formula('A4')).toBe('="""" & B4');
  await sheet.getRange('A2').autoFill(sheet.getRange('A2:A3'));
  expect(await read('A3')).toEqual([['b6" dish']]);
  sheet.deleteRows(0, 1);
  expect(await read('A1:A3')).toEqual([['a6" dish'], ['b6" dish'], ['"c']]);
  book.dispose();
});

test('filled formulas keep their cells when a sheet gets another name', async () => {
  const { book, sheet, read } = opened({ Plan: [[1], [2], [3]], Sums: [['=Plan!A1*10']] });
  const sums = book.workbook.getSheetByName('Sums');
  await sums?.getRange('A1').autoFill(sums.getRange('A1:A3'));
  await read('A1');
  sheet.setName('Set');
  await book.calculate();
  expect(book.read('Sums', 'A1:A3')).toEqual([[10], [20], [30]]);
  expect(sums?.getRange('A3').getFormula()).toBe('=Set!A3*10');
  await book.workbook.undo();
  await book.calculate();
  expect(book.read('Sums', 'A1:A3')).toEqual([[10], [20], [30]]);
  book.dispose();
});

test('filled formulas keep their cells when the first of them goes elsewhere', async () => {
  const { book, sheet, read, formula } = opened({
    Data: [[1, '=A2*2'], [2, '=A3*2'], [3], [4], [5]],
  });
  await sheet.getRange('B2').autoFill(sheet.getRange('B2:B4'));
  expect(await read('A1:B4')).toEqual([
    [1, 4],
    [2, 6],
    [3, 8],
    [4, 10],
  ]);
  // the first row goes between the third and the fourth: each row keeps what it is twice of
  sheet.moveRows(sheet.getRange('A1'), 3);
  expect(await read('A1:B4')).toEqual([
    [2, 6],
    [3, 8],
    [1, 4],
    [4, 10],
  ]);
  expect(formula('B4')).toBe('=A5*2');
  book.dispose();
});

test('formulas that a stored workbook keeps once are each their own when it is opened', async () => {
  const workbook = snapshot({ Plan: [[1], [2], [3]], Sums: [['=Plan!A1*10']] });
  const sums = Object.values(workbook.sheets ?? {}).find(({ name }) => name === 'Sums');
  if (!sums) throw new Error('There is no sheet Sums.');
  sums.cellData = {
    0: { 0: { f: '=Plan!A1*10', si: 'filled' } },
    1: { 0: { si: 'filled' } },
    2: { 0: { si: 'filled' } },
  };
  sums.rowCount = 3;
  const book = headless(workbook);
  await book.calculate();
  expect(book.read('Sums', 'A1:A3')).toEqual([[10], [20], [30]]);
  book.workbook.getSheetByName('Plan')?.setName('Set');
  await book.calculate();
  expect(book.read('Sums', 'A1:A3')).toEqual([[10], [20], [30]]);
  expect(book.workbook.getSheetByName('Sums')?.getRange('A3').getFormula()).toBe('=Set!A3*10');
  book.dispose();
});

test('a reference that names its own sheet goes on naming it', async () => {
  const { book, sheet, formula } = opened({
    Data: [
      ["=Data!B2*2+SUM('Data'!B2:B3,B2,Other!B2)", null],
      [null, 5],
      [null, 7],
    ],
    Other: [['=Data!B2']],
  });
  const other = () => book.workbook.getSheetByName('Other')?.getRange('A1').getFormula();
  sheet.insertRowBefore(1);
  expect(formula('A1')).toBe("=Data!B3*2+SUM('Data'!B3:B4,B3,Other!B2)");
  expect(other()).toBe('=Data!B3');
  sheet.moveRows(sheet.getRange('B3:B4'), 8);
  expect(formula('A1')).toBe("=Data!B7*2+SUM('Data'!B7:B8,B7,Other!B2)");
  sheet.deleteColumns(1, 1);
  expect(formula('A1')).toBe('=#REF!*2+SUM(#REF!,#REF!,Other!B2)');
  await book.workbook.undo();
  await book.workbook.undo();
  await book.workbook.undo();
  expect(formula('A1')).toBe("=Data!B2*2+SUM('Data'!B2:B3,B2,Other!B2)");
  book.dispose();
});
