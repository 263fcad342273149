import { describe, expect, test } from 'vitest';
import type { Item } from './support/item';
import { FULL } from '../../full';
import { LIGHTS, openExcel, sheetOf } from './support/laid';
import { hostFiles, type HostFile } from './support/office-host';

/** The demo job in the workbook, in view; every formula shows 12.5. */
async function open(file?: HostFile) {
  const opened = openExcel(file && { file });
  await opened.host.insertSheet(LIGHTS.id, true);
  opened.workbook.onFormula = () => 12.5;
  opened.workbook.log.length = 0;
  const start = opened.workbook.batches.length;
  const original = sheetOf(opened.workbook, LIGHTS.name);
  return { ...opened, start, original, held: Object.fromEntries(original.cells) };
}
const isFormula = (cell: unknown): boolean => typeof cell === 'string' && cell.startsWith('=');
const NAME = `${LIGHTS.name} values`;
/** The request in which Excel makes the copy, counted from 0. */
const COPIED = 2;

describe.each(hostFiles(FULL))('a copy of the sheet in view, through %s,', (file) => {
  test('holds values in the place of formulas, and the original is untouched', async () => {
    const { host, workbook, original, held } = await open(file);
    expect(await host.copyValues()).toMatchObject({
      done: `“${NAME}” holds the values as they are now, without formulas. Looks, charts and print set-up came along. Its tables are plain cells now. Excel has emptied its undo list. Look the sheet over before you hand it on.`,
    });
    const copy = sheetOf(workbook, NAME);
    const wanted = Object.entries(held).map(([at, cell]) => [at, isFormula(cell) ? 12.5 : cell]);
    expect(wanted.some(([, cell]) => cell === 12.5)).toBe(true);
    expect(Object.fromEntries(copy.cells)).toEqual(Object.fromEntries(wanted));
    expect(Object.fromEntries(original.cells)).toEqual(held);
    expect(workbook.log.filter((line) => line.startsWith(`[${LIGHTS.name}]`))).toEqual([
      `[${LIGHTS.name}].Copy() = "${LIGHTS.name} (2)"`,
    ]);
    expect(workbook.active).toBe(copy);
  });

  test('keeps everything else: looks, sizes, merged cells, rules, charts and print set-up', async () => {
    const { host, workbook, original } = await open(file);
    await host.copyValues();
    const copy = sheetOf(workbook, NAME);
    expect(copy.formats).toEqual(original.formats);
    expect(copy.looks).toEqual(original.looks);
    expect(copy.looks.get('A1')).toHaveProperty('Format.RowHeight');
    expect(copy.looks.get('B1')).toHaveProperty('Format.ColumnWidth');
    expect(copy.merges.length).toBeGreaterThan(0);
    expect(copy.merges).toEqual(original.merges);
    expect(copy.validation).toEqual(original.validation);
    expect(copy.item.properties.Gridlines).toBe(false);
    expect(copy.charts.map((chart) => chart.properties.Type)).toEqual(['ColumnClustered']);
    const layout = (sheet: typeof copy): Item | undefined => sheet.item.children.get('PageLayout');
    expect(layout(copy)?.properties).toMatchObject({ Orientation: 'Landscape' });
    expect(layout(copy)?.properties).toEqual(layout(original)?.properties);
    expect(layout(copy)?.calls).toEqual(layout(original)?.calls);
  });

  test('has no table, whose columns would bring the formulas back', async () => {
    const { host, workbook, original } = await open(file);
    await host.copyValues();
    expect(sheetOf(workbook, NAME).tables).toEqual([]);
    expect(original.tables.map(({ name }) => name)).toEqual(['Turn', 'Lights']);
  });
});

describe('a copy', () => {
  test('gets a number where its name is taken', async () => {
    const { host, workbook } = await open();
    await host.copyValues();
    workbook.active = sheetOf(workbook, LIGHTS.name);
    expect(await host.copyValues()).toMatchObject({
      done: expect.stringContaining(`“${NAME} (2)”`) as string,
    });
  });

  test('of a sheet with a long name says what it is', async () => {
    const { host, workbook } = openExcel();
    const long = workbook.addSheet('Slate & Glaze, tall vessels 123');
    long.cells.set('A1', 1);
    workbook.active = long;
    expect(await host.copyValues()).toMatchObject({
      done: expect.stringContaining('“Slate & Glaze, tall values”') as string,
    });
  });

  test('of an empty sheet is refused', async () => {
    const { host, workbook } = openExcel();
    expect(await host.copyValues()).toEqual({
      refused: 'The sheet in view is empty. Nothing was copied. Go to a sheet with something on it.',
    });
    expect(workbook.log).toEqual([]);
  });

  test('holds the values that a list spills into', async () => {
    const { host, workbook, original } = await open();
    original.cells.set('T1', '=SWEEP.LIGHTSHARE({16;11})');
    original.spilled.set('T2', 0.3);
    await host.copyValues();
    const { cells } = sheetOf(workbook, NAME);
    expect([cells.get('T1'), cells.get('T2')]).toEqual([12.5, 0.3]);
  });

  test('costs the undo list, and the pane can say so before', () => {
    const { copyCosts } = openExcel().host;
    expect(copyCosts).toMatch(/^Excel empties its undo list for it\./);
    expect(copyCosts).toMatch(/ask others whether they trust Sweeptable: hand on the copy alone/);
  });

  test.each([
    ['puts a value elsewhere', (cells: Map<string, unknown>) => cells.set('A1', 'another line')],
    ['leaves a formula', (cells: Map<string, unknown>) => cells.set('Z1', '=1+1')],
  ])('in which Excel %s is taken away again', async (_what, spoil) => {
    const { host, workbook, original, held } = await open();
    original.cells.set('Z1', 'so that Z1 is in use');
    workbook.onMethod.CopyFrom = () => void spoil(workbook.sheets[2]?.cells ?? new Map<string, unknown>());
    expect(await host.copyValues()).toEqual({
      refused:
        'Excel did not copy every value as it is. The workbook is as it was. Show all rows of the sheet, then try again.',
    });
    expect(workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1', LIGHTS.name]);
    expect(Object.fromEntries(original.cells)).toEqual({ ...held, Z1: 'so that Z1 is in use' });
  });

  test('that breaks off anywhere leaves the workbook as it was', async () => {
    const whole = await open();
    await whole.host.copyValues();
    const batches = whole.workbook.batches.slice(whole.start);
    expect(batches.length).toBe(6);
    // The last only marks the copy.
    batches.pop();
    const { host, workbook, held, original } = await open();
    for (const [i, { Actions }] of batches.entries())
      // Once Excel has the copy and does not tell which it is, nobody knows whose it is: that is tried below.
      for (const action of i === COPIED ? [0] : [0, 3, Actions.length - 1]) {
        workbook.failures = [{ batch: workbook.batches.length + 1 + i, action, code: 'AccessDenied' }];
        expect(await host.copyValues(), `batch ${i}, action ${action}`).toMatchObject({
          refused: expect.stringMatching(/protected.* The workbook is as it was\./) as string,
        });
        expect(workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1', LIGHTS.name]);
        workbook.active = original;
      }
    expect(Object.fromEntries(original.cells)).toEqual(held);
  });

  test('that breaks off after Excel made it, before it told which it is, may be left: that is said, and no sheet goes', async () => {
    const { host, workbook, start } = await open();
    workbook.beforeBatch = (number) => {
      if (number === start + 1 + COPIED) workbook.addSheet(`${LIGHTS.name} (2)`).cells.set('A1', 'theirs');
    };
    const { Actions } = (await open().then(async (whole) => {
      await whole.host.copyValues();
      return whole.workbook.batches[whole.start + COPIED];
    })) as { Actions: unknown[] };
    workbook.failures = [{ batch: start + 1 + COPIED, action: Actions.length - 1, code: 'RequestAborted' }];
    expect(await host.copyValues()).toMatchObject({
      refused: expect.stringContaining(
        `A half-made copy of “${LIGHTS.name}” may be left in the workbook: delete it.`,
      ) as string,
    });
    expect(sheetOf(workbook, `${LIGHTS.name} (2)`).cells.get('A1')).toBe('theirs');
    expect(workbook.sheets).toHaveLength(4);
  });

  test('that Excel tells no more of is not offered back', async () => {
    const { host, workbook } = await open();
    workbook.failures = [{ batch: workbook.batches.length + 6, action: 0, code: 'GeneralException' }];
    const outcome = await host.copyValues();
    expect(outcome).toMatchObject({ done: expect.stringContaining(NAME) as string });
    expect(outcome).not.toHaveProperty('takeBack');
  });

  test('that cannot be taken away says that it may be left', async () => {
    const { host, workbook } = await open();
    const next = workbook.batches.length;
    workbook.failures = [
      { batch: next + 4, action: 3, code: 'RequestAborted' },
      { batch: next + 5, action: 0, code: 'RequestAborted' },
    ];
    expect(await host.copyValues()).toMatchObject({
      refused: expect.stringContaining(
        `A half-made copy of “${LIGHTS.name}” may be left in the workbook: delete it.`,
      ) as string,
    });
  });
});

test('a card is copied for a phone in a dark room: line by line, grey on black', async () => {
  const { workbook, host } = openExcel();
  await host.insertSheet('set-card', true);
  const original = sheetOf(workbook, 'Set card');
  const held = Object.fromEntries(original.cells);
  expect(await host.copyValues()).toMatchObject({
    done: '“Set card values” holds what the card says now, without formulas: line by line for a phone, grey on black. Excel has emptied its undo list.',
    takeBack: expect.any(Function) as unknown,
  });
  const copy = sheetOf(workbook, 'Set card values');
  expect(Object.fromEntries(original.cells)).toEqual(held);
  expect(workbook.active).toBe(copy);
  expect([copy.tables, [...copy.cells.values()].filter(isFormula)]).toEqual([[], []]);
  const values = [...copy.cells.values()];
  for (const said of ['key: Alder 600', '975 Ws', 'straw', 'Slate & Glaze, 4'])
    expect(values).toContain(said);
  expect(copy.formats.get('A1')).toBe('@');
  // four columns of 344 pixels, which are 258 points
  const widths = ['A1', 'B1', 'C1', 'D1'].map((at) => Number(copy.looks.get(at)?.['Format.ColumnWidth']));
  expect(widths.reduce((sum, width) => sum + width, 0)).toBeLessThanOrEqual(258);
  for (const at of ['A1', 'D1', 'D60']) {
    const look = copy.looks.get(at);
    expect(look).toMatchObject({ 'Format.Fill.Color': '#000000', 'Format.Font.Color': '#c8c8c8' });
    expect(Number(look?.['Format.Font.Size'])).toBeGreaterThanOrEqual(10.5);
  }
});

test('a card whose formulas Excel does not know yet is not copied', async () => {
  const { workbook, host } = openExcel();
  await host.insertSheet('set-card', true);
  workbook.onFormula = () => '#NAME?';
  expect(await host.copyValues()).toMatchObject({
    refused: expect.stringContaining('shows #NAME?') as string,
  });
  expect(workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1', 'Set card']);
});
