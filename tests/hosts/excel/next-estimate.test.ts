import { expect, test } from 'vitest';
import { address, parseAddress } from '../../../src/formula/address';
import { layout, tableTop } from '../../../src/sheets/layout';
import type { TemplateTable } from '../../../src/sheets/template';
import { templateOf } from '../../sheets/support';
import { openExcel, sheetOf } from './support/laid';

const estimate = templateOf('estimate');
const prices = layout(estimate).tables.get('Prices') as TemplateTable;
const left = parseAddress(prices.at)?.column ?? 0;
/** A cell of the prices, by its row below the headings. */
const cell = (row: number, name: string): string =>
  address({
    row: tableTop(prices) + row,
    column: left + prices.columns.findIndex(({ id }) => id === name),
  });
const place = (id: string): string => address(layout(estimate).cells.get(id)?.place ?? { row: 0, column: 0 });

test('an estimate with the prices of this one is laid beside it, and this one stays as it is', async () => {
  const { host, workbook } = openExcel();
  expect(await host.newEstimate()).toEqual({
    refused: 'No sheet of this workbook is an Estimate. Nothing was changed. Insert “Estimate” first.',
  });
  await host.insertSheet(estimate.id, true);
  const first = sheetOf(workbook, 'Estimate');
  first.cells.set(cell(1, 'Price'), 947.5);
  first.cells.set(place('plus'), 33);
  const held = Object.fromEntries(first.cells);
  const outcome = await host.newEstimate();
  expect(outcome).toMatchObject({ done: expect.any(String) });
  expect('done' in outcome && outcome.done).toContain(
    '“Estimate (2)” is inserted. Start in B17. It has the prices, currencies and terms of “Estimate”: type its shots and dates.',
  );
  expect(Object.fromEntries(first.cells)).toEqual(held);
  const second = sheetOf(workbook, 'Estimate (2)');
  expect(second.cells.get(cell(1, 'Line'))).toBe('Photographer');
  expect(second.cells.get(cell(1, 'Price'))).toBe(947.5);
  expect(second.cells.get(place('plus'))).toBe(33);
  expect(second.cells.get(place('dated')) ?? '').toBe('');
});
