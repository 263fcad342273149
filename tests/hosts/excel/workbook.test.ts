import { describe, expect, test } from 'vitest';
import { FakeWorkbook } from './support/fake-workbook';
import { loadOffice } from './support/office-host';
import { MANIFEST_LEVEL } from './support/laid';

/** The workbook in memory has to refuse what Excel refuses, or the tests that lay sheets in it prove nothing. */
async function attempt(act: (sheet: Excel.Worksheet, context: Excel.RequestContext) => unknown) {
  const workbook = new FakeWorkbook('Sheet1');
  workbook.names.push('Studio');
  const { Excel } = loadOffice(workbook, { excelApi: MANIFEST_LEVEL });
  const code = await Excel.run(async (context) => {
    act(context.workbook.worksheets.getItem('Sheet1'), context);
    await context.sync();
    return 'done';
  }).catch((error: unknown) => (error as { code: string }).code);
  return { workbook, code };
}

/** A table over A1:B3, named as given, with headings Head and Power. */
function tableOn(sheet: Excel.Worksheet, name: string): Excel.Table {
  sheet.getRange('A1:B1').values = [['Head', 'Power']];
  const table = sheet.tables.add(sheet.getRange('A1:B3'), true);
  table.name = name;
  return table;
}

const tableNames = ['Two words', '2Heads', 'A1', 'LOT12', 'R', 'R1C1', 'f/8', ''];
describe('tables', () => {
  test('take a name that Excel takes', async () => {
    const { workbook, code } = await attempt((sheet) => tableOn(sheet, 'Heads_2'));
    expect(code).toBe('done');
    expect(workbook.tables.map(({ name }) => name)).toEqual(['Heads_2']);
  });
  test.each(tableNames)('take no name such as “%s”', async (name) =>
    expect((await attempt((sheet) => tableOn(sheet, name))).code).toBe('InvalidArgument'),
  );
  test.each(['heads', 'studio'])('take no name that is taken, in whatever case: %s', async (name) => {
    const { code } = await attempt((sheet) => {
      tableOn(sheet, 'Heads');
      sheet.tables.add(sheet.getRange('D1:D3'), true).name = name;
    });
    expect(code).toBe('ItemAlreadyExists');
  });
  test('overlap no other', async () => {
    const { code } = await attempt((sheet) => {
      tableOn(sheet, 'Heads');
      sheet.tables.add(sheet.getRange('B3:C5'), true);
    });
    expect(code).toBe('InvalidOperation');
  });
  test('let none of their cells be merged', async () => {
    const { code } = await attempt((sheet) => {
      tableOn(sheet, 'Heads');
      sheet.getRange('A3:A4').merge();
    });
    expect(code).toBe('InvalidArgument');
  });
});

describe('formulas', () => {
  const write = (formula: string) =>
    attempt((sheet) => {
      tableOn(sheet, 'Heads');
      sheet.getRange('D1').formulas = [[formula]];
    });
  test.each([
    '=SUM(Heads[Power])',
    '=Heads[[#This Row],[Power]]*2',
    '=Sheet1!A1',
    "='Sheet1'!A1",
    '="Nothing[Here] ("',
  ])('%s is taken', async (formula) => expect((await write(formula)).code).toBe('done'));
  test.each(['=SUM(Lights[Power])', '=SUM(Heads[Watt])', '=SUM(A1', '=Elsewhere!A1'])(
    '%s is refused',
    async (formula) => expect((await write(formula)).code).toBe('InvalidArgument'),
  );
  test('a formula that speaks of a table before it is there is refused', async () => {
    const { code } = await attempt((sheet) => {
      sheet.getRange('D1').formulas = [['=SUM(Heads[Power])']];
      tableOn(sheet, 'Heads');
    });
    expect(code).toBe('InvalidArgument');
  });
  test('one of more than 8192 letters is refused', async () =>
    expect((await write(`=${'1+'.repeat(4200)}1`)).code).toBe('FormulaLengthExceedsLimit'));
});

describe('what is typed', () => {
  const typed = async (value: unknown, format?: string) => {
    const { workbook, code } = await attempt((sheet) => {
      if (format) sheet.getRange('A1').numberFormat = [[format]];
      sheet.getRange('A1').values = [[value]];
    });
    return code === 'done' ? workbook.sheets[0]?.cells.get('A1') : code;
  };
  test.each(['1/125', '3:1', '2.5', '1 1/2'])('%s turns into a date or a number', async (value) =>
    expect(await typed(value)).toEqual({ misread: value }),
  );
  test.each(['1/125', '3:1', '2.5', '=A1'])('%s stays what it is in a cell preset as text', async (value) =>
    expect(await typed(value, '@')).toBe(value),
  );
  test('a number becomes a text there', async () => expect(await typed(2.5, '@')).toBe('2.5'));
  test('words that begin like a formula are refused, unless they are marked as words', async () => {
    expect(await typed('-rim')).toBe('InvalidArgument');
    expect(await typed("'-rim")).toBe('-rim');
  });
});

describe('what may be typed', () => {
  const list = { list: { inCellDropDown: true, source: 'key,fill' } };
  const prompt = { showPrompt: true, title: 'Part', message: 'Choose one.' };
  const cases: [string, (sheet: Excel.Worksheet) => unknown][] = [
    ['two criteria at once', (s) => (s.getRange('A1').dataValidation.rule = { ...list, wholeNumber: { formula1: 1, operator: 'LessThan' } })],
    ['a list of more than 255 letters', (s) => (s.getRange('A1').dataValidation.rule = { list: { inCellDropDown: true, source: 'x'.repeat(256) } })],
    ['a title of more than 32 letters', (s) => (s.getRange('A1').dataValidation.prompt = { ...prompt, title: 'x'.repeat(33) })],
    ['a message of more than 255 letters', (s) => (s.getRange('A1').dataValidation.prompt = { ...prompt, message: 'x'.repeat(256) })],
    ['an alert of more than 255 letters', (s) => (s.getRange('A1').dataValidation.errorAlert = { showAlert: true, style: 'Stop', title: '', message: 'x'.repeat(256) })],
    [
      'a rule where only some of the cells have a message',
      (s) => {
        s.getRange('A2').dataValidation.prompt = prompt;
        s.getRange('A1:A3').dataValidation.rule = list;
      },
    ],
  ]; // prettier-ignore
  test.each(cases)('refuses %s', async (_what, act) =>
    expect((await attempt(act)).code).toBe('InvalidArgument'),
  );
  test('takes a rule first and a message in some of its cells afterwards', async () => {
    const { workbook, code } = await attempt((sheet) => {
      sheet.getRange('A1:A3').dataValidation.rule = list;
      sheet.getRange('A2').dataValidation.prompt = prompt;
    });
    expect(code).toBe('done');
    expect(workbook.sheets[0]?.validation.get('A2')).toEqual({ Rule: list, Prompt: prompt });
    expect(workbook.sheets[0]?.validation.get('A3')).toEqual({ Rule: list });
  });
});

test('a condition cannot speak of a table', async () => {
  const { code } = await attempt((sheet) => {
    tableOn(sheet, 'Heads');
    sheet.getRange('B2:B3').conditionalFormats.add('Custom').custom.rule.formula =
      '=Heads[[#This Row],[Power]]>1';
  });
  expect(code).toBe('InvalidArgument');
});
test('the last sheet cannot be deleted', async () =>
  expect((await attempt((sheet) => sheet.delete())).code).toBe('InvalidOperation'));
test('what came before the refused action stays, as in Excel', async () => {
  const { workbook, code } = await attempt((sheet, context) => {
    context.workbook.worksheets.add('Half');
    sheet.getRange('A1:B1').values = [['one value too few']];
  });
  expect(code).toBe('InvalidArgument');
  expect(workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1', 'Half']);
});
