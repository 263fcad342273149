import { describe, expect, test } from 'vitest';
import { withValues } from '../../src/book/cells';
import { isInput, layout } from '../../src/sheets/layout';
import { hasPrices, nextEstimate } from '../../src/sheets/nextEstimate';
import { calculated, templateOf, typedOver } from './support';

const estimate = templateOf('estimate');

/** The demo with other terms and prices, as it stands in a workbook. */
async function present() {
  const prices = [
    ['Crew', 'day', 901.5, 2, 'yes', 'no', 21],
    [null, null, null, null, null, null, null],
    ['Heads', 'hire', 33, 4, 'no', 'yes', 21],
  ];
  const form = { currency: 'CLF', plus: 31, longest: 555, discount: 7 };
  const template = typedOver(estimate, form, { Prices: prices, Currencies: [['EUR', 2], ['CLF', 4]] }); // prettier-ignore
  const { plan, values } = await calculated(template);
  return { plan, read: withValues(plan, values) };
}

describe('an estimate for another job', () => {
  test('takes prices, currencies and terms over, and no shot, date or discount', async () => {
    const { read } = await present();
    expect(hasPrices(read)).toBe(true);
    const next = nextEstimate(estimate, read);
    const sheet = await calculated(next);
    const column = (table: string, name: string) =>
      sheet.column(table, name).filter((value) => value !== null);
    expect(column('Prices', 'Line')).toEqual(['Crew', 'Heads']);
    expect(column('Prices', 'Price')).toEqual([901.5, 33]);
    expect(column('Prices', 'How many')).toEqual([2, 4]);
    expect(column('Prices', 'Tax')).toEqual([21, 21]);
    expect(column('Currencies', 'Code')).toEqual(['EUR', 'CLF']);
    expect(['currency', 'plus', 'longest', 'contract'].map((id) => sheet.cell(id))).toEqual([
      'CLF',
      31,
      555,
      8,
    ]);
    expect(['discount', 'dated', 'validUntil', 'variantOf', 'moreOf'].map((id) => sheet.cell(id))).toEqual([
      null,
      null,
      null,
      null,
      null,
    ]);
    expect(column('Shots', 'Shot')).toEqual([]);
    // nothing of the demo's plan, either, and something to type in
    expect(layout(next).tables.get('FromPlan')?.rows).toEqual([['Ready again, s', null]]);
    expect(next.blocks.every((block) => block.kind === 'form' || block.rows.length > 0)).toBe(true);
    expect(sheet.errors).toEqual([]);
  });

  test('finds what was typed where rows were added above it', async () => {
    const { read } = await present();
    const lower = <T extends { readonly row: number }>(one: T): T => ({ ...one, row: one.row + 2 });
    const moved = {
      cells: read.cells.map(lower),
      tables: read.tables.map((table) => ({ ...table, area: lower(table.area) })),
    };
    expect(nextEstimate(estimate, moved)).toEqual(nextEstimate(estimate, read));
  });

  test('has no error and no formula of the other in its inputs', async () => {
    const { read } = await present();
    const cells = read.cells.map((cell) =>
      cell.value === 901.5 ? { ...cell, value: { error: '#REF!' as const }, formula: '=A1' } : cell,
    );
    const next = nextEstimate(estimate, { ...read, cells });
    const typed = next.blocks.flatMap((block) =>
      block.kind === 'form' ? block.fields.filter(isInput).map(({ value }) => value) : block.rows.flat(),
    );
    expect(typed.filter((value) => typeof value === 'object' && value !== null)).toEqual([]);
    expect(layout(next).tables.get('Prices')?.rows[0]).toEqual(['Crew', 'day', null, 2, 'yes', 'no', 21]);
  });
});
