import { describe, expect, test } from 'vitest';
import { hireCost } from '../../src/exposure/hire/hireCost';
import { isFail } from '../../src/exposure/core/result';
import { layout, tableTop } from '../../src/sheets/layout';
import { planAlone } from '../../src/sheets/makePlan';
import type { TemplateTable, TemplateValue } from '../../src/sheets/template';
import { drawn } from '../full';
import { openedBook } from './openedBook';
import { together } from './together';
import { calculated, templateOf, type Typed, typedOver, wordsBeside } from './support';

const demo = templateOf('estimate');
const { tables } = layout(demo);
const typedIn = (id: string): readonly string[] =>
  (tables.get(id) as TemplateTable).columns
    .filter(({ formula }) => formula === undefined)
    .map(({ id: column }) => column);

type Row = Readonly<Record<string, TemplateValue>>;
/** Rows of a table from what is named in them; all else is blank. */
function rowsOf(table: string, rows: readonly Row[]): TemplateValue[][] {
  const names = typedIn(table);
  for (const row of rows)
    for (const name of Object.keys(row)) if (!names.includes(name)) throw new Error(`no column ${name}`);
  return rows.map((row) => names.map((name) => row[name] ?? null));
}

/** A shot of so many minutes, to be lit once. */
const shot = (minutes: number, more: Row = {}): Row => ({
  Shot: `Shot of ${minutes}`, Setups: 1, Variants: 1, Light: minutes, Frames: 1, Seconds: 1e-9, ...more,
}); // prettier-ignore
const line = (name: string, by: string, price: number, tax: number, more: Row = {}): Row => ({
  Line: name, By: by, Price: price, Tax: tax, ...more,
}); // prettier-ignore

/** Nothing is built, struck, added or taken off: what stands in the lines is the sum. */
const PLAIN: Typed = {
  discount: null, contingency: null, deposit: null, build: null, strike: null, variantOf: null, moreOf: null,
}; // prettier-ignore

interface Wish {
  readonly form?: Typed;
  readonly shots?: readonly Row[];
  readonly prices?: readonly Row[];
}
async function sheetOf({ form = {}, shots = [shot(60)], prices = [] }: Wish) {
  const template = typedOver(
    demo,
    { ...PLAIN, ...form },
    { Shots: rowsOf('Shots', shots), Prices: rowsOf('Prices', prices) },
  );
  const sheet = await calculated(template);
  return {
    ...sheet,
    beside: (id: string) => wordsBeside(template, sheet, id),
    /** Amounts of the lines. */
    lines: () => sheet.column('Prices', 'Amount').slice(0, prices.length),
    shots: (column: string) => sheet.column('Shots', column).slice(0, shots.length),
    /** Rate, base and tax of each rate. */
    taxes: () =>
      sheet
        .column('Rates', 'Rate')
        .flatMap((rate, i) =>
          rate === '' ? [] : [[rate, sheet.column('Rates', 'Taxed')[i], sheet.column('Rates', 'Tax')[i]]],
        ),
  };
}

/**
 * Worked by hand: 4 set-ups × (95 + 2 × 25) + 12 variants × 6 frames × 3 s/60 = 583.6 min; the pour 150 + 2 × 40 +
 * 3 × 40 × 15/60 = 260 min; prints 60 + 5 × 5 + 6 × 2 × 8/60 = 86.6 min: 930.2, with build and strike 1080.2 min.
 * ⌈1080.2/420⌉ = 3 days, or 2 with (1080.2 − 840)/2 = 120.1 min of overtime each, paid 2 × (120 × 1.5 + 0.1 × 2)/60 =
 * 6.0066667 h.
 */
describe('the demo job', () => {
  test('days, and what they cost either way', async () => {
    const { cell, errors } = await calculated(demo);
    expect(cell('minutesTold')).toBeCloseTo(1080.2, 9);
    expect([cell('manyTold'), cell('fewTold'), cell('overTold'), cell('days')]).toEqual([3, 2, 120.1, 2]);
    // hire a day: 38 + 55 + 2 × 22 + 90 = 227. Post 9 h × 60 = 540, licence 1200, expenses 148.37: 1888.37
    // three days: 3 × (900 + 320 + 400 + 480 + 227) + 1888.37 = 6981 + 1888.37
    expect(cell('manyCost')).toBe(8869.37);
    // two: 2 × 2327 + 1888.37, and overtime 112.5 × 6.0066667 = 675.75, 40 × … = 240.27 (240.2667), 50 × … = 300.33
    // (300.3333): 4654 + 1888.37 + 1216.35
    expect(cell('fewCost')).toBe(7758.72);
    expect(cell('daysHow')).toBe('a day less with overtime: cheaper by 1110.65');
    expect(errors).toEqual([]);
  });
  test('lines, discount, tax and all in all', async () => {
    const sheet = await calculated(demo);
    const { cell, column } = sheet;
    // crew 1800 + 675.75, 640 + 240.27, 800 + 300.33; studio 960; hire 76, 110, 88 and 180 with a quarter added
    expect(column('Prices', 'Amount').slice(0, 11)).toEqual([
      2475.75, 880.27, 1100.33, 960, 95, 137.5, 110, 225, 540, 1200, 148.37,
    ]); // prettier-ignore
    // at 19 %: 4456.35 + 960 + 567.5 + 540 = 6523.85; with the licence 7723.85; 5 % of it 386.1925
    expect([cell('linesTold'), cell('discountTold'), cell('expensesTold')]).toEqual([
      7723.85, -386.19, 148.37,
    ]);
    // 38619 × 6523.85/7723.85 = 32619.04 and 5999.96: whole 32619 + 5999, the cent left goes to the licence
    // 19 % of 6523.85 − 326.19 = 6197.66: 1177.5554; 7 % of 1140: 79.80; 9 % of 148.37: 13.3533
    expect(column('Taxes', 'Tax at')).toEqual(['19 %', '9 %', '7 %', '', '']);
    expect(column('Taxes', 'Tax')).toEqual([1177.56, 13.35, 79.8, '', '']);
    // 6197.66 + 1140 + 148.37 = 7486.03; tax 1270.71
    expect([cell('beforeTax'), cell('taxTold'), cell('toPay'), cell('toPayAgain')]).toEqual([
      7486.03, 1270.71, 8756.74, 8756.74,
    ]);
    expect(cell('depositTold')).toBe(4378.37);
    // 748603 × 583.6/930.2 = 469667.50, × 260/930.2 = 209241.86, × 86.6/930.2 = 69693.64: two cents are left, for the
    // pour and the prints
    expect(column('Shots', 'Price').slice(0, 3)).toEqual([4696.67, 2092.42, 696.94]);
  });
  test('what one more costs', async () => {
    const { cell } = await calculated(demo);
    // a day: 2100 + 227 × 1.25 = 2383.75; 5 % of 7723.85 + 2383.75 = 10107.6 is 505.38, 119.19 more
    expect(cell('dayCosts')).toBe(2264.56);
    // a variant: 25 + 6 × 3/60 = 25.3 min, half of it more a day: 132.75 min of overtime, 2 × (3 + 12.75 × 2/60) = 6.85 h:
    // 112.5 × 6.85 = 770.63 (770.625), 40 × 6.85 = 274, 50 × 6.85 = 342.5: 94.88 + 33.73 + 42.17 more, and 30 of post:
    // 200.78; 5 % of 7924.63 is 396.23, 10.04 more
    expect(cell('variantCosts')).toBe(190.74);
    // a Birch: 110 × 1.25 = 137.5; 5 % of 7861.35 is 393.07 (393.0675), 6.88 more
    expect(cell('moreCosts')).toBe(130.62);
  });
});

describe('one job with the other sheets', () => {
  test('heads are hired at the rates that Heads has', () => {
    const heads = layout(templateOf('heads')).tables.get('Models') as TemplateTable;
    const given = heads.columns.filter(({ formula }) => formula === undefined).map(({ id }) => id);
    const rates = new Map(heads.rows.map((row) => [row[given.indexOf('Head')], row[given.indexOf('Rate')]]));
    const hired = (tables.get('Prices') as TemplateTable).rows.filter(([, by]) => by === 'hire');
    expect(hired).toHaveLength(4);
    for (const [name, , rate] of hired) expect(rate, String(name)).toBe(rates.get(name ?? null));
  });
  test('beside Pops plan a frame takes the time until its heads are ready', async () => {
    const book = await together([{ template: templateOf('pops-plan') }, { template: demo }]);
    expect(book.plans[1]?.tables.find(({ name }) => name === 'FromPlan')?.columns[1]?.formula).toContain(
      'Handed[Says]',
    );
    // 3 s: three pops, a second apart (see Pops plan)
    expect(book.column('FromPlan', 'Says')).toEqual([3]);
    expect(book.column('Shots', 'Minutes')[0]).toBeCloseTo(583.6, 9);
    expect(book.errors()).toEqual([]);
    book.dispose();
  });
  test('beside Fleet compare a line of hire without a price has its rate, and how many of it the job needs', async () => {
    const book = await together([{ template: templateOf('fleet-compare') }, { template: demo }]);
    const amounts = () => book.column('Prices', 'Amount').slice(4, 8);
    const how = () => book.column('Prices', 'How').slice(4, 8);
    const typed = amounts();
    expect(how()).not.toContainEqual(expect.stringContaining('Fleet'));
    const clear = (...rows: readonly number[]) =>
      book.typeAll(
        rows.flatMap((row) => ['Price', 'How many'].map((column) => ['Prices', column, row, null])),
      );
    await clear(6, 7);
    // Fleet compare has one Birch at 55 and two Hazels at 22, as they are typed in the demo
    expect(amounts()).toEqual(typed);
    expect(how().map((words) => String(words).includes(', as in Fleet compare'))).toEqual([false, true, true, false]); // prettier-ignore
    // two days of 60.25, and a quarter of that: 150.625
    await book.type('Fleet', 'Rate', 2, 60.25);
    expect(amounts()[1]).toBe(150.63);
    // what is typed holds, and that it is another is told
    await book.type('Fleet', 'Rate', 3, 95);
    expect([amounts()[3], how()[3]]).toEqual([225, '2 × 90, with mark-up, 95 a day in Fleet compare']);
    // a model that fails has no number that anybody should hire
    await clear(8);
    expect(book.column('Prices', 'Lacks')[7]).toBe('type: how many, Fleet compare has it out');
    await book.type('Prices', 'Line', 8, 'Cedar of ours');
    expect(book.column('Prices', 'Lacks')[7]).toBe(
      'type: its price, or its name as Fleet compare has it, with a rate there',
    );
    expect(book.form(1, demo).cell('toPay')).toBe('');
    book.dispose();
  });
});

/** The steps of the job “An estimate’s minutes” in tests/jobs, in one sheet. */
test('the estimate’s job gives what its steps say, in dollars', async () => {
  const sheet = await sheetOf({
    form: { currency: 'USD', discount: 5, build: 90, strike: 60 },
    shots: [
      { Shot: 'Vessels', Setups: 4, Variants: 3, Light: 95, Reset: 25, Frames: 6, Seconds: 44.1, Post: 30 },
      { Shot: 'Pour', Setups: 1, Variants: 3, Light: 150, Reset: 40, Frames: 40, Seconds: 15, Post: 40 },
      { Shot: 'Prints', Setups: 1, Variants: 6, Light: 60, Reset: 5, Frames: 2, Seconds: 8, Post: 10 },
    ],
    prices: [
      line('Photographer', 'day', 900, 19, { Overtime: 'yes' }),
      line('Assistant', 'day', 320, 19, { Overtime: 'yes' }),
      line('Stylist', 'day', 400, 19, { Overtime: 'yes' }),
      line('Studio', 'day', 480, 19),
      line('Heads', 'hire', 153, 19, { Added: 'yes' }),
      line('Post', 'post', 60, 19),
      line('Licence for use', 'job', 1200, 7),
      line('Vessels, bought in', 'expense', 148.37, 9),
    ],
  });
  expect(sheet.cell('minutesTold')).toBe(1129.52);
  // its crew: 1800 + 860.7, 640 + 306.03, 800 + 382.53
  expect(sheet.lines()).toEqual([2660.7, 946.03, 1182.53, 960, 382.5, 540, 1200, 148.37]);
  expect(sheet.taxes()).toEqual([
    [19, 6338.17, 1204.25],
    [9, 148.37, 13.35],
    [7, 1140, 79.8],
  ]);
  expect([sheet.cell('beforeTax'), sheet.cell('toPay')]).toEqual([7626.54, 8923.94]);
  // 492791.3, 202435.9 and 67426.74 cents: two cents are left, for the second and the third
  expect(sheet.shots('Price')).toEqual([4927.91, 2024.36, 674.27]);
});

describe('currencies (ISO 4217)', () => {
  test('the list has the decimals of each, as the browser’s own tables (CLDR) have them', async () => {
    const { column } = await calculated(demo);
    const codes = column('Currencies', 'Code');
    expect(codes).toEqual(expect.arrayContaining(['EUR', 'USD', 'JPY', 'KWD']));
    expect(column('Currencies', 'Decimals')).toEqual(
      codes.map(
        (code) =>
          new Intl.NumberFormat('en', { style: 'currency', currency: String(code) }).resolvedOptions()
            .maximumFractionDigits,
      ),
    );
  });
  test('one without small coins: tax of three lines of 33 once, not line by line (EN 16931)', async () => {
    const sheet = await sheetOf({
      form: { currency: 'JPY' },
      prices: ['a', 'b', 'c'].map((name) => line(name, 'job', 33, 10)),
    });
    // 99 × 0.1 = 9.9; line by line it would be 3 + 3 + 3 = 9
    expect(sheet.taxes()).toEqual([[10, 99, 10]]);
    expect(sheet.cell('toPay')).toBe(109);
  });
  test('one with three decimals', async () => {
    const sheet = await sheetOf({
      form: { currency: 'KWD', discount: 3, deposit: 30 },
      prices: [line('a', 'job', 12.3456, 5), line('b', 'job', 7.0004, 5)],
    });
    expect(sheet.lines()).toEqual([12.346, 7]);
    // 3 % of 19.346 = 0.58038; 5 % of 18.766 = 0.9383
    expect(sheet.taxes()).toEqual([[5, 18.766, 0.938]]);
    // 30 % of 19.704 = 5.9112
    expect([sheet.cell('toPay'), sheet.cell('depositTold')]).toEqual([19.704, 5.911]);
  });
});

describe('the money', () => {
  test('mark-up is a part of the cost, margin one of the price', async () => {
    // two days of 153: 306; × 1.25 = 382.50; ÷ 0.75 = 408
    const amount = async (adds: string) =>
      (await sheetOf({ form: { adds }, shots: [shot(840)], prices: [line('Heads', 'hire', 153, 0, { Added: 'yes' })] })).lines(); // prettier-ignore
    expect(await amount('mark-up')).toEqual([382.5]);
    expect(await amount('margin')).toEqual([408]);
  });
  test('discount and contingency spread over the rates; equal remainders go to the earlier row', async () => {
    const sheet = await sheetOf({
      form: { discount: 5, contingency: 15 },
      prices: [line('a', 'job', 10.1, 19), line('b', 'job', 10.1, 7)],
    });
    // 5 % of 20.2 = 1.01: 50.5 cents each, 0.51 and 0.50; 15 % is 3.03: 151.5 each, 1.52 and 1.51
    // 10.1 − 0.51 + 1.52 = 11.11, tax 2.1109; 10.1 − 0.5 + 1.51 = 11.11, tax 0.7777
    expect(sheet.column('Rates', 'Discount').slice(0, 2)).toEqual([0.51, 0.5]);
    expect(sheet.column('Rates', 'Contingency').slice(0, 2)).toEqual([1.52, 1.51]);
    expect(sheet.taxes()).toEqual([
      [19, 11.11, 2.11],
      [7, 11.11, 0.78],
    ]);
    expect(sheet.cell('toPay')).toBe(25.11);
  });
  test('an expense is passed through: no mark-up, no discount, the tax that is typed, or none', async () => {
    const sheet = await sheetOf({
      form: { discount: 10, contingency: 10 },
      prices: [line('Fares', 'expense', 100, 0), line('Flowers', 'expense', 50, 7), line('Work', 'job', 200, 19)],
    }); // prettier-ignore
    // 200 − 20 + 20 = 200, tax 38; 7 % of 50 = 3.50
    expect(sheet.taxes()).toEqual([
      [19, 200, 38],
      [7, 50, 3.5],
      [0, 100, 0],
    ]);
    expect([sheet.cell('beforeTax'), sheet.cell('toPay')]).toEqual([350, 391.5]);
  });
  test('where prices include tax, the cent that cannot vanish is shown as rounding', async () => {
    const sheet = await sheetOf({ form: { included: 'yes' }, prices: [line('All', 'job', 1070.08, 7)] });
    // 1070.08 × 0.07/1.07 = 70.0052; 1070.08 − 70.01 = 1000.07, and 7 % of that 70.0049
    expect([sheet.cell('beforeTax'), sheet.cell('taxTold'), sheet.cell('toPay')]).toEqual([
      1000.07, 70.01, 1070.08,
    ]);
    expect(sheet.cell('roundTold')).toBe(0.01);
    expect(sheet.column('Taxes', 'Rounding')[0]).toBe(0.01);
    // 119 at 19 %: 100 and 19, to the cent
    const even = await sheetOf({ form: { included: 'yes' }, prices: [line('All', 'job', 119, 19)] });
    expect([even.cell('beforeTax'), even.cell('taxTold'), even.cell('roundTold')]).toEqual([100, 19, 0]);
  });
  test('a correction may be less than 0', async () => {
    const sheet = await sheetOf({
      form: { discount: 10 },
      prices: [line('Work', 'job', 500, 19), line('Credit', 'correction', -120.5, 19)],
    });
    // 379.50 − 37.95 = 341.55, tax 64.8945
    expect(sheet.taxes()).toEqual([[19, 341.55, 64.89]]);
    expect(sheet.cell('toPay')).toBe(406.44);
  });
  test('a deposit is rounded once', async () => {
    const sheet = await sheetOf({ form: { deposit: 33 }, prices: [line('Work', 'job', 99.99, 0)] });
    // 33 % of 99.99 = 32.9967
    expect(sheet.cell('depositTold')).toBe(33);
  });
});

describe('prices a shot', () => {
  const hundred = [line('Work', 'job', 100, 19)];
  test('of three alike: the earlier row has the cent that is left', async () => {
    const sheet = await sheetOf({ shots: [shot(60), shot(60), shot(60)], prices: hundred });
    expect(sheet.shots('Price')).toEqual([33.34, 33.33, 33.33]);
  });
  test('by largest remainders, in coins that there are', async () => {
    // 100 yen by 1, 2 and 4 of 7: 14.29, 28.57 and 57.14: the second has the larger remainder
    const sheet = await sheetOf({
      form: { currency: 'JPY' },
      shots: [shot(10), shot(20), shot(40)],
      prices: hundred,
    });
    expect(sheet.shots('Price')).toEqual([14, 29, 57]);
  });
  test('of one shot: all of it', async () => {
    expect((await sheetOf({ prices: hundred })).shots('Price')).toEqual([100]);
  });
  test('of none: what is not by the day is asked all the same, and it is said', async () => {
    const prices = [...hundred, line('Studio', 'day', 480, 19)];
    const sheet = await sheetOf({ shots: [{}], prices });
    expect([sheet.cell('beforeTax'), sheet.cell('days'), sheet.shots('Price')[0]]).toEqual([100, 0, '']);
    expect(sheet.beside('days')).toBe('! no shot has minutes yet');
  });
  test('a row left blank in the middle counts for nothing', async () => {
    const sheet = await sheetOf({ shots: [shot(60), {}, shot(30)], prices: hundred });
    // 66.67 and 33.33
    expect(sheet.shots('Price')).toEqual([66.67, '', 33.33]);
  });
  test('a row deleted in the middle leaves the others right', async () => {
    const rows = rowsOf('Shots', [shot(60), shot(45), shot(30)]);
    const template = typedOver(demo, PLAIN, { Shots: rows, Prices: rowsOf('Prices', hundred) });
    const { sheet } = planAlone(template, true);
    const book = await openedBook([sheet]);
    const top = tableTop(tables.get('Shots') as TemplateTable);
    book.workbook.getSheetByName(sheet.name)?.deleteRows(top + 2, 1);
    await book.calculate();
    // 66.67 and 33.33
    expect(book.read(sheet.name, `A${top + 2}:B${top + 3}`)).toEqual([
      ['Shot of 60', 66.67],
      ['Shot of 30', 33.33],
    ]);
    book.dispose();
  });
  test('of 200 shots add up to the last cent', async () => {
    const shots = Array.from({ length: 200 }, (_, i) => shot(1 + (i % 7)));
    const sheet = await sheetOf({ shots, prices: [line('Work', 'job', 98_765.43, 19)] });
    const prices = sheet.shots('Price').map(Number);
    expect(prices.reduce((sum, price) => sum + Math.round(price * 100), 0)).toBe(9_876_543);
    // minutes: 28 rounds of 1 to 7 are 784, and 1 + 2 + 3 + 4: 794; the first is 1 of them: 12438.97 cents
    for (const [i, price] of prices.entries())
      expect(Math.abs(price * 100 - (9_876_543 * (1 + (i % 7))) / 794)).toBeLessThan(1);
  });
});

describe('days against overtime', () => {
  /** Crew of 800 for 8 hours, paid for overtime, in so many minutes. */
  const at = (minutes: number, form: Typed = {}, more: readonly Row[] = []) =>
    sheetOf({
      form,
      shots: [shot(minutes)],
      prices: [line('Crew', 'day', 800, 0, { Overtime: 'yes' }), ...more],
    });
  const taken = ({ cell }: Awaited<ReturnType<typeof at>>) => [cell('days'), cell('beforeTax')];

  test('a day and a half: two days, or one and 180 min', async () => {
    // 630 of 420 min: 210 over, up to 600 no longer than the longest day allows
    const none = await at(630);
    expect([...taken(none), none.beside('fewTold')]).toEqual([2, 1600, '! none: beyond the longest day']);
    // longest day 640: (120 × 1.5 + 90 × 2)/60 = 6 h at 100: 800 + 600 = 1400
    expect(taken(await at(630, { longest: 640 }))).toEqual([1, 1400]);
    // with hours at 5 after the first two: (180 + 450)/60 = 10.5 h: 1850, so two days
    expect(taken(await at(630, { longest: 640, nextFactor: 5 }))).toEqual([2, 1600]);
  });
  test('where both cost the same: fewer days', async () => {
    // (120 × 1.5 + 90 × f)/60 = 8 h at 100 is another day: f = 300/90
    const equal = await at(630, { longest: 640, nextFactor: 5, firstFactor: 1, firstHours: 2.375 });
    // 142.5 min × 1 + 67.5 × 5 = 480 min = 8 h
    expect(taken(equal)).toEqual([1, 1600]);
    expect(equal.cell('daysHow')).toBe('both cost the same: fewer days');
  });
  test('steps of overtime begin anew each day', async () => {
    // 1320 min: ⌈3.14⌉ = 4 days, or 3 and 20 min each: 3 × 20 × 1.5/60 = 1.5 h
    expect(taken(await at(1320))).toEqual([3, 2550]);
  });
  test('up to the longest day itself, and not beyond it', async () => {
    // (120 × 1.5 + 60 × 2)/60 = 5 h at 100
    expect(taken(await at(600))).toEqual([1, 1300]);
    expect(taken(await at(600.5))).toEqual([2, 1600]);
  });
  test('one day has no alternative; whole days are whole', async () => {
    const one = await at(420);
    expect([...taken(one), one.beside('fewTold')]).toEqual([1, 800, '! one day has no alternative']);
    // 3 × 140 in thirds of a minute
    expect((await sheetOf({ shots: [shot(140.1), shot(139.9), shot(140)], prices: [] })).cell('many')).toBe(
      1,
    );
  });
  test('a blink of a shot takes a day, too', async () => {
    expect(taken(await at(0))).toEqual([1, 800]);
  });
  test('overtime is paid to those who are marked for it; a day costs every line by the day', async () => {
    const sheet = await at(480, {}, [line('Studio', 'day', 300, 0), line('Heads', 'hire', 100, 0)]);
    // one day and 60 min: 800 + 150 + 300 + 100; two days 2400
    expect(taken(sheet)).toEqual([1, 1350]);
    expect(sheet.cell('manyCost')).toBe(2400);
  });
  test('overtime is rounded line by line, before it is added up', async () => {
    const three = ['a', 'b', 'c'].map((name) => line(name, 'day', 800.06, 0, { Overtime: 'yes' }));
    const { cell } = await sheetOf({ shots: [shot(440)], prices: three });
    // 20 min × 1.5 = 0.5 h of 100.0075: 50.00375, which is 50; 3 × 850.06, where 150.01125 would make it a cent more
    expect([cell('fewCost'), cell('beforeTax')]).toEqual([2550.18, 2550.18]);
  });
  test('a capped week of hire, written out, costs what HIRECOST says', async () => {
    for (const week of drawn([3, 2.5, 7]))
      for (const days of [1, 3, 5, 7, 8, 10, 14, 17]) {
        const { cell } = await at(60 * days, { usable: 60, longest: 60, week });
        expect(cell('days')).toBe(days);
        const paid = hireCost(1, days, week);
        expect(isFail(paid) ? undefined : cell('hireNow'), `${days} days, ${week}`).toBe(paid);
      }
  });
});

test('what one more costs is what the estimate would be with one more typed', async () => {
  const shots = (variants: number): Row[] => [
    shot(300, { Shot: 'Pour', Variants: variants, Reset: 70, Seconds: 30, Post: 20 }),
    shot(60),
  ];
  const prices = (heads: number): Row[] => [
    line('Crew', 'day', 813, 19, { Overtime: 'yes' }),
    line('Post', 'post', 57, 7),
    line('Heads', 'hire', 33.33, 19, { Added: 'yes', 'How many': heads }),
    line('Fares', 'expense', 12.34, 0),
  ];
  const form = { discount: 5, contingency: 3, variantOf: 'Pour', moreOf: 'Heads' };
  const net = async (variants: number, heads: number) =>
    Number((await sheetOf({ form, shots: shots(variants), prices: prices(heads) })).cell('beforeTax'));
  const { cell } = await sheetOf({ form, shots: shots(1), prices: prices(2) });
  expect(cell('variantCosts')).toBeCloseTo((await net(2, 2)) - (await net(1, 2)), 9);
  expect(cell('moreCosts')).toBeCloseTo((await net(1, 3)) - (await net(1, 2)), 9);
  // a day: 813, and the heads 133.32 × 1.25 = 166.65 where they are 83.33: 896.32 beside 813 + 19 + 83.33 = 915.33; 3 % of
  // 1811.65 and of that are 54.35 and 27.46, 5 % 90.58 and 45.77: 896.32 + 26.89 − 44.81
  expect(cell('dayCosts')).toBe(878.4);
  // with an expense it is the expense alone: nothing is taken off it
  const fares = await sheetOf({ form: { ...form, moreOf: 'Fares' }, shots: shots(1), prices: prices(2) });
  expect(fares.cell('moreCosts')).toBe(12.34);
});

describe('names and codes are taken as they stand', () => {
  const shots = [
    shot(60, { Shot: 'Pour ', Reset: 40 }),
    shot(30, { Shot: 'Po?r', Reset: 80 }),
    shot(20, { Shot: 'Vase' }),
    shot(10, { Shot: 'vase ' }),
  ];
  const prices = [line('Birch', 'job', 100, 0), line('B*', 'job', 20, 0), line('Post', 'post', 90, 0)];
  const asked = (variantOf: string, moreOf: string) =>
    sheetOf({ form: { variantOf, moreOf }, shots, prices });
  test('a space behind a name, * and ? make no other name of it', async () => {
    const sheet = await asked('pour', 'B*');
    expect([sheet.cell('variantRow'), sheet.cell('moreRow'), sheet.cell('moreCosts')]).toEqual([1, 2, 20]);
    expect((await asked('Po?r', 'birch')).cell('variantRow')).toBe(2);
  });
  test('what no shot and no line is called has no answer, and it is said', async () => {
    const sheet = await asked('P*', 'Bir*');
    expect([sheet.cell('variantCosts'), sheet.cell('moreCosts')]).toEqual(['', '']);
    expect([sheet.beside('variantOf'), sheet.beside('moreOf')]).toEqual([
      '! no shot is called so',
      '! no line is called so',
    ]);
  });
  test('a currency is the one of the list, as it is written there', async () => {
    const yen = await sheetOf({ form: { currency: 'jpy ' }, prices: [line('Work', 'job', 99.5, 10)] });
    // 99.5 yen are 100, and 10 of tax
    expect(yen.column('ForClient', 'Says').slice(0, 3)).toEqual(['JPY 100', 'JPY 10', 'JPY 110']);
    expect(yen.column('Shots', 'Price told')[0]).toBe('JPY 100');
    for (const currency of ['E*', '???']) {
      const sheet = await sheetOf({ form: { currency }, prices });
      expect([sheet.cell('toPay'), sheet.beside('currency')], currency).toEqual([
        '',
        '! not in the list of currencies right of the prices: add it there',
      ]);
    }
  });
  test('one of two shots alike but for case and a space is not picked', async () => {
    const sheet = await asked('Vase', '');
    expect([sheet.cell('variantCosts'), sheet.beside('variantOf')]).toEqual([
      '',
      '! more than one shot is called so',
    ]);
  });
});

describe('what cannot be right is said, and nothing is asked', () => {
  const work = line('Work', 'job', 100, 19);
  const told = async (wish: Wish) => {
    const sheet = await sheetOf({ prices: [work], ...wish });
    expect([sheet.cell('toPay'), sheet.cell('beforeTax'), sheet.shots('Price')[0]]).toEqual(['', '', '']);
    return sheet;
  };
  test.each(drawn<[string, Row, string]>([
    ['a kind of line with a space behind it', { By: 'hire ' }, 'type: day, hire, post, job, expense or correction, under By'],
    ['text in a rate', { Price: 'much' }, 'type: its price, a number such as 320.5'],
    ['a line of hire without a price', { By: 'hire', Price: null }, 'type: its price, or its name as Fleet compare has it, with a rate there'],
    ['a decimal comma', { Price: '320,50' }, 'type: its price, a number such as 320.5'],
    ['a rate of 0', { Price: 0 }, 'type: a price above 0 (less than 0 only where it is a correction)'],
    ['a blank tax', { Tax: null }, 'type: its tax in percent, 0 for none'],
    ['a tax above 100 %', { Tax: 119 }, 'type: its tax in percent, from 0 to 100'],
    ['19 % typed as 0.19', { Tax: 0.19 }, 'type: its tax as 19 for 19 %'],
    ['overtime of what goes not by the day', { Overtime: 'yes' }, 'type: no under Overtime, only lines by the day have it'],
    ['mark-up on an expense', { By: 'expense', Added: 'yes' }, 'type: no under Added, nothing is added to expenses and corrections'],
  ]))('%s', async (_, wrong, words) => {
    const sheet = await told({ prices: [{ ...work, ...wrong }] });
    expect(sheet.column('Prices', 'Lacks')[0]).toBe(words);
    expect(sheet.column('Lines', 'How')[0]).toBe(words);
    expect(sheet.beside('toPay')).toBe(`! line 1, ${words}`);
  }); // prettier-ignore
  test('a name twice', async () => {
    const sheet = await told({ prices: [work, line('work ', 'job', 5, 19)] });
    for (const row of [0, 1])
      expect(sheet.column('Prices', 'Lacks')[row]).toBe('type: another name, this one stands twice');
  });
  test.each(drawn<[string, Typed, string, string]>([
    ['a currency that is not in the list', { currency: 'XAU' }, 'currency', '! not in the list of currencies right of the prices: add it there'],
    ['a discount of more than all', { discount: 101 }, 'discount', '! type percent from 1 to 100, such as 5 for 5 %; blank for none'],
    ['a margin of all', { adds: 'margin', plus: 100 }, 'plus', '! type percent, such as 25 for 25 %; a margin below 100'],
    ['valid until a day before its own', { validUntil: 46187 }, 'validUntil', '! lies before the date of the estimate'],
    ['a day of 31 hours', { longest: 1860 }, 'longest', '! a day of 31 hours?'],
    ['hours for minutes', { usable: 7 }, 'usable', '! minutes: 420 where 7 hours are meant'],
    ['a longest day that is shorter than a usual one', { longest: 300 }, 'longest', '! shorter than a usual day'],
  ]))('%s', async (_, form, id, words) => {
    const sheet = await told({ form });
    expect(sheet.beside(id)).toBe(words);
    expect(sheet.beside('toPay')).toMatch(/^! see the (job|day) below$/);
  }); // prettier-ignore
  test('until the day of the estimate itself it may be valid, whatever the hour is', async () => {
    // noon of that day, as a formula or a clock gives it
    const sheet = await sheetOf({ form: { dated: 46188.5, validUntil: 46188 }, prices: [work] });
    expect(sheet.cell('toPay')).toBe(119);
  });
  test('corrections of more than all there is', async () => {
    const credit = line('Credit', 'correction', -150, 19);
    const sheet = await told({ prices: [work, credit] });
    expect(sheet.beside('toPay')).toBe('! corrections take off more than there is');
    expect(sheet.cell('ready')).toBe('corrections take off more than there is');
    expect(sheet.column('ForClient', 'Says').slice(0, 3)).toEqual(['', '', '']);
    // as much as there is: nothing is to pay
    const none = await sheetOf({ prices: [work, { ...credit, Price: -100 }] });
    expect([none.cell('toPay'), none.beside('toPay').startsWith('!')]).toEqual([0, false]);
  });
  test.each<[string, Typed]>([
    ['mark-up', { plus: null }],
    ['contract hours', { contract: 'eight' }],
  ])('a blank or text for %s, and no cell shows an error', async (_, form) => {
    const crew = line('Crew', 'day', 800, 19, { Overtime: 'yes', Added: 'yes' });
    expect((await told({ form, prices: [crew] })).errors).toEqual([]);
  });
  test('a shot that is half typed', async () => {
    const sheet = await told({ shots: [shot(60), { Shot: 'Pour', Setups: 1, Light: 30 }] });
    expect(sheet.beside('toPay')).toBe('! shot 2: variants: whole');
  });
  test('more rates of tax than the sheet has rows for', async () => {
    const prices = [1, 2, 3, 4, 5, 6].map((rate) => line(`at ${rate}`, 'job', 1, rate));
    expect((await told({ prices })).beside('toPay')).toBe('! more than 5 rates of tax');
  });
  test('a currency that is added to the list is known', async () => {
    const rows = [...(tables.get('Currencies') as TemplateTable).rows, ['CLF', 4]];
    const prices = rowsOf('Prices', [line('Work', 'job', 1.23456, 0)]);
    const template = typedOver(demo, { ...PLAIN, currency: 'CLF' }, { Currencies: rows, Prices: prices });
    expect((await calculated(template)).cell('toPay')).toBe(1.2346);
  });
  test('a space in a row that is empty otherwise is nothing typed', async () => {
    const sheet = await sheetOf({ shots: [{ Shot: ' ' }], prices: [{ Line: '  ', By: ' ' }] });
    expect(['toPay', 'ready', 'dayCosts'].map((id) => sheet.cell(id)).join('')).toBe('');
    expect(sheet.cell('started')).toBe(0);
    expect(sheet.beside('toPay')).not.toMatch(/^!/);
  });
  test('empty, it says nothing', async () => {
    const sheet = await calculated(demo, false);
    expect(['toPay', 'beforeTax', 'days', 'dayCosts', 'ready'].map((id) => sheet.cell(id)).join('')).toBe('');
    expect(sheet.errors).toEqual([]);
  });
});

test('money is plain formulas: no function of ours stands in the sheet', () => {
  const formulas = planAlone(demo, true).sheet.cells.flatMap(({ formula }) => formula ?? []);
  expect(formulas.length).toBeGreaterThan(500);
  expect(formulas.filter((formula) => formula.includes('SWEEP'))).toEqual([]);
});
