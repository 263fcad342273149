import { describe, expect, test } from 'vitest';
import type { Mended, MendedCell } from '../../../src/pane/host';
import { FULL } from '../../full';
import { openExcel, sheetOf } from './support/laid';
import { hostFiles, type HostFile } from './support/office-host';

const LOST = '=_xldudf_SWEEP_STOPDIFF(8,11)';
const MENDED = '=SWEEP.STOPDIFF(8,11)';
const LOST_TWICE = '=[1]!_xldudf_SWEEP_STOPTEXT(_xldudf_SWEEP_LIGHTSUM(8,11))';
const MENDED_TWICE = '=SWEEP.STOPTEXT(SWEEP.LIGHTSUM(8,11))';

/** Two sheets with lost names on both, other things between, and an empty sheet. */
function open(file?: HostFile) {
  const opened = openExcel(file && { file });
  opened.workbook.addSheet('Empty');
  const second = opened.workbook.addSheet('Set 2');
  const first = sheetOf(opened.workbook, 'Sheet1');
  first.cells.set('B2', 8).set('C3', LOST).set('D3', '=SUM(A1:A3)').set('E5', 'words');
  second.cells.set('AA7', LOST_TWICE);
  opened.workbook.log.length = 0;
  return { ...opened, first, second };
}
const cellsOf = (outcome: Mended): readonly MendedCell[] => ('cells' in outcome ? outcome.cells : []);

const FOUND: readonly MendedCell[] = [
  { sheet: 'Sheet1', cell: 'C3', before: LOST, after: MENDED },
  { sheet: 'Set 2', cell: 'AA7', before: LOST_TWICE, after: MENDED_TWICE },
];

describe.each(hostFiles(FULL))('lost names, through %s,', (file) => {
  test('are found on every sheet in four requests, and nothing is changed', async () => {
    const { host, workbook } = open(file);
    expect(await host.findLost()).toEqual({
      done: '2 cells with lost names found. Nothing is changed yet.',
      cells: FOUND,
    });
    expect(workbook.log).toEqual([]);
    expect(workbook.batches.length).toBe(4);
  });

  test('are mended, and nothing else is touched', async () => {
    const { host, workbook, first, second } = open(file);
    expect(await host.mendLost(FOUND)).toEqual({ done: '2 cells mended.', cells: FOUND });
    expect(Object.fromEntries(first.cells)).toEqual({ B2: 8, C3: MENDED, D3: '=SUM(A1:A3)', E5: 'words' });
    expect(second.cells.get('AA7')).toBe(MENDED_TWICE);
    expect(workbook.log.length).toBe(2);
    expect(cellsOf(await host.findLost())).toEqual([]);
  });

  test('come back when the repair is taken back', async () => {
    const { host, first, second } = open(file);
    const cells = cellsOf(await host.mendLost(FOUND));
    expect(await host.takeBack(cells)).toEqual({ done: '2 cells as before the repair.' });
    expect(first.cells.get('C3')).toBe(LOST);
    expect(second.cells.get('AA7')).toBe(LOST_TWICE);
  });
});

describe('a repair', () => {
  test('says so where no name is lost', async () => {
    const { host } = openExcel();
    expect(await host.findLost()).toEqual({
      done: 'No formula has lost a name. Nothing was changed.',
      cells: [],
    });
  });

  test('leaves a cell that changed meanwhile, and says where', async () => {
    const { host, first, second } = open();
    first.cells.set('C3', '=1+1');
    expect(await host.mendLost(FOUND)).toEqual({
      done: '1 cell mended. Left as they are, because they changed meanwhile: C3 on “Sheet1”.',
      cells: [FOUND[1]],
    });
    expect(first.cells.get('C3')).toBe('=1+1');
    second.cells.set('AA7', 22);
    expect(await host.takeBack([FOUND[1] as MendedCell])).toEqual({
      done: '0 cells as before the repair. Left as they are, because they changed since: AA7 on “Set 2”.',
    });
    expect(second.cells.get('AA7')).toBe(22);
  });

  test('leaves a sheet that is gone meanwhile', async () => {
    const { host, workbook } = open();
    workbook.sheets.pop();
    expect(await host.mendLost(FOUND)).toMatchObject({
      done: expect.stringContaining('changed meanwhile: AA7 on “Set 2”.') as string,
    });
  });

  test('names the first few places only', async () => {
    const { host } = open();
    const many = Array.from({ length: 7 }, (_, i) => ({ ...FOUND[0], cell: `F${i + 1}` }) as MendedCell);
    expect(await host.mendLost(many)).toMatchObject({
      done: expect.stringMatching(/^0 cells mended\..* F5 on “Sheet1” and 2 more\.$/) as string,
    });
  });

  test('says where Excel loses the name again', async () => {
    const { host, workbook } = open();
    workbook.onFormulaWritten = (formula) => formula.replace('SWEEP.', '_xldudf_SWEEP_');
    expect(await host.mendLost(FOUND.slice(0, 1))).toMatchObject({
      done: expect.stringContaining('Excel lost the name again in C3 on “Sheet1”') as string,
    });
  });

  test('that breaks off leaves the workbook as it was', async () => {
    const whole = open();
    await whole.host.mendLost(FOUND);
    const requests = whole.workbook.batches.map(({ Actions }) => Actions.length);
    expect(requests.length).toBeGreaterThan(4);
    for (const [i, actions] of requests.entries())
      for (let action = 0; action < actions; action++) {
        const { host, workbook, first, second } = open();
        workbook.failures = [{ batch: i + 1, action, code: 'RequestAborted' }];
        // oxlint-disable-next-line no-await-in-loop -- one workbook after the other
        expect(await host.mendLost(FOUND), `request ${i}, action ${action}`).toMatchObject({
          refused: expect.stringMatching(/connection.* The workbook is as it was\./) as string,
        });
        expect([first.cells.get('C3'), second.cells.get('AA7')]).toEqual([LOST, LOST_TWICE]);
      }
  });

  test('that breaks off for good says that it may be half done', async () => {
    const { host, workbook } = open();
    workbook.failures = [3, 4].map((batch) => ({ batch, action: 0, code: 'ConnectionFailure' }));
    expect(await host.mendLost(FOUND)).toMatchObject({
      refused: expect.stringContaining('Some of the formulas may be mended') as string,
    });
  });

  test('that cannot look says why', async () => {
    const { host, workbook } = open();
    workbook.failures = [{ batch: 2, action: 0, code: 'ResponsePayloadSizeLimitExceeded' }];
    expect(await host.findLost()).toEqual({
      refused:
        'That was more than Excel takes or gives at once. The workbook is as it was. Close other large workbooks, or try in a new workbook.',
    });
  });
});

describe('large workbooks', () => {
  test('are read in parts that Excel gives at once', async () => {
    const { host, workbook, first } = open();
    first.cells.set('A1', 1).set('Z9999', LOST);
    const cells = cellsOf(await host.findLost());
    expect(cells.map(({ cell }) => cell)).toEqual(['C3', 'Z9999', 'AA7']);
    const read = workbook.batches.slice(2).map(({ ObjectPaths }) =>
      Object.values(ObjectPaths)
        .filter(({ Name }) => Name === 'GetRangeByIndexes')
        .map(({ ArgumentInfo }) => (ArgumentInfo?.Arguments ?? []) as number[])
        .reduce((sum, [, , rows = 0, columns = 0]) => sum + rows * columns, 0),
    );
    expect(read.length).toBeGreaterThan(4);
    expect(Math.max(...read)).toBeLessThanOrEqual(50_000);
  });

  test('are mended a part at a time', async () => {
    const { host, workbook, first } = open();
    for (let row = 1; row <= 1200; row++) first.cells.set(`H${row}`, LOST);
    const { length } = cellsOf(await host.mendLost(cellsOf(await host.findLost())));
    expect(length).toBe(1202);
    expect([...first.cells.values()].filter((cell) => cell === LOST)).toEqual([]);
    expect(workbook.batches.length).toBe(3 + 3 + 2 + 2 * 3 + 2);
  });
});
