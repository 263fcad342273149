import { describe, expect, test } from 'vitest';
import { LIGHTS, openExcel, sheetOf } from './support/laid';
import { HOST_FILES, type HostFile } from './support/office-host';

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

describe.each(HOST_FILES)('a copy of the sheet in view, through %s,', (file) => {
  test('holds values in the place of formulas, and the original is untouched', async () => {
    const { host, workbook, original, held } = await open(file);
    expect(await host.copyValues()).toEqual({
      done: `“${NAME}” holds the values as they are now, without formulas or charts. Look it over before you hand it on.`,
    });
    const copy = sheetOf(workbook, NAME);
    const wanted = Object.entries(held).map(([at, cell]) => [at, isFormula(cell) ? 12.5 : cell]);
    expect(wanted.some(([, cell]) => cell === 12.5)).toBe(true);
    expect(Object.fromEntries(copy.cells)).toEqual(Object.fromEntries(wanted));
    expect(Object.fromEntries(original.cells)).toEqual(held);
    expect(workbook.log.filter((line) => line.startsWith(`[${LIGHTS.name}]`))).toEqual([]);
    expect(workbook.active).toBe(copy);
  });

  test('keeps formats, widths and the missing grid lines', async () => {
    const { host, workbook, original } = await open(file);
    await host.copyValues();
    const copy = sheetOf(workbook, NAME);
    expect(copy.formats.get('B8')).toBe(original.formats.get('B8'));
    for (const at of ['A1', 'B2', 'C1']) {
      const { 'Format.RowHeight': _height, ...looks } = original.looks.get(at) ?? {};
      expect(copy.looks.get(at)).toEqual(looks);
    }
    expect(copy.item.properties.Gridlines).toBe(false);
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

  test('that breaks off anywhere leaves the workbook as it was', async () => {
    const whole = await open();
    await whole.host.copyValues();
    const batches = whole.workbook.batches.slice(whole.start);
    expect(batches.length).toBe(3);
    const { host, workbook, held, original } = await open();
    for (const [i, { Actions }] of batches.entries())
      for (const action of [0, 3, Actions.length - 1]) {
        workbook.failures = [{ batch: workbook.batches.length + 1 + i, action, code: 'AccessDenied' }];
        expect(await host.copyValues(), `batch ${i}, action ${action}`).toMatchObject({
          refused: expect.stringMatching(/protected.* The workbook is as it was\./) as string,
        });
        expect(workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1', LIGHTS.name]);
        workbook.active = original;
      }
    expect(Object.fromEntries(original.cells)).toEqual(held);
  });
});
