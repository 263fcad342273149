import { describe, expect, test } from 'vitest';
import type { Block } from '../../../src/pane/balance/block';
import { balanceSheet } from '../../../src/pane/balance/layTable';
import { readTable } from '../../../src/pane/balance/readTable';
import { FULL } from '../../full';
import { openExcel, sheetOf } from './support/laid';
import { hostFiles, type HostFile } from './support/office-host';

/** A block of cells from B2 on, with a gap around it, and a cell by itself. */
function open(file?: HostFile) {
  const opened = openExcel(file && { file });
  const sheet = sheetOf(opened.workbook, 'Sheet1');
  sheet.cells
    .set('B2', 'Point')
    .set('C2', 'Wanted')
    .set('D2', 'Alder')
    .set('B3', 'Set to')
    .set('B4', 'Bowl')
    .set('C4', 11)
    .set('D4', '=SUM(G9)')
    .set('G9', 8);
  opened.workbook.onFormula = () => 8;
  opened.workbook.log.length = 0;
  return { ...opened, sheet };
}
const blockAt = async (opened: ReturnType<typeof open>, address: string): Promise<Block> => {
  opened.workbook.select('Sheet1', address);
  const block = await opened.host.tables.readBlock();
  if ('refused' in block) throw new Error(block.refused);
  return block;
};
const placed = ({ row, column, cells }: Block) => [row, column, cells.length, cells[0]?.length];

describe.each(hostFiles(FULL))('a table of the sheet, through %s,', (file) => {
  test('is read around one of its cells, or as it is selected', async () => {
    const opened = open(file);
    const block = await blockAt(opened, 'C4');
    expect(placed(block)).toEqual([1, 1, 3, 3]);
    expect(block.cells[2]).toEqual([
      { value: 'Bowl', isFormula: false },
      { value: 11, isFormula: false },
      { value: 8, isFormula: true },
    ]);
    expect(placed(await blockAt(opened, 'B2:C4'))).toEqual([1, 1, 3, 2]);
    expect(opened.workbook.log).toEqual([]);
  });

  test('is written into, and taken back', async () => {
    const opened = open(file);
    const block = await blockAt(opened, 'C4');
    const outcome = await opened.host.tables.writeCells(block, [
      { row: 1, column: 2, value: '1/2' },
      { row: 2, column: 1, value: 16 },
    ]);
    expect(outcome).toMatchObject({ done: 'D3 to C4 on “Sheet1” is written.' });
    expect(opened.sheet.cells.get('D3')).toBe('1/2');
    // a date would have come of it otherwise
    expect(opened.sheet.formats.get('D3')).toBe('@');
    expect(opened.sheet.cells.get('C4')).toBe(16);
    const back = 'takeBack' in outcome ? await outcome.takeBack?.() : undefined;
    expect(back).toEqual({ done: '2 cells on “Sheet1” are as before.' });
    expect(opened.sheet.cells.get('D3') ?? '').toBe('');
    expect(opened.sheet.cells.get('C4')).toBe(11);
    expect(opened.sheet.cells.get('D4')).toBe('=SUM(G9)');
  });

  test('that is laid can be read as it stands', async () => {
    const { host, workbook } = openExcel(file && { file });
    expect(await host.tables.laySheet(balanceSheet(undefined))).toMatchObject({
      done: expect.stringContaining('“Balance” is inserted') as string,
    });
    const block = await host.tables.readBlock();
    if ('refused' in block) throw new Error(block.refused);
    // where typing ends, right below it, it is meant too
    workbook.select('Balance', 'K22');
    expect(await host.tables.readBlock()).toEqual(block);
    const table = readTable(block, undefined, 1);
    expect('faults' in table ? table.faults : []).toEqual([]);
    const [names, ...others] = await host.tables.look([
      'Points[Point]',
      'Points[Nobody]',
      'nobody',
      'Elsewhere[A]',
    ]);
    expect(names?.[0]).toEqual(['Model']);
    expect(others).toEqual([undefined, undefined, undefined]);
  });
});

describe('nothing is lost', () => {
  test('where a cell of the table has changed since it was read', async () => {
    const opened = open();
    const block = await blockAt(opened, 'C4');
    opened.sheet.cells.set('C4', 22);
    expect(await opened.host.tables.writeCells(block, [{ row: 1, column: 2, value: '1/2' }])).toEqual({
      refused: 'The table on “Sheet1” has changed since it was read. Nothing was changed. Read it again.',
    });
    expect(opened.workbook.log).toEqual([]);
  });

  test('where what was written has changed before it is taken back', async () => {
    const opened = open();
    const block = await blockAt(opened, 'C4');
    const outcome = await opened.host.tables.writeCells(block, [{ row: 2, column: 1, value: 16 }]);
    opened.sheet.cells.set('C4', 22);
    const back = 'takeBack' in outcome ? await outcome.takeBack?.() : undefined;
    expect(back).toEqual({
      refused: 'Cells on “Sheet1” have changed since they were written, so they were left as they are.',
    });
    expect(opened.sheet.cells.get('C4')).toBe(22);
  });

  test('where Excel breaks off: what was written is put back', async () => {
    const opened = open();
    const block = await blockAt(opened, 'C4');
    const next = opened.workbook.batches.length + 3;
    opened.workbook.failures = [{ batch: next, action: 4, code: 'AccessDenied' }];
    const outcome = await opened.host.tables.writeCells(block, [
      { row: 2, column: 1, value: 16 },
      { row: 1, column: 2, value: '1/2' },
    ]);
    expect(outcome).toMatchObject({ refused: expect.stringContaining('Nothing was changed.') as string });
    expect(opened.sheet.cells.get('C4')).toBe(11);
    expect(opened.sheet.cells.get('D3') ?? '').toBe('');
  });

  test('where the sheet is gone, nothing is selected, or nothing stands there', async () => {
    const opened = open();
    const block = await blockAt(opened, 'C4');
    expect(await opened.host.tables.writeCells({ ...block, sheet: 'Gone' }, [{ row: 2, column: 1, value: 16 }])).toMatchObject({ refused: expect.stringContaining('“Gone” is not in the workbook') as string }); // prettier-ignore
    opened.workbook.select('Sheet1', 'M30');
    expect(await opened.host.tables.readBlock()).toMatchObject({ refused: expect.stringContaining('There is no table where you are') as string }); // prettier-ignore
    opened.workbook.select('Sheet1', 'A1:Z500');
    expect(await opened.host.tables.readBlock()).toMatchObject({ refused: expect.stringContaining('More cells are selected') as string }); // prettier-ignore
    opened.workbook.selection = undefined;
    expect(await opened.host.tables.readBlock()).toMatchObject({ refused: expect.stringContaining('The workbook is as it was.') as string }); // prettier-ignore
  });
});
