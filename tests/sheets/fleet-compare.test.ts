import { describe, expect, test } from 'vitest';
import { drawn } from '../full';
import { demoModels, fleet, model, STILL } from './fleet';

const stops = (ratio: number): number => Math.log2(ratio);
const LIMIT = 135;

describe('the demo job', () => {
  test('gives what is worked out by hand', async () => {
    const sheet = await fleet();
    expect(sheet.errors).toEqual([]);
    // The lens setting of the pour asks for f/22, 2^4.5, at 1.2 m. A front of 90 cm falls off as 1/(d² + 0.45²) from 2 m.
    const nearer = stops((2 ** 2 + 0.45 ** 2) / (1.2 ** 2 + 0.45 ** 2)); // 1.35535
    // Birch: f/32 +0.2 is 2^5.1. 135 µs lie between 90 µs at 300 Ws and 300 µs at 600, but 1.26 stops below the f-number wanted,
    // which is 2^4.5, the light is there already: 2 × 4.5 − 2 × 5.1 − 1.35535 = −2.555 stops, 26 tenths down with half a tenth let go.
    const birch = 1200 * 2 ** -2.6;
    expect(2 * 4.5 - 2 * 5.1 - nearer).toBeCloseTo(-2.555, 3);
    expect(sheet.of(1, 'Works Ws')).toBeCloseTo(birch, 6);
    // 150 Ws 130 µs and 300 Ws 90 µs: 0.4 of the way in stops
    expect(sheet.of(1, 'Flash there')).toBeCloseTo(1e-6 * 130 * (90 / 130) ** stops(birch / 150), 9);
    // linear in energy from 0.2 s at 18.75 Ws to 0.9 s at 1200; 180 flashes in rows of 50 cool three times, 60 s each
    const recycles = 0.2 + (0.7 * (birch - 18.75)) / (1200 - 18.75);
    expect(sheet.of(1, 'Frame')).toBeCloseTo(recycles + (3 * 60) / 180, 9);
    // three days at 55, and 180 frames of that time at 95 an hour
    const crew = (180 * (recycles + 1) * 95) / 3600;
    expect(sheet.of(1, 'Cost')).toBeCloseTo(3 * 55 + crew, 2);
    expect(sheet.of(6, 'Cost')).toBeCloseTo(crew, 2);
    expect(sheet.verdicts()[1]).toBe('Freezes at 198 Ws');
    // Hazel, t0.5: 135/log2(10) = 40.64 µs lie between 20 at 50 Ws and 45 at 100: 400 × 2^−2.2 is the first tenth below. It reads
    // 2^4.5 at 2 m, and falls off from a front of 18 cm.
    const hazel = 2.2 - stops((2 ** 2 + 0.09 ** 2) / (1.2 ** 2 + 0.09 ** 2)); // 0.7325
    expect(sheet.of(3, 'Short')).toBeCloseTo(hazel, 9);
    expect(2 ** (hazel - 0.05)).toBeCloseTo(1.6, 1);
    // (1.2² + 0.09²)/2^0.7325 − 0.09² is 0.9266², 0.772 × 1.2
    expect(sheet.verdicts()[3]).toBe('Freezes, but 0.7 stop short: 2 of them, or 0.77 × the distance');
    // Alder: 3.9 below full freezes, as in Freeze check for 135.8 µs; 2 × 4.5 − 2 × 4.65 + 3.9 − 1.35535 = 2.2446: five, where the
    // studio has two, and five plates of 8 A are 40
    expect(sheet.verdicts()[5]).toBe(
      'Freezes, but 2.2 stops short: 5 of them, not 2, or 0.31 × the distance',
    );
    expect(sheet.verdicts()[0]).toBe('Draws too much: 5 × 8 A on the plate, 16 A allowed');
    expect(sheet.verdicts()[2]).toBe(`Too slow: no setting in its durations is within ${LIMIT} µs at t0.1`);
    expect(sheet.verdicts()[4]).toBe('Not known: a measured reading');
  });

  test('ranks what works by its cost, and neither what fails nor what is not known', async () => {
    const { ranking, cell, beside } = await fleet();
    expect(ranking('Model').slice(0, 9)).toEqual([
      'Birch 1200 (ours)', 'Hazel 400 (ours)', 'Hazel 400', 'Birch 1200', 'Rowan 1000', 'Alder 600', 'Cedar 2400', 'Alder 600 (ours)', 'Cedar 2400 (ours)',
    ]); // prettier-ignore
    expect(ranking('Rank').slice(0, 9)).toEqual(['1', '2', '3', '4', '?', 'out', 'out', 'out', 'out']);
    expect(ranking('Job cost').slice(4).join('')).toBe('');
    expect(ranking('Heads').slice(0, 3)).toEqual(['1 of 1', '2 of 3', '2 of 6']);
    expect([cell('works'), beside('distance')]).toEqual([4, '! readings behind unlike modifiers']);
  });

  test('is drawn without what fails', async () => {
    const { column } = await fleet();
    const [names, costs] = [column('Drawn', 'Name'), column('Drawn', 'Cost') as number[]];
    expect(new Set(names).size).toBe(4);
    // past the last the last two stand again, each on its own side
    for (const [i, cost] of costs.slice(4).entries())
      expect([names[i + 4], cost]).toEqual([names[i % 2 === 0 ? 2 : 3], costs[i % 2 === 0 ? 2 : 3]]);
  });
});

describe('the hire job of tests/jobs', () => {
  // Its target for f/32 with the usual lens, draw and filter, and its four heads as metered there; the circuit is 120 V, 15 A.
  const JOB = { ...STILL, target: 44.89848, volts: 120, amps: 15 };
  const offered = (name: string, reading: number, tenths: number, recycle: number, rate: number, most: number) =>
    model(name, { Reading: reading, Tenths: tenths, Recycle: recycle, Rate: rate, Most: most, 'Read at': most, Least: most / 64, Plate: null, Lamp: 150 }); // prettier-ignore
  const FOUR = [
    offered('Alder 600', 16, 0, 0.9, 28, 600),
    offered('Birch 1200', 22, 0, 1.6, 45, 1200),
    offered('Cedar 2400', 32, 0, 2.8, 80, 2400),
    offered('Hazel 400', 11, 3, 3.5, 22, 400),
  ];
  test('comes out as its sums say', async () => {
    const sheet = await fleet(FOUR, JOB);
    expect(sheet.column('Fleet', 'Pops of one')).toEqual([8, 4, 2, 13]);
    // 8 × 0.9, 4 × 1.6, 2 × 2.8
    for (const [i, seconds] of [7.2, 6.4, 5.6].entries())
      expect(sheet.of(i, 'Frame')).toBeCloseTo(seconds, 9);
    // 600/(0.9 × 0.75 × 120 × 0.65) + 150/120, and so on
    for (const [i, amperes] of [12.64601, 14.07051, 15.90201].entries())
      expect(sheet.of(i, 'Draw')).toBeCloseTo(amperes, 5);
    expect([sheet.of(0, 'Cost'), sheet.of(1, 'Cost')]).toEqual([118.2, 165.4]);
    expect(sheet.verdicts()).toEqual([
      '8 pops at full power',
      '4 pops at full power',
      'Draws too much: up to 15.9 A by estimate, 15 A allowed',
      'Too dark: 13 pops, 8 allowed; 2 of them would do',
    ]);
    expect(sheet.ranking('Rank').slice(0, 4)).toEqual(['1', '2', 'out', 'out']);
  });
  test('two of the dark one make it work, at two hires', async () => {
    const sheet = await fleet([{ ...FOUR[3], Had: 2 } as (typeof FOUR)[0]], { ...JOB, amps: null });
    // 12.356 pops of one are 6.18 of two; 3.5 s each; two at 22 for three days
    expect(sheet.verdicts()).toEqual(['2 of them: 7 pops at full power']);
    expect(sheet.of(0, 'Cost')).toBeCloseTo(132 + (180 * 7 * 3.5 * 95) / 3600, 2);
  });
});

describe('what is not known, and what cannot be', () => {
  const LOW = { ...STILL, target: 16 };
  const SAYS: readonly (readonly [other: Parameters<typeof model>[1], says: string])[] = [
    [{}, '1 pop at 600 Ws'],
    [{ Rate: 0 }, 'Not known: its day rate'],
    [{ Rate: 'by arrangement' }, 'Rate: hire of one for a day, a number'],
    [{ Rate: null }, 'Not known: its day rate'],
    [{ Reading: null }, 'Not known: a measured reading'],
    [{ Recycle: null }, 'Not known: its recycle time'],
    [{ Had: null, Recycle: null }, 'Not known: its recycle time, how many can be had'],
    [{ Had: 0 }, 'None can be had'],
    [{ Plate: 1500 }, 'Plate: amperes up to 100, not watts'],
    [{ Reading: 11.3 }, 'its reading: full stop and tenths, with the Ws and metres of it'],
    [{ Distance: 80 }, 'its reading: full stop and tenths, with the Ws and metres of it'],
    [{ Most: null }, 'Most: its Ws at full power, up to 10 000'],
    [{ Least: 700 }, 'Least: its least Ws, not above its most'],
    [{ From: null }, 'From: choose hire or own'],
    [{ From: 'own', Had: null, Rate: null }, 'Not known: how many can be had'],
    [{ From: 'own', Had: null, Owned: 1, Rate: null }, '1 pop at 600 Ws'],
    // one fixed power needs no step, and one that cannot be read is told all the same
    [{ Least: 600, Step: null }, '1 pop at 600 Ws'],
    [{ Least: 600, Step: 'coarse' }, 'Step: of its dial: 0.1, 1/3, 1/2 or 1'],
    [{ 'Energy 1': 600 }, 'its durations: an energy up to its most beside each flash'],
    [{ 'Energy 1': 600, 'Flash 1': '1 ms' }, 'choose the level of its durations: t0.1 or t0.5'],
  ];
  test('is said in the row, each in its own words', async () => {
    const sheet = await fleet(SAYS.map(([other], i) => model(`Model ${i}`, other)), LOW); // prettier-ignore
    expect(sheet.verdicts()).toEqual(SAYS.map(([, says]) => says));
    expect(sheet.errors).toEqual([]);
  });
  test('a model without durations, where the flash must freeze, is not known and no failure', async () => {
    const sheet = await fleet([model('A'), model('B', { Plate: 20 })], { ...LOW, limit: 100, amps: 16 });
    expect(sheet.verdicts()).toEqual(['Not known: its durations', 'Draws too much: 20 A on the plate, 16 A allowed']); // prettier-ignore
  });
  test('a fixed head with a step that cannot be read is not said to be slow', async () => {
    const fixed = { Least: 600, Step: 'coarse', 'Energy 1': 600, 'Flash 1': '90 µs', Level: 't0.1' };
    const sheet = await fleet([model('A', fixed)], { ...LOW, limit: 100 });
    expect([sheet.of(0, 'State'), sheet.verdicts()[0]]).toEqual(['unknown', 'Step: of its dial: 0.1, 1/3, 1/2 or 1']); // prettier-ignore
  });
  test('a plate of 230 V is not believed at 120, where a breaker is asked about', async () => {
    // 600 Ws in 0.6 s are 1000 W: 4.35 A at 230 V and 8.33 A at 120 before anything is lost
    const judged = async (volts: number, amps: number | null) =>
      (await fleet([model('A', { Recycle: 0.6 })], { ...LOW, volts, amps })).verdicts()[0];
    expect(await judged(120, 16)).toBe('Plate: too little for its Ws, recycle and volts');
    expect(await judged(230, 16)).toBe('1 pop at 600 Ws');
    expect(await judged(120, null)).toBe('1 pop at 600 Ws');
  });
  test('two of one name are told apart by where they come from, or not at all', async () => {
    const twice = 'stands twice in this list: name the two apart';
    const sheet = await fleet([model('A'), model('a'), model('A', { From: 'own', Owned: 1 })], LOW);
    expect(sheet.verdicts()).toEqual([twice, twice, '1 pop at 600 Ws']);
    // a blank after a name, and a name that reads like what an own one is called
    const blank = await fleet([model('A'), model('A '), model('B', { From: 'own', Owned: 1 }), model('B (ours)')], LOW); // prettier-ignore
    expect(blank.verdicts()).toEqual([twice, twice, twice, twice]);
  });

  test.each(
    drawn([
      [{ distance: 80 }, 'how far the light stands: metres, up to 20'],
      [{ target: null }, 'type what the meter must read'],
      [{ target: 400 }, 'what the meter must read cannot be right'],
      [{ frames: 0 }, 'frames: a whole number from 1 up'],
      [{ amps: 0 }, 'breaker: amperes up to 125, or blank'],
      [{ amps: 1800 }, 'breaker: amperes up to 125, or blank'],
      [{ days: null }, 'type the days of hire'],
      [{ crew: 'two people' }, 'type what the crew costs an hour'],
      [{ limit: 'short' }, 'longest flash: microseconds, or blank'],
      // 1/2000 typed as a fraction of a second is a day of the year 2000 to a spreadsheet, 36526
      [{ limit: 36526 }, 'longest flash: microseconds, or blank'],
      [{ mostPops: 2.5 }, 'pops, at most: a whole number, 1 to 999'],
    ] as const),
  )('%o of the job is said once, above, and nothing is ranked', async (typed, says) => {
    const sheet = await fleet([model('A')], { ...LOW, ...typed });
    expect(sheet.beside('target')).toBe(`! ${says}`);
    expect([sheet.verdicts()[0], sheet.ranking('Rank')[0], sheet.cell('works')]).toEqual([
      'see what the job lacks, above', '?', '',
    ]); // prettier-ignore
  });
});

describe('the order', () => {
  test('tells ties, and a fleet that fails as a whole', async () => {
    const tied = await fleet([model('A'), model('B'), model('C', { Rate: 39 })], { ...STILL, target: 16 });
    expect(tied.ranking('Model').slice(0, 3)).toEqual(['C', 'A', 'B']);
    expect(tied.ranking('Rank').slice(0, 3)).toEqual(['1', '2 =', '2 =']);
    const first = await fleet([model('A'), model('B')], { ...STILL, target: 16 });
    expect(first.beside('works')).toBe('! 2 share the first place');
    const none = await fleet([model('A'), model('B')], { ...STILL, target: 90 });
    expect([none.cell('works'), none.beside('works')]).toEqual([0, '! none works: see why below']);
    const one = await fleet([model('A')], { ...STILL, target: 16 });
    expect([one.ranking('Rank')[0], one.beside('works')]).toEqual([
      '1',
      'ranked below by the cost of the job',
    ]);
  });

  test('of rows that are sorted another way is the same', async () => {
    const [there, back] = [await fleet(), await fleet([...demoModels].reverse())];
    expect(back.verdicts()).toEqual([...there.verdicts()].reverse());
    for (const column of ['Model', 'Job cost', 'Rank', 'Verdict'])
      expect(back.ranking(column).slice(0, 4), column).toEqual(there.ranking(column).slice(0, 4));
  });

  test('of forty models is whole, and says how many print', async () => {
    const forty = Array.from({ length: 40 }, (_, i) => model(`Model ${i + 1}`, { Rate: 140 - i }));
    const sheet = await fleet(forty, { ...STILL, target: 16 });
    expect(sheet.ranking('Model')[0]).toBe('Model 40');
    expect(sheet.column('Further', 'Model').at(-1)).toBe('Model 1');
    expect(sheet.beside('works')).toBe('! 12 print; the others stand below');
  });
});

test('empty, it says nothing and shows nothing', async () => {
  const { templateOf, calculated } = await import('./support');
  const sheet = await calculated(templateOf('fleet-compare'), false);
  expect([sheet.cell('works'), sheet.errors]).toEqual(['', []]);
  for (const column of ['Model', 'Rank', 'Verdict']) expect(new Set(sheet.column('Ranking', column))).toEqual(new Set([''])); // prettier-ignore
});
