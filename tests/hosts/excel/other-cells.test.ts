import { describe, expect, test } from 'vitest';
import type { Mended, MendedCell } from '../../../src/pane/host';
import { blockAt } from './support/a1';
import { openExcel, sheetOf } from './support/laid';
import type { Ways } from './support/ways';

const LOST = '=_xldudf_SWEEP_STOPDIFF(8,11)';
const MENDED = '=SWEEP.STOPDIFF(8,11)';
const FORMULA = '=SWEEP.STOPDIFF(8,11)';
const FILLS: readonly Ways['fillsColumns'][] = ['never', 'formulas', 'everything'];

function open(content: Readonly<Record<string, unknown>>, fills: Ways['fillsColumns']) {
  const opened = openExcel();
  const sheet = sheetOf(opened.workbook, 'Sheet1');
  opened.workbook.ways.fillsColumns = fills;
  for (const [at, cell] of Object.entries({ A1: 'Head', B1: 'Stops', ...content })) sheet.cells.set(at, cell);
  sheet.addTable(blockAt('A1:B4'), 'Heads');
  return { ...opened, sheet, held: (): unknown => Object.fromEntries(sheet.cells) };
}
const cellsOf = (outcome: Mended): readonly MendedCell[] => ('cells' in outcome ? outcome.cells : []);
const text = (outcome: object): string =>
  Object.values(outcome).find((one) => typeof one === 'string') as string;

describe.each(FILLS)('where Excel fills columns: %s, a repair in a table', (fills) => {
  test('of a column that differs from row to row touches no row, and says where', async () => {
    const on = open({ B2: LOST, B3: '=SUM(A2:A4)', B4: 7 }, fills);
    const before = on.held();
    const outcome = await on.host.mendLost(cellsOf(await on.host.findLost()));
    expect(on.held()).toEqual(before);
    expect(text(outcome)).toContain('Left as they are, because other rows of their table’s column hold something else: B2 on “Sheet1”.');
  }); // prettier-ignore
  test('of a column that is the same in each row mends all of them, and takes them back', async () => {
    const on = open({ B2: LOST, B3: LOST, B4: LOST }, fills);
    const before = on.held();
    const outcome = await on.host.mendLost(cellsOf(await on.host.findLost()));
    expect(outcome).toMatchObject({ done: '3 cells mended.' });
    expect(on.held()).toMatchObject({ B2: MENDED, B3: MENDED, B4: MENDED });
    expect(await on.host.takeBack(cellsOf(outcome))).toEqual({ done: '3 cells as before the repair.' });
    expect(on.held()).toEqual(before);
  });
  test('of a column with rows that follow each other counts them as the same', async () => {
    const row = (name: string, n: number): string => `=${name}(A${n},$D$1)`;
    const on = open(
      { B2: row('_xldudf_SWEEP_STOPDIFF', 2), B3: row('SWEEP.STOPDIFF', 3), B4: row('_xldudf_SWEEP_STOPDIFF', 4) },
      fills,
    ); // prettier-ignore
    await on.host.mendLost(cellsOf(await on.host.findLost()));
    expect(on.held()).toMatchObject(
      Object.fromEntries([2, 3, 4].map((n) => [`B${n}`, row('SWEEP.STOPDIFF', n)])),
    );
  });
  test('taken back where a row was whole all along leaves that row', async () => {
    const on = open({ B2: LOST, B3: MENDED, B4: LOST }, fills);
    const outcome = await on.host.mendLost(cellsOf(await on.host.findLost()));
    await on.host.takeBack(cellsOf(outcome));
    expect(on.held()).toMatchObject({ B3: MENDED });
  });
});

test.each(['never', 'formulas'] as const)(
  'a column that is longer than what is written at once is mended whole and taken back, where Excel fills columns: %s',
  async (fills) => {
    const on = openExcel();
    const sheet = sheetOf(on.workbook, 'Sheet1');
    on.workbook.ways.fillsColumns = fills;
    sheet.cells.set('A1', 'Head').set('B1', 'Stops');
    for (let row = 2; row <= 502; row++) sheet.cells.set(`B${row}`, LOST);
    sheet.addTable(blockAt('A1:B502'), 'Heads');
    const outcome = await on.host.mendLost(cellsOf(await on.host.findLost()));
    expect(outcome).toMatchObject({ done: '501 cells mended.' });
    expect([...sheet.cells.values()].filter((cell) => cell === MENDED)).toHaveLength(501);
    expect(await on.host.takeBack(cellsOf(outcome))).toEqual({ done: '501 cells as before the repair.' });
    expect([...sheet.cells.values()].filter((cell) => cell === LOST)).toHaveLength(501);
  },
);

describe.each(FILLS)('where Excel fills columns: %s, a formula put into a cell of a table', (fills) => {
  test.each([
    ['holds values', { B2: 1, B3: 2 }],
    ['holds other formulas', { B2: '=1+1', B3: '=A3' }],
    ['holds one value', { B2: 'key' }],
  ])('whose column %s touches no other', async (_what, content) => {
    const on = open(content, fills);
    const before = on.held() as object;
    on.workbook.select('Sheet1', 'B4');
    const outcome = await on.host.putFormula(FORMULA);
    expect(on.held()).toEqual(before);
    expect(text(outcome)).toContain('Excel may fill it into the other rows of its table’s column');
  });
  test('whose column is empty stays alone', async () => {
    const on = open({}, fills);
    on.workbook.select('Sheet1', 'B3');
    expect(await on.host.putFormula(FORMULA)).toEqual({ done: 'The formula is in B3.' });
    expect(on.held()).toEqual({ A1: 'Head', B1: 'Stops', B3: FORMULA });
  });
});

describe('a repair', () => {
  /** Lost names on a sheet that can be written, and on one that cannot. */
  function twoSheets() {
    const opened = openExcel();
    const [first, second] = [sheetOf(opened.workbook, 'Sheet1'), opened.workbook.addSheet("Ann's set, the very long name 3")]; // prettier-ignore
    first.cells.set('A1', LOST).set('A2', LOST).set('A3', LOST);
    second.cells.set('B1', LOST).set('B2', LOST);
    return { ...opened, first, second };
  }
  test('leaves a protected sheet and mends the others', async () => {
    const on = twoSheets();
    on.first.isProtected = true;
    const outcome = await on.host.mendLost(cellsOf(await on.host.findLost()));
    expect(text(outcome)).toBe(
      '2 cells mended. Left as they are, because they are locked: A1 on “Sheet1”, A2 on “Sheet1”, A3 on “Sheet1”.',
    );
    expect(on.second.cells.get('B2')).toBe(MENDED);
    expect(on.first.cells.get('A1')).toBe(LOST);
  });
  test('mends the cells of a protected sheet that are free', async () => {
    const on = twoSheets();
    on.first.isProtected = true;
    on.first.unlocked.add('A2');
    await on.host.mendLost(cellsOf(await on.host.findLost()));
    expect(['A1', 'A2', 'A3'].map((at) => on.first.cells.get(at))).toEqual([LOST, MENDED, LOST]);
  });
  test('leaves a part of an array and mends its neighbours', async () => {
    const on = twoSheets();
    on.first.arrays.push(blockAt('A2:C2'));
    const outcome = await on.host.mendLost(cellsOf(await on.host.findLost()));
    expect(['A1', 'A2', 'A3'].map((at) => on.first.cells.get(at))).toEqual([MENDED, LOST, MENDED]);
    expect(text(outcome)).toContain('Left as they are, because Excel refused: A2 on “Sheet1”.');
  });
  test('counts a formula as mended that Excel spells in its own way, and takes it back', async () => {
    const on = twoSheets();
    on.workbook.ways.spelling = 'at';
    const outcome = await on.host.mendLost(cellsOf(await on.host.findLost()));
    expect(text(outcome)).toBe('5 cells mended.');
    expect(await on.host.takeBack(cellsOf(outcome))).toEqual({ done: '5 cells as before the repair.' });
    expect([...on.first.cells.values(), ...on.second.cells.values()]).toEqual(Array(5).fill(LOST));
  });
});
