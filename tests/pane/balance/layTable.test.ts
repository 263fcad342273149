import { describe, expect, test } from 'vitest';
import { makePlan } from '../../../src/sheets/makePlan';
import { faults } from '../../../src/sheets/checkTemplate';
import type { Template } from '../../../src/sheets/template';
import { balanceHeads } from '../../../src/exposure/balance/heads/balanceHeads';
import { finished } from '../../../src/exposure/balance/heads/search';
import { isFail } from '../../../src/exposure/core/result';
import type { Block } from '../../../src/pane/balance/block';
import { lookUpModels, lookUpSet } from '../../../src/pane/balance/known';
import { balanceSheet, readingIn } from '../../../src/pane/balance/layTable';
import { readTable } from '../../../src/pane/balance/readTable';

/** The table of a sheet as it is laid, as a host would read it. */
function laid(template: Template): Block {
  const { sheet } = makePlan(template, { filled: true, sheets: [], tables: [], names: [] });
  const area = sheet.tables[0]?.area;
  if (!area) throw new Error('the sheet has no table');
  const cells = Array.from({ length: area.rows }, (_, r) =>
    Array.from({ length: area.columns }, (__, c) => {
      const cell = sheet.cells.find(({ row, column }) => row === area.row + r && column === area.column + c);
      return { value: cell?.value ?? '', isFormula: cell?.formula !== undefined };
    }),
  );
  return { sheet: sheet.name, row: area.row, column: area.column, cells };
}

/** A workbook that has these columns, by their references. */
const workbook = (columns: Readonly<Record<string, readonly unknown[]>>) => (references: readonly string[]) =>
  Promise.resolve(references.map((reference) => columns[reference]?.map((value) => [value])));

describe('the table that is laid', () => {
  test('makes sense as a sheet, and the demo job can be balanced as it stands', () => {
    const template = balanceSheet(undefined);
    expect(faults(template)).toEqual([]);
    const read = readTable(laid(template), undefined, 1);
    if ('faults' in read) throw new Error(read.faults.join(' '));
    expect(read.heads).toHaveLength(3);
    expect(read.points.map(({ name }) => name)).toEqual(['Vessel', 'Bowl', 'Rim of the jug', 'Slate behind']);
    const answer = finished(balanceHeads(read.points.map(({ metered }) => metered), read.heads.map(({ head }) => head))); // prettier-ignore
    if (isFail(answer)) throw new Error(answer.message);
    expect(answer.isLeft).toBe(false);
    expect(answer.after.worst).toBeLessThan(answer.before.worst);
  });

  test('has the lights that Lights on set knows, their powers and limits, and the point they were metered at', async () => {
    const known = await lookUpSet(
      workbook({
        'Lights[Head]': ['Alder 600', 'Hazel 400', 'Hazel 400', 'Room', ''],
        'Lights[Part]': ['key', 'rim', 'accent', 'ambient', ''],
        'Lights[Power]': ['1/2', '25%', '12.5%', '', ''],
        'Lights[Reading]': [16, 11, '11', 2, ''],
        'Lights[Tenths]': [5, 3, 0, 0, ''],
        'Lights[Most]': [600, 400, 400, '', ''],
        'Lights[Least]': [9.375, 6.25, 6.25, '', ''],
        'Lights[Step]': ['0.1', '0.1', '0.1', '', ''],
        'Lights[Scale]': ['fraction', 'percent', 'percent', '', ''],
        'Lights[Top]': ['', '', '', '', ''],
        target: ['f/32 +0.1'],
      }),
      readingIn,
    );
    expect(known?.from).toBe('Lights on set');
    const template = balanceSheet(known);
    expect(faults(template)).toEqual([]);
    const read = readTable(laid(template), undefined, 1);
    if ('faults' in read) throw new Error(read.faults.join(' '));
    expect(read.heads.map(({ name }) => name)).toEqual(['Alder 600', 'Hazel 400 rim', 'Hazel 400 accent']);
    expect(read.heads.map(({ head }) => head.metered)).toEqual(
      [300, 100, 50].map((power) => expect.closeTo(power, 6)),
    );
    const [subject] = read.points;
    // f/16 and five tenths: 256·2^0.5; f/2 of the room: 4; f/32 and a tenth
    expect(subject?.metered.heads[0]?.likely).toBeCloseTo(256 * Math.SQRT2, 6);
    expect(subject?.metered.ambient.likely).toBeCloseTo(4, 9);
    expect(subject?.metered.target).toBeCloseTo(32 * 2 ** 0.05, 6);
    expect(read.points).toHaveLength(1);
  });

  test('takes Pops plan where there is no Lights on set, and headings that a table can have', async () => {
    const columns = {
      'Plan[Head]': ['Küche: 1/2', 'Wanted', 'Wanted'],
      'Plan[Part]': ['key', '', ''],
      'Plan[Power]': ['100', '100', '100'],
    };
    const known = await lookUpSet(workbook(columns), readingIn);
    expect(known?.from).toBe('Pops plan');
    const template = balanceSheet(known);
    expect(faults(template)).toEqual([]);
    const headings = laid(template)
      .cells[0]?.map(({ value }) => value)
      .slice(7, 10);
    expect(headings).toEqual(['K che 1 2', 'Wanted 2', 'Wanted 3']);
    expect(await lookUpSet(workbook({}), readingIn)).toBeUndefined();
  });
});

test('what Heads knows is looked up column by column, and nothing where it is not there', async () => {
  const look = workbook({
    'Models[Head]': ['Alder 600', '', 'Alder 600'],
    'Models[Most]': [600, '', 1],
    'Models[Least]': [9.375, '', 1],
    'Models[Step]': ['0.1', '', '1'],
    'Models[Scale]': ['fraction', '', 'energy'],
  });
  const models = await lookUpModels(look);
  expect([...(models ?? [])]).toEqual([
    ['alder 600', { most: 600, least: 9.375, step: '0.1', scale: 'fraction', top: undefined }],
  ]);
  expect(await lookUpModels(workbook({}))).toBeUndefined();
});
