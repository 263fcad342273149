import { describe, expect, test } from 'vitest';
import { blockAt } from './support/a1';
import { openExcel, sheetOf } from './support/laid';
import type { Ways } from './support/ways';

const FORMULA = '=SWEEP.STOPDIFF(8,11)';

/** A table of three rows in A1:B4, one of whose columns has a formula in each row. */
function open(fills: Ways['fillsColumns'] = 'formulas') {
  const opened = openExcel();
  const sheet = sheetOf(opened.workbook, 'Sheet1');
  opened.workbook.ways.fillsColumns = fills;
  sheet.cells.set('A1', 'Head').set('B1', 'Stops');
  for (const row of [2, 3, 4]) sheet.cells.set(`B${row}`, `=A${row}+1`);
  const table = sheet.addTable(blockAt('A1:B4'), 'Heads');
  return { ...opened, sheet, table, held: (): unknown => Object.fromEntries(sheet.cells) };
}

describe('a formula put into a cell', () => {
  test.each(['A5', 'B5', 'C1', 'C3'])(
    '%s, which touches a table, would change the table: it is refused',
    async (at) => {
      const { host, workbook, table, held } = open();
      const before = held();
      workbook.select('Sheet1', at);
      expect(await host.putFormula(FORMULA)).toEqual({
        refused: `${at} touches the table “Heads”, and Excel may take it into the table and fill what lies beside it. Nothing was changed. Select a cell that touches no table.`,
      });
      expect(held()).toEqual(before);
      expect(table.block).toEqual(blockAt('A1:B4'));
    },
  );
  test.each(['C5', 'A6', 'D2', 'C7'])('%s, which touches none, is taken', async (at) => {
    const { host, workbook, table, sheet } = open();
    workbook.select('Sheet1', at);
    expect(await host.putFormula(FORMULA)).toEqual({ done: `The formula is in ${at}.` });
    expect(sheet.cells.get(at)).toBe(FORMULA);
    expect(table.block).toEqual(blockAt('A1:B4'));
  });
});

describe('a formula put into a table', () => {
  test.each(['never', 'formulas'] as const)(
    'leaves what somebody writes into another row meanwhile, where Excel fills columns: %s',
    async (fills) => {
      const { host, workbook, sheet } = open(fills);
      workbook.select('Sheet1', 'A3');
      workbook.beforeBatch = () => {
        if (workbook.batches.at(-1)?.Actions.some(({ Name }) => Name === 'Formulas'))
          sheet.cells.set('A2', 'theirs');
      };
      expect(await host.putFormula(FORMULA)).toEqual({ done: 'The formula is in A3.' });
      expect(['A2', 'A3', 'A4'].map((at) => sheet.cells.get(at))).toEqual(['theirs', FORMULA, undefined]);
    },
  );
});

test('the workbook in memory takes what is written beside a table into it', async () => {
  const { excel, sheet, table } = open();
  await excel.run(async (context) => {
    const on = context.workbook.worksheets.getItem('Sheet1');
    on.getRange('A5').values = [[8]];
    on.getRange('C3').formulas = [['=1+1']];
    await context.sync();
  });
  expect(table.block).toEqual(blockAt('A1:C5'));
  expect([sheet.cells.get('B5'), sheet.cells.get('C1'), sheet.cells.get('C5')]).toEqual([
    '=A5+1',
    'Column3',
    '=1+1',
  ]);
});
