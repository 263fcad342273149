import { expect, test } from 'vitest';
import { withValues } from '../../src/book/cells';
import type { BookSheet } from '../../src/book/book';
import { clientBook } from '../../src/sheets/clientPage';
import { layout } from '../../src/sheets/layout';
import type { TemplateTable } from '../../src/sheets/template';
import { templateOf, typedOver } from '../sheets/support';
import { together } from '../sheets/together';

/**
 * The estimate of “Slate & Glaze” as a person makes it: what is owned in Heads, the plan of the pops, the fleet, the estimate
 * and the client’s page, each inserted beside those before it. The heads have become dearer, the set wants two seconds from pop
 * to pop, and the estimate takes what it can from the other sheets.
 */
test('from Heads to the client’s page, to the cent', async () => {
  const [plan, page] = [templateOf('pops-plan'), templateOf('client-page')];
  const demo = templateOf('estimate');
  const { rows } = layout(demo).tables.get('Prices') as TemplateTable;
  const fromFleet = rows.map(([name = null, by = null, price = null, many = null, ...more]) => {
    const isTaken = name === 'Birch 1200' || name === 'Hazel 400';
    return [name, by, ...(isTaken ? [null, null] : [price, many]), ...more];
  });
  const estimate = typedOver(demo, {}, { Prices: fromFleet });
  const templates = [templateOf('heads'), plan, templateOf('fleet-compare'), estimate, page];
  const book = await together(templates.map((template) => ({ template })));
  const [asked, read] = [book.form(3, estimate), book.form(4, page)];
  await book.type('Models', 'Rate', 2, 57.5);
  await book.form(1, plan).type('gap', 2);

  // A frame is three pops, two seconds apart: the plan’s heads are ready again 6 s after the first.
  // Vessels: 4 × (95 + 2 × 25) + 12 × 6 × 6/60 = 587.2 min; pour 150 + 2 × 40 + 3 × 40 × 15/60 = 260; prints
  // 60 + 5 × 5 + 12 × 8/60 = 86.6. With 90 and 60 to build and strike: 933.8 + 150 = 1083.8 min.
  expect(asked.cell('minutesTold')).toBe(1083.8);
  // ⌈1083.8/420⌉ = 3 days, or 2 with (1083.8 − 840)/2 = 121.9 min more: 2 × (120 × 1.5 + 1.9 × 2)/60 = 6.126667 h are paid.
  expect(['manyTold', 'fewTold', 'overTold'].map(asked.cell)).toEqual([3, 2, 121.9]);
  // Hire a day: 38 + 57.5 + 2 × 22 + 90 = 229.5, the Hazels two as Fleet compare has it. Post 9 h × 60, licence 1200,
  // expenses 148.37: 1888.37. Three days: 3 × (2100 + 229.5) + 1888.37.
  expect(asked.cell('manyCost')).toBe(8876.87);
  // Two: 4659 + 1888.37, and overtime 112.5 × 6.126667 = 689.25, 40 × … = 245.07, 50 × … = 306.33.
  expect(asked.cell('fewCost')).toBe(7788.02);
  // Crew 1800 + 689.25, 640 + 245.07, 800 + 306.33; studio 2 × 480; hire 76, 115, 88 and 180, a quarter more.
  expect(book.column('Prices', 'Amount').slice(0, 11)).toEqual([
    2489.25, 885.07, 1106.33, 960, 95, 143.75, 110, 225, 540, 1200, 148.37,
  ]); // prettier-ignore
  // At 19 %: 4480.65 + 960 + 573.75 + 540 = 6554.40, less 5 % 6226.68, tax 1183.0692; licence 1140, tax 79.80; expenses 148.37,
  // tax 13.3533. Before tax 7515.05, tax 1276.22.
  expect(book.column('Taxes', 'Tax').slice(0, 3)).toEqual([1183.07, 13.35, 79.8]);

  // The client reads what was asked, to the cent; half of 8791.27 is 4395.635.
  const sums = ['clientNet', 'clientTax', 'clientPays', 'clientDeposit'];
  expect(sums.map(read.cell)).toEqual(['EUR 7,515.05', 'EUR 1,276.22', 'EUR 8,791.27', 'EUR 4,395.64']);
  // 751505 × 587.2/933.8 = 472567.7 cents, × 260/933.8 = 209243.2 and × 86.6/933.8 = 69694.1: the cent left goes to the vessels.
  const prices = ['EUR 4,725.68', 'EUR 2,092.43', 'EUR 696.94'];
  expect(book.column('ClientShots', 'Price').slice(0, 3)).toEqual(prices);
  expect(book.errors()).toEqual([]);

  const values = book.values(4);
  const made = clientBook(withValues(book.plans[4] as BookSheet, (row, at) => values[row]?.[at] ?? null));
  const shown =
    'book' in made ? made.book.sheets.flatMap(({ cells }) => cells.map(({ value }) => value)) : [];
  expect(shown).toEqual(expect.arrayContaining(['EUR 8,791.27', ...prices, '2026-06-15', '2026-07-15']));
  expect(shown.join('\n')).not.toMatch(/Birch|Photographer|57\.5|143\.75|1083|overtime|margin/i);
  book.dispose();
});
