import { describe, expect, test } from 'vitest';
import { depthOf } from '../../src/sheets/checkTemplate';
import { planAlone } from '../../src/sheets/makePlan';
import type { TemplateValue } from '../../src/sheets/template';
import { drawn } from '../full';
import { calculated, templateOf, type Typed, typedOver, wordsBeside } from './support';
import { together } from './together';

const template = templateOf('pops-build');

async function sheet(typed: Typed = {}, filled = true) {
  const made = await calculated(typedOver(template, typed), filled);
  return { ...made, words: (id: string) => wordsBeside(template, made, id) };
}

/**
 * Worked by hand from powers of 2, without any function of ours. A meter's f/22 and 6 tenths lets in 2^9.6 parts of light less
 * than f/1 (f-number squared), f/45 on the ring is 2^11. Lost: bellows (150/120)² = 1.5625, filters 2^(1/3), together 1.968627.
 * To come within half a tenth the pops must bring X = 2^(11 − 9.6 − 0.05) × 1.968627 = 5.018250 pops. Ambient light of f/4 brings
 * a = 16/776.0469/2 = 0.01030866 pops a second; from one pop to the next are 2.2 s, which bring 0.02267905.
 */
const DEMO: readonly (readonly [id: string, value: number, working: string])[] = [
  ['pops', 5, '(5.018250 + 0.022679) / 1.022679 = 4.929'],
  ['byFlash', 6, '5.018 rounded up'],
  ['miss', -0.0293238, 'log2(5 + 8.8 a) − log2(2^1.4 × 1.968627 = 5.195236): log2(5.090716/5.195236)'],
  ['open', 8.8, '4 × 2.2'],
  ['pauses', 0, '5 of 40'],
  ['ready', 11, '5 × 2.2'],
  ['adds', 0.0259402, 'log2(5.090716/5)'],
  ['reads', 27.857618, '2^4.8'],
  ['wanted', 45.254834, '2^5.5'],
  ['bellowsLoss', 0.6438562, 'log2 1.5625'],
  ['filterLoss', 0.3333333, '1/3'],
  ['needed', 2.3771895, '1.4 + 0.977190'],
  ['flashPops', 6, '5.018 rounded up'],
  ['gap', 2.2, '1.2 + 1'],
  ['perSecond', 0.01030866, 'a'],
  ['longest', 34.8122, '5 × (2^0.1 − 1)/a = 5 × 0.0717735/0.01030866'],
  ['ambientPart', 0.0178199, '0.090716/5.090716'],
  ['reached', 44.7973, '45.254834 × √(5.090716/5.195236)'],
];

describe('the demo job', () => {
  test('gives what is worked out by hand', async () => {
    const { cell, errors } = await sheet();
    for (const [id, value, working] of DEMO) {
      expect(typeof cell(id), `${id}: ${working}`).toBe('number');
      expect(cell(id), `${id}: ${working}`).toBeCloseTo(value, 4);
    }
    expect(errors).toEqual([]);
  });
  test('shows readings as the meter does', async () => {
    // 9.6 + log2 5 = 11.92: f/45 (11) and 9 tenths.
    const { cell } = await sheet();
    expect([cell('addsUp'), cell('tallyOne'), cell('tallyAll')]).toEqual([
      'f/45 +0.9',
      'f/22 +0.6',
      'f/45 +0.9',
    ]);
  });
  test('builds up pop by pop', async () => {
    const { column } = await sheet();
    const row = (name: string, pops: number) => column('Build', name)[column('Build', 'Pops').indexOf(pops)];
    expect(row('Open', 8)).toBeCloseTo(15.4, 9);
    // √((8 × 776.0469 + 16 × 15.4/2)/1.968627) = √(6331.575/1.968627); 2 log2 of that over 45.2548
    expect(row('At the film', 8)).toBeCloseTo(56.7119, 3);
    expect(row('From target', 8)).toBeCloseTo(0.65116, 4);
    expect(row('Ambient share', 8)).toBeCloseTo(123.2 / 6331.575, 6);
    expect(row('Meter adds up to', 8)).toBe('f/64 +0.6');
    // 40 flashes, 60 s to cool, and then on: 47 × 2.2 + 60
    expect(row('Open', 48)).toBeCloseTo(163.4, 9);
    expect(row('Meter adds up to', 64)).toBe('above f/128');
  });
  test('says nothing beside its answers that is not so', async () => {
    const { words } = await sheet();
    expect(words('pops')).toBe('the fewest within half a tenth of a stop');
    for (const id of ['pops', 'miss', 'open', 'pauses', 'tallyPops']) expect(words(id)).not.toMatch(/^!/);
  });
});

test('chains at most two of our functions', () => expect(depthOf(template)).toBe(2));

/**
 * Another job, of many pops: f/16 and 3 tenths are 2^8.3, draw 180 of 120 mm takes 2.25, a filter of 2.5 (1.3219281 stops) the
 * rest of 5.625. X = 2^(11 − 8.3 − 0.05) × 5.625 = 35.3060. Ambient f/4 in 2 s: a = 16/315.1730/2 = 0.02538289 pops a second.
 */
const MANY: Typed = { reading: 16, readingTenths: 3, draw: 180, filters: '1.3219280949' };

test('its chart has the lens setting as a line, and the pops to the set as a point', async () => {
  const { charts } = planAlone(template, true).sheet;
  expect(charts.map(({ series }) => series.map(({ name, role }) => [name, role]))).toEqual([
    [
      ['At the film', undefined],
      ['Wanted', 'limit'],
      ['To the set', 'point'],
    ],
  ]);
  const { column } = await sheet();
  // The exact f-number behind f/45 is 2^5.5.
  for (const wanted of column('Build', 'Wanted')) expect(wanted).toBeCloseTo(45.254834, 6);
});

describe('ambient light is counted', () => {
  test('34 pops reach it where flash alone takes 36', async () => {
    // (35.3060 + 0.0558424)/1.0558424 = 33.49; 33 gaps of 2.2 s bring 72.6 a = 1.8428 pops.
    const { cell } = await sheet(MANY);
    expect([cell('pops'), cell('byFlash'), cell('flashPops')]).toEqual([34, 36, 36]);
    expect(cell('open')).toBeCloseTo(72.6, 9);
    // log2(35.8428/36.5508), 36.5508 being 2^2.7 × 5.625; log2(1 + 1.8428/34)
    expect(cell('miss')).toBeCloseTo(-0.02822, 4);
    expect(cell('adds')).toBeCloseTo(0.07616, 4);
  });

  test('too much of it is not counted, and is said', async () => {
    // f/16 in 2 s: a = 256/315.1730/2 = 0.4061262. 20 pops would do, with 41.8 a = 16.98 pops of ambient light: 0.89 stop.
    // 36 pops stand open 77 s: 31.27 of 67.27 are 46 %; 36 × 0.0717735/a = 6.36 s is the longest.
    const { cell, words } = await sheet({ ...MANY, ambient: 16 });
    expect([cell('pops'), cell('byFlash'), cell('counted')]).toEqual([36, 36, 20]);
    expect(words('pops')).toBe('! ambient would be 46 % of the light: darken the room');
    expect(words('open')).toBe('! above 6.4 s ambient adds more than it may');
    // by flash alone: log2(36/36.5508)
    expect(cell('miss')).toBeCloseTo(-0.02191, 4);
  });

  test('a limit of its own decides', async () => {
    // 0.89 stop is within one stop; blank is a tenth.
    const job = { ...MANY, ambient: 16 };
    expect((await sheet({ ...job, creepLimit: 1 })).cell('pops')).toBe(20);
    expect((await sheet({ ...job, creepLimit: null })).cell('pops')).toBe(36);
    expect((await sheet({ ...job, creepLimit: '1/2 stop' })).cell('pops')).toBe(36);
  });

  test.each([
    // 35.3060 − 90 a = 33.02; log2(1 + 2.2845/34) = 0.0938
    [90, 34, 90, 'from first pop to last'],
    // 35.3060 − 50 a = 34.04; 34 gaps of 2.2 s
    [50, 35, 50, '! the pops take 74.8 s'],
    // 35.3060 − 100 a = 32.77, but log2(1 + 2.5383/33) = 0.107 is beyond a tenth: 36 by flash, 36 × 0.0717735/a = 101.79 s
    [100, 36, 100, 'from first pop to last'],
  ])('an open time of %d s that is set', async (openSet, pops, open, said) => {
    const { cell, words } = await sheet({ ...MANY, openSet });
    expect([cell('pops'), cell('open'), words('open')]).toEqual([pops, open, said]);
  });

  test('in a dark room it is flash alone', async () => {
    const { cell, words } = await sheet({ ...MANY, ambient: null });
    expect([cell('pops'), cell('adds'), cell('longest')]).toEqual([36, '', '']);
    expect(words('pops')).not.toMatch(/^!/);
  });
});

describe('flashes in a row', () => {
  /** The light of n pops, added up one by one: each is a pop, each gap and each pause to cool brings ambient light. */
  function popsOneByOne(wanted: number, perSecond: number, gap: number, inRow: number, cool: number): number {
    let light = 1;
    let pops = 1;
    while (light < wanted) {
      light += perSecond * (gap + (pops % inRow === 0 ? cool : 0)) + 1;
      pops++;
    }
    return pops;
  }
  // Light wanted and light of a second are those of the job of many pops.
  test.each([
    [40, 60],
    [10, 5],
    [10, 60],
    [7, 3],
    [17, 30],
    [33, 60],
    [1, 1],
  ])('%d of them, then %d s to cool, which let ambient light in as well', async (allowed, cool) => {
    const { cell } = await sheet({ ...MANY, allowed, cool, creepLimit: 3 });
    const pops = popsOneByOne(2 ** 2.65 * 5.625, 16 / 2 ** 8.3 / 2, 2.2, allowed, cool);
    const pauses = Math.floor((pops - 1) / allowed);
    expect([cell('pops'), cell('pauses')]).toEqual([pops, pauses]);
    expect(cell('open')).toBeCloseTo((pops - 1) * 2.2 + pauses * cool, 9);
    expect(cell('ready')).toBeCloseTo(pops * 2.2 + pauses * cool, 9);
  });

  test('a pause is told, and longer than ambient light allows is warned of', async () => {
    // 36 pops in a dark room: after 15 and after 30.
    const dark = await sheet({ ...MANY, ambient: null, allowed: 15 });
    expect([dark.cell('pauses'), dark.words('pauses')]).toEqual([
      2,
      '! let the heads cool after every 15 flashes',
    ]);
    expect(dark.cell('open')).toBeCloseTo(35 * 2.2 + 120, 9);
    // With ambient light: 34 pops, open 72.6 + 120 s, would add log2(1 + 192.6 a/…): beyond a tenth.
    const lit = await sheet({ ...MANY, allowed: 15 });
    expect(lit.cell('pops')).toBe(36);
    // 197 a = 5.000 of 41.0 pops are 12 %; 36 × 0.0717735/a = 101.8 s
    expect(lit.words('pops')).toBe('! ambient would be 12 % of the light: darken the room');
    expect(lit.words('open')).toBe('! above 101.8 s ambient adds more than it may');
  });

  test('where none are known, no pause is counted', async () => {
    const { cell } = await sheet({ ...MANY, allowed: null, cool: null });
    expect([cell('pops'), cell('pauses')]).toEqual([34, 0]);
  });
});

test('by flash alone it agrees with POPSFORTARGET', async () => {
  const check = {
    id: 'check',
    label: 'Check',
    quantity: 'pops',
    formula: '=SWEEP.POPSFORTARGET({reads},{target},{loss})',
  };
  const form = { kind: 'form', title: 'Check', at: 'A120', fields: [check] } as const;
  for (const target of [8, 16, 22, 32, 45, 64, 'f/45+0.3', '50 exact']) {
    const more = { ...template, blocks: [...template.blocks, form] };
    const { cell } = await calculated(typedOver(more, { target }));
    expect(cell('flashPops'), String(target)).toBe(cell('check'));
  }
});

describe('too much light', () => {
  test.each([
    // 7 − 9.6 + 0.97719 = −1.62: one pop, that much over
    [11, 1, 1.62281, '! turn the heads down by 1.6 stop'],
    // 9.6 − 0.97719 = 8.62: nearly f/19; f/20 exactly is 8.6439, so one pop is 0.021 under
    ['20 exact', 1, -0.02105, 'against the lens setting'],
  ])('f/%s', async (target, pops, miss, said) => {
    const { cell, words } = await sheet({ target, ambient: null });
    expect(cell('pops')).toBe(pops);
    expect(cell('miss')).toBeCloseTo(miss, 4);
    expect(words('miss')).toBe(said);
  });
  test('of several pops, where one more was too many by half', async () => {
    // f/25: 28/3 − 9.6 + 0.97719 = 0.71052: 2 pops, 0.29 over
    const { cell, words } = await sheet({ target: 25, ambient: null });
    expect([cell('pops'), words('miss')]).toEqual([2, '! turn the heads down by 0.3 stop']);
  });
});

describe('the tally', () => {
  test('has a box for each pop, and the reading at the end of each row', async () => {
    // 36 pops: 10, 10, 10 and 6.
    const { column, cell } = await sheet({ ...MANY, ambient: null, allowed: 15 });
    const five = 'ooooo';
    expect(column('Tally', 'Tick')).toEqual([
      ...Array<string>(3).fill(`${five} ${five}`),
      `${five} o`,
      ...Array<string>(6).fill(''),
    ]);
    // 8.3 + log2 10 = 11.62, log2 20: 12.62, log2 30: 13.21, log2 36: 13.47
    expect(column('Tally', 'Meter adds up to').slice(0, 5)).toEqual([
      'f/45 +0.6',
      'f/64 +0.6',
      'f/90 +0.2',
      'f/90 +0.5',
      '',
    ]);
    expect(column('Tally', 'Then').slice(0, 5)).toEqual([
      '',
      'cool after pop 15',
      'cool after pop 30',
      '',
      '',
    ]);
    // 9 × 2.2; 19 × 2.2 + 60; 29 × 2.2 + 60; 35 × 2.2 + 120
    const ends = column('Tally', 'Ends after').slice(0, 4) as number[];
    for (const [i, end] of [19.8, 101.8, 123.8, 197].entries()) expect(ends[i]).toBeCloseTo(end, 9);
    expect([cell('tallyPops'), cell('tallySetting')]).toEqual([36, 45]);
  });
  test('of exactly ten pops there is no pause after the last', async () => {
    // X from 9 to 10: f/64, 12 − 9.6 + 0.97719 − 0.05 = 3.32719, 2^ = 10.04: 11; f/64 −0.1 is 9.36: 10
    const { column, cell } = await sheet({ target: 'f/64 -0.1', ambient: null, allowed: 10 });
    expect(cell('pops')).toBe(10);
    expect([column('Tally', 'Then')[0], cell('pauses')]).toEqual(['', 0]);
  });
  test('rows shorter than ten say so once', async () => {
    const { column } = await sheet({ ...MANY, ambient: null, allowed: 4 });
    expect(column('Tally', 'Then')[0]).toBe('cool after every 4 pops');
  });
  test('it says where it ends', async () => {
    // f/128: 14 − 8.3 + log2 5.625 − 0.05 = 8.14: 2^ = 282.4
    const { cell, words } = await sheet({ ...MANY, target: 128, ambient: null });
    expect([cell('tallyPops'), words('tallyPops')]).toEqual([283, '! the rings below end at 100']);
  });
});

const DATE = 44197;
describe('what is missing, or cannot be read', () => {
  test('empty, it shows nothing but what it holds, and no error', async () => {
    const { plan, values, errors, words } = await sheet({}, false);
    expect(errors).toEqual([]);
    for (const id of ['pops', 'miss', 'open', 'pauses']) expect(words(id)).not.toMatch(/^!/);
    const answers = plan.cells.filter(
      ({ part, row }) => (part === 'result' || part === 'answer') && row < 83,
    );
    expect(answers.length).toBeGreaterThan(90);
    expect(answers.filter(({ row, column }) => values(row, column) !== '')).toEqual([]);
  });

  const cases: readonly (readonly [id: string, typed: TemplateValue, words: string])[] = [
    ['reading', null, 'type the reading of one pop'],
    ['reading', 0, 'the reading of one pop cannot be read'],
    ['reading', DATE, 'the reading of one pop cannot be read'],
    ['reading', '2 m', 'the reading of one pop cannot be read'],
    ['reading', 'blue', 'the reading of one pop cannot be read'],
    ['reading', '22³', 'the reading of one pop cannot be read'],
    ['target', null, 'type the lens setting'],
    ['target', 0, 'the lens setting cannot be read'],
    ['target', DATE, 'the lens setting cannot be read'],
    ['target', '45 mm', 'the lens setting cannot be read'],
    ['target', 'blue', 'the lens setting cannot be read'],
    ['focal', null, 'type focal length and draw, or neither'],
    ['focal', 0, 'focal length or draw cannot be right'],
    ['focal', '120 s', 'focal length or draw cannot be right'],
    ['draw', null, 'type focal length and draw, or neither'],
    ['draw', 100, 'focal length or draw cannot be right'],
    ['draw', 'long', 'focal length or draw cannot be right'],
    ['filters', DATE, 'what filters take cannot be read'],
    ['filters', 'blue', 'what filters take cannot be read'],
    ['filters', '-1', 'filters take light: no stops below 0'],
    ['recycle', null, 'type the recycle time: ambient light creeps in'],
    ['recycle', DATE, 'recycle time or pause cannot be read'],
    ['recycle', '2 m', 'recycle time or pause cannot be read'],
    ['recycle', 'soon', 'recycle time or pause cannot be read'],
    ['pause', -1, 'recycle time or pause cannot be read'],
    ['pause', 'long', 'recycle time or pause cannot be read'],
    ['ambient', 0, 'the ambient reading cannot be read'],
    ['ambient', DATE, 'the ambient reading cannot be read'],
    ['ambient', 'dark', 'the ambient reading cannot be read'],
    ['ambientTime', null, 'type the time of the ambient reading'],
    ['ambientTime', DATE, 'the time of the ambient reading cannot be read'],
    ['ambientTime', '2 m', 'the time of the ambient reading cannot be read'],
    ['openSet', 'T', 'the open time cannot be read'],
    ['openSet', '2 m', 'the open time cannot be read'],
    ['openSet', DATE, 'the open time cannot be read'],
    ['creepLimit', 'little', 'what ambient light may add cannot be read'],
    ['creepLimit', DATE, 'what ambient light may add cannot be read'],
    ['allowed', 'some', 'flashes in a row: type a whole number'],
    ['allowed', DATE, 'flashes in a row: type a whole number'],
    ['allowed', 2.5, 'flashes in a row: type a whole number'],
    ['cool', 'long', 'the pause to cool cannot be read'],
    ['cool', '60 Ws', 'the pause to cool cannot be read'],
    ['cool', DATE, 'the pause to cool cannot be read'],
  ];
  test.each(drawn(cases))('%s: %j', async (id, typed, said) => {
    const { cell, words, errors, column } = await sheet({ [id]: typed });
    expect(words('pops')).toBe(`! ${said}`);
    for (const answer of [
      'pops',
      'byFlash',
      'addsUp',
      'miss',
      'open',
      'pauses',
      'ready',
      'adds',
      'tallyPops',
    ])
      expect(cell(answer), answer).toBe('');
    for (const name of ['Tick', 'Ends after', 'Meter adds up to', 'Then'])
      expect(new Set(column('Tally', name)), name).toEqual(new Set(['']));
    expect(new Set(column('Build', 'At the film'))).toEqual(new Set(['']));
    // What cannot be read is refused where it is read, and by what follows under the same heading.
    expect(errors.every(({ row }) => row >= 83)).toBe(true);
  });

  test('the pause to cool is asked for where the heads must cool', async () => {
    const job = { ...MANY, cool: null, allowed: 20, ambient: null };
    expect((await sheet(job)).words('pops')).toBe('! type the pause to cool, or clear the flashes in a row');
    expect((await sheet({ ...job, allowed: 36 })).cell('pops')).toBe(36);
  });
  test('without a recycle time and without ambient light the pops are known, and times are asked for', async () => {
    const { cell, words } = await sheet({ recycle: null, ambient: null });
    expect([cell('pops'), cell('open') || '', cell('ready')]).toEqual([6, '', '']);
    expect(words('open')).toBe('! type the recycle time');
  });
  test('without focal length and draw nothing is lost in the bellows', async () => {
    // 1.4 + 1/3 − 0.05 = 1.68333: 2^ = 3.21
    const { cell } = await sheet({ focal: null, draw: null, ambient: null });
    expect([cell('bellowsLoss'), cell('pops')]).toEqual([0, 4]);
  });
  test('a filter is read by its name', async () => {
    // ND 0.9 is 0.9 / log10 2 = 2.98974 stops: 1.4 + 0.643856 + 2.98974 − 0.05 = 4.98359, 2^ = 31.6
    const { cell } = await sheet({ filters: 'ND 0.9', ambient: null });
    expect([cell('filterLoss'), cell('pops')]).toEqual([expect.closeTo(2.98974, 4), 32]);
  });
  test('without filters nothing is lost in them', async () => {
    // 1.4 + 0.643856 − 0.05 = 1.993856: 2^ = 3.98
    const { cell } = await sheet({ filters: null, ambient: null });
    expect([cell('filterLoss'), cell('pops')]).toEqual([0, 4]);
  });
  test('times with their units are read', async () => {
    const { cell } = await sheet({ recycle: '1200 ms', pause: '1 s', cool: '1 min' });
    expect([cell('gap'), cell('cools')]).toEqual([expect.closeTo(2.2, 9), expect.closeTo(60, 9)]);
  });
});

describe('at two in the morning', () => {
  test('a lens setting that one pop already passes is one pop, and too much of it', async () => {
    // f/16 is 2^8: 8 − 9.6 + 0.977190 = −0.62281 stops to bring.
    const { cell, words } = await sheet({ target: 16 });
    expect([cell('pops'), cell('open'), cell('addsUp')]).toEqual([1, 0, 'f/22 +0.6']);
    expect(cell('miss')).toBeCloseTo(0.62281, 4);
    expect(words('miss')).toBe('! turn the heads down by 0.6 stop');
  });

  test.each<[Typed, string]>([
    [{ reading: 6, readingTenths: 22 }, 'the reading of one pop cannot be read'],
    [{ readingTenths: 0.6 }, 'the reading of one pop cannot be read'],
    [{ reading: null }, 'type the reading of one pop'],
    [{ ambient: null, ambientTenths: 4 }, 'the ambient reading cannot be read'],
    [{ ambientTenths: 45 }, 'the ambient reading cannot be read'],
  ])('tenths in the wrong cell: %j', async (typed, said) => {
    const { cell, words } = await sheet(typed);
    expect(words('pops')).toBe(`! ${said}`);
    expect([cell('pops'), cell('miss'), cell('tallyAll')]).toEqual(['', '', '']);
  });

  test('a draw that is a year is refused', async () => {
    const { cell, words } = await sheet({ draw: 46_329 });
    expect([cell('pops'), words('pops')]).toEqual(['', '! focal length or draw cannot be right']);
  });

  test('nothing that ambient light may add is no limit to count by', async () => {
    const { cell, words } = await sheet({ creepLimit: 0 });
    expect([cell('pops'), words('pops')]).toEqual(['', '! what ambient light may add cannot be read']);
  });

  test('a pause to cool that is missing is asked for, and rows that need it tell no time', async () => {
    const { cell, column, words } = await sheet({ cool: null });
    expect([cell('pops'), words('cool')]).toEqual([5, '! needed for more than 40 pops']);
    // 32 and 48 pops; 31 gaps of 2.2 s
    expect(column('Build', 'Open').slice(9)).toEqual([expect.closeTo(68.2, 9), '', '']);
    expect(column('Build', 'At the film').slice(10)).toEqual(['', '']);
  });

  test('a calculated time that looks like a time of day is a time', async () => {
    // 1/60 s and a second: 1464 minutes of a day.
    const { column, errors } = await sheet({ recycle: '1/60' });
    expect(errors).toEqual([]);
    // √((2 × 776.0469 + 16 × 1.0166667/2)/1.968627)
    expect(column('Build', 'At the film')[1]).toBeCloseTo(
      Math.sqrt((2 * 2 ** 9.6 + (16 * (61 / 60)) / 2) / 1.968627),
      3,
    );
  });
});

test('beside Heads its slowest head brings its times, and what is no head stops the pops', async () => {
  const book = await together([{ template: templateOf('heads') }, { template }]);
  const { cell, words, type } = book.form(1, template);
  // Birch 1200: 0.9 s, 50 flashes, 60 s. (5.018250 + 1.9 a)/(1 + 1.9 a) = 4.941, so 5 pops: 4 × 1.9 s open, ready after 5 × 1.9.
  await type('head', 'birch 1200');
  expect(['recycle', 'allowed', 'cool'].map(cell)).toEqual([0.9, 50, 60]);
  expect(words('head')).toBe('as Heads calls it, where that sheet is');
  expect([cell('pops'), cell('open'), cell('ready')]).toEqual([5, expect.closeTo(7.6, 9), expect.closeTo(9.5, 9)]); // prettier-ignore

  // 36 pops in a dark room, of a head that may fire 10 in a row
  for (const [id, value] of Object.entries({ ...MANY, ambient: null })) await type(id, value);
  await book.type('Models', 'In a row', 2, 10);
  expect([cell('pops'), cell('pauses')]).toEqual([36, 3]);
  // what its maker does not say is blank, and no 0
  await book.type('Models', 'Cool', 2, null);
  expect([cell('cool'), words('pops')]).toEqual([
    '',
    '! type the pause to cool, or clear the flashes in a row',
  ]);
  await book.type('Models', 'In a row', 2, null);
  expect([cell('allowed'), cell('pops'), cell('pauses')]).toEqual(['', 36, 0]);

  const refused = ['', '', '', '', '! not in Heads, or its row there is not ready', '! correct the head, or clear it and type times']; // prettier-ignore
  const said = () => [...['recycle', 'allowed', 'cool', 'pops'].map(cell), words('head'), words('pops')];
  await type('head', 'Rowan 300');
  expect(said()).toEqual(refused);
  // a name for any letters is the name of none
  await type('head', 'B*');
  expect(said().slice(3)).toEqual(refused.slice(3));
  await type('head', 'Birch 1200');
  expect(cell('pops')).toBe(36);
  // one that stands twice there, and one whose row is not ready
  await book.type('Models', 'Head', 1, 'Birch 1200');
  expect(said().slice(3)).toEqual(refused.slice(3));
  await book.type('Models', 'Head', 1, 'Alder 600');
  await book.type('Models', 'Recycle', 2, 'soon');
  expect(said().slice(3)).toEqual(refused.slice(3));

  await type('head', null);
  expect([cell('recycle'), cell('pops'), words('open')]).toEqual(['', 36, '! type the recycle time']);
  await type('recycle', 2);
  expect([cell('open'), words('head')]).toEqual([35 * 3, 'as Heads calls it, where that sheet is']);
  expect(book.errors()).toEqual([]);
  book.dispose();
});
