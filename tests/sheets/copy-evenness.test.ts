import { describe, expect, test } from 'vitest';
import evenness from '../../src/published/evenness.json';
import { EVENNESS_ANSWERS } from './evennessAnswers';
import { lightEvenness } from '../../src/exposure/light/lightEvenness';
import { isFail } from '../../src/exposure/core/result';
import type { TemplateValue } from '../../src/sheets/template';
import { FULL } from '../full';
import { JOBS } from '../jobs/job';
import { calculated, templateOf, type Typed, typedOver, wordsBeside } from './support';

const template = templateOf('copy-evenness');

type Line = readonly TemplateValue[];
/** The list has room for ten lines, of a row of the grid and five places each. */
const LINES = 10;
const line = (values: Line): Line => Array.from({ length: 6 }, (_, i) => values[i] ?? null);

const CLEAR: Typed = { scale: null, linear: null, black: null, clip: null, step: null, repeat: null, limit: null, own: null, card: null, turned: null }; // prettier-ignore
const LUX: Typed = { scale: 'lux', step: 1, repeat: 0, limit: 'FADGI 2 star', turned: 'metered at each place' }; // prettier-ignore
const RAW: Typed = { ...LUX, scale: 'raw', black: 512, clip: 16383, turned: 'one picture' };
const TENTHS: Typed = { ...LUX, scale: 'f-number', step: 0.1 };
const CODED: Typed = { ...LUX, scale: 'gamma-coded', linear: 'as sRGB', clip: 255, turned: 'one picture' };

/** A line of values a row of the grid, its number before them; fewer lines than ten are filled up with blank ones. */
async function copied(lines: readonly Line[], typed: Typed) {
  const filled = Array.from({ length: Math.max(LINES, lines.length) }, (_, i) => line(lines[i] ?? []));
  const made = await calculated(typedOver(template, { ...CLEAR, ...typed }, { Field: filled }));
  const map = [1, 2, 3, 4, 5].map((k) => made.column('Map', `Across ${k}`));
  return {
    ...made,
    beside: (id: string) => wordsBeside(template, made, id),
    lacks: () => made.column('Field', 'Lacks').filter((words) => words !== ''),
    /** Row by row, with the key below. */
    map: [0, 1, 2, 3, 4, 5].map((r) => map.map((column) => column[r])),
  };
}
/** Rows 1 to 3 of so many places. */
const grid = (...rows: readonly Line[]): Line[] => rows.map((values, r) => [r + 1, ...values]);

const job = JOBS.get('07-copy-stand');
const step = (asks: string) => {
  const found = job?.steps.find((each) => each.asks.startsWith(asks));
  if (!found) throw new Error(`The job asks nothing like ${asks}`);
  return found;
};
const LUX_GRID = grid(
  ...((step('A lux meter at nine places').cells as { A1: number[][] }).A1 as readonly Line[]),
);

describe('the copy job of tests/jobs', () => {
  test('nine places in lux: 5.6 %, beyond the 5 % of two stars and within the 8 % of one', async () => {
    const sheet = await copied(LUX_GRID, LUX);
    expect(sheet.cell('uneven')).toBeCloseTo(step('A lux meter at nine places').expect as number, 9);
    // a step of 1 lx at 1250 lx; light that stays does not vary
    expect(sheet.cell('doubt')).toBeCloseTo(0.08, 9);
    expect([sheet.cell('limitIs'), sheet.cell('verdict')]).toEqual([5, 'beyond']);
    expect(sheet.cell('worked')).toBe('|5.6 − 5| = 0.6 > 0.08 = 0.08 (a step) + 0 (the pops)');
    const one = await copied(LUX_GRID, { ...LUX, limit: 'FADGI 1 star' });
    expect([one.cell('limitIs'), one.cell('verdict'), one.beside('verdict')]).toEqual([
      8,
      'within',
      'the limit',
    ]);
    expect(sheet.errors).toEqual([]);
  });
  test('its right is brighter, its bottom darker, by as much as between the means of its sides', async () => {
    const sheet = await copied(LUX_GRID, LUX);
    // a plane through evenly spaced places: mean of the stops at one side less that at the other
    const stops = (...lux: number[]) => lux.reduce((sum, each) => sum + Math.log2(each) / lux.length, 0);
    expect(sheet.cell('slopeX')).toBeCloseTo(stops(1250, 1245, 1225) - stops(1210, 1195, 1180), 9);
    expect(sheet.cell('slopeY')).toBeCloseTo(stops(1180, 1215, 1225) - stops(1210, 1235, 1250), 9);
    // the job takes the stops of the means instead, which is another number from the fourth decimal on
    expect(sheet.cell('slopeX')).toBeCloseTo(step('Which side is brighter').expect as number, 3);
    expect(sheet.cell('slopeY')).toBeCloseTo(step('And bottom against top').expect as number, 3);
    expect([sheet.cell('sideways'), sheet.cell('upright')]).toEqual([
      '0.05 stop across, right brighter',
      '0.03 stop down, top brighter',
    ]);
    expect(sheet.cell('ends')).toBe('row 1, across 3; darkest: row 3, across 1');
  });
  test('the black level comes off raw values: 5 %, and no step above or below can be told', async () => {
    const raw = grid([11912, 12512, 12512], [12512, 12512, 12512], [12512, 12512, 12512]);
    const sheet = await copied(raw, RAW);
    expect(sheet.cell('uneven')).toBeCloseTo(step('From the raw file').expect as number, 9);
    expect(sheet.cell('verdict')).toBe('cannot tell');
  });
});

describe('the limits', () => {
  test('of the list are those that are published', async () => {
    const checks = new Map(evenness.checks.map(({ id, gives }) => [id, gives]));
    const sheet = await calculated(template);
    const shares = sheet.column('Limits', 'Unevenness');
    expect(sheet.column('Limits', 'Limit').slice(0, 4)).toEqual([1, 2, 3, 4].map((n) => `FADGI ${n} star`));
    expect(shares.slice(0, 4)).toEqual([1, 2, 3, 4].map((n) => checks.get(`star-${n}`)));
    // ΔL* up to A3, A2, A1 and A0 of Metamorfoze Preservation Imaging Guidelines 2.0, as a Czech methodology quotes them
    expect(sheet.column('Limits', 'L').slice(4, 8)).toEqual([3, 4, 5, 6]);
    const GREY = 50.000057510816134;
    const inLightness = [
      ['Metamorfoze to A3', GREY, 'grey-lightness-3'],
      ['Metamorfoze to A2', GREY, 'grey-lightness-4'],
      ['Metamorfoze to A0', GREY, 'grey-lightness-6'],
      ['Metamorfoze to A3', 95, 'white-lightness-3'],
      ['Metamorfoze to A1', 95, 'white-lightness-5'],
    ] as const;
    for (const [limit, card, id] of inLightness.slice(0, FULL ? inLightness.length : 1)) {
      const made = await copied(LUX_GRID, { ...LUX, limit, card });
      expect(made.cell('limitIs'), id).toBeCloseTo(checks.get(id) as number, 8);
    }
  });
  const unknown: readonly [Typed, string, string][] = [
    [{ limit: null }, 'limit', '! choose a limit'],
    [{ limit: 'half' }, 'limit', '! choose one of the list'],
    [{ limit: 'my own' }, 'own', '! type it, in percent'],
    [{ limit: 'my own', own: 120 }, 'own', '! percent, from 0.5 to 99'],
    [{ limit: 'Metamorfoze to A3' }, 'card', '! the card’s L*: grey is 50'],
    [{ limit: 'Metamorfoze to A3', card: 0.5 }, 'card', '! L* is 20 to 100 here'],
  ];
  test.each(unknown.slice(0, FULL ? unknown.length : 1))(
    '%o leaves the verdict out, and says why',
    async (typed, id, says) => {
      const sheet = await copied(LUX_GRID, { ...LUX, ...typed });
      expect([sheet.beside(id), sheet.cell('verdict'), sheet.cell('limitIs')]).toEqual([says, '', '']);
      expect(sheet.beside('verdict')).toBe('! which limit?');
      expect(sheet.cell('uneven')).toBeCloseTo(5.6, 9);
    },
  );
  test('one of one’s own is taken as typed', async () => {
    const sheet = await copied(LUX_GRID, { ...LUX, limit: 'my own', own: 5.7 });
    expect([sheet.cell('limitIs'), sheet.cell('verdict')]).toEqual([5.7, 'within']);
  });
});

describe('the map', () => {
  test('holds stops from the centre, and a key from the brightest place to the limit', async () => {
    // half, twice and four times the light of the centre
    const sheet = await copied(grid([50, 100, 400], [100, 100, 200], [100, 100, 100]), LUX);
    expect(sheet.map.slice(0, 3).map((row) => row.slice(0, 3))).toEqual([[-1, 0, 2], [0, 0, 1], [0, 0, 0]]); // prettier-ignore
    expect(sheet.map.slice(0, 5).flatMap((row, r) => (r < 3 ? row.slice(3) : row)).filter((cell) => cell !== '')).toEqual([]); // prettier-ignore
    // 5 % are 0.0740005814438 stop, as published with the limit; the map shows thousandths
    const key = sheet.map[5] as number[];
    for (const [i, stops] of key.entries())
      expect(stops).toBe(Math.round(1000 * (2 - (0.0740005814438 * i) / 4)) / 1000);
  });
  test('of five by five has its centre in the middle', async () => {
    const rows = [1, 2, 3, 4, 5].map((r) => [r, ...[1, 2, 3, 4, 5].map((c) => (c === 3 && r === 3 ? 200 : 100))]); // prettier-ignore
    const sheet = await copied(rows, LUX);
    expect(sheet.map[2]).toEqual([-1, -1, 0, -1, -1]);
    expect(sheet.cell('uneven')).toBe(50);
  });
});

describe('repeated pops', () => {
  test('are averaged as light, and their scatter is counted', async () => {
    const lines = [
      ...grid([100, 100, 100], [100, 100, 100], [100, 100, 100]),
      ...grid([200, 100, 100], [100, 100, 100], [100, 100, 100]),
    ];
    const sheet = await copied(lines, { ...LUX, repeat: null });
    // (100 + 200)/2 = 150 lx: 50 of 150 are 33.3 %
    expect(sheet.cell('uneven')).toBeCloseTo(100 / 3, 9);
    // one place of nine is half a stop off its mean twice: √(2 × 0.5²/9) = 0.2357023 stop
    expect(sheet.cell('varies')).toBeCloseTo(0.2357023, 6);
    expect(sheet.cell('pops')).toBe(2);
    // nine places, and nine degrees of freedom: 4.4 + 10.1/(9 − 0.9) = 5.646914; times 0.2357023/√2 = 0.9411523 stop:
    // 1 − 2^−0.9411523 = 47.92 %; and 1 of 150 lx
    expect(sheet.cell('doubt')).toBeCloseTo(47.9183 + 0.6667, 3);
    expect(sheet.cell('workedPops')).toBe('the pops: 5.6 × 0.2357 stop / √2 = 0.9412 stop');
  });
  test('shrink the scatter by the fewest of any place, and never the step', async () => {
    const [once, darker, brighter] = [100, 99, 101].map((lux) =>
      grid([lux, lux, lux], [lux, lux, lux], [lux, lux, lux]),
    ) as [Line[], Line[], Line[]];
    const parts = async (lines: readonly Line[]) => {
      const sheet = await copied(lines, { ...LUX, repeat: 0.1 });
      return [sheet.cell('stepPart'), sheet.cell('popPart')] as const;
    };
    // 2.8 × 0.1 = 0.28 stop: 17.64 %; through √2 0.19799: 12.82 %
    const [one, two, most] = [await parts(once), await parts([...darker, ...brighter]), await parts([...darker.slice(0, 2), ...brighter.slice(0, 2), ...once.slice(2)])]; // prettier-ignore
    expect([one[0], two[0], most[0]]).toEqual([1, 1, 1]);
    expect(one[1]).toBeCloseTo(17.6409, 3);
    expect(two[1]).toBeCloseTo(12.8232, 3);
    expect(most[1]).toBe(one[1]);
  });
  test('are asked for where nothing says what they vary by', async () => {
    const sheet = await copied(LUX_GRID, { ...LUX, repeat: null });
    expect([sheet.cell('verdict'), sheet.cell('doubt')]).toEqual(['cannot tell', '']);
    expect(sheet.beside('verdict')).toBe('! what do pops vary by? Take a second');
    expect(sheet.cell('uneven')).toBeCloseTo(5.6, 9);
  });
});

describe('the sides', () => {
  test('are those of the plane, by the real places, with corners blank as well', async () => {
    // stops of 0.2 to the right per 400 mm and 0.1 upwards per 300 mm, at places that are not evenly spaced
    const [left, down] = [[100, 150, 500], [0, 210, 300]] as const; // prettier-ignore
    const places = Object.fromEntries([1, 2, 3].flatMap((k) => [[`left${k}`, left[k - 1] as number], [`down${k}`, down[k - 1] as number]])); // prettier-ignore
    const values = down.map((y, r) => left.map((x, c) => (r === 0 && c === 2 ? null : 1000 * 2 ** (0.2 * ((x - 100) / 400) - 0.1 * (y / 300))))); // prettier-ignore
    const sheet = await copied(grid(...values), { ...LUX, ...places });
    expect(sheet.cell('slopeX')).toBeCloseTo(0.2, 9);
    expect(sheet.cell('slopeY')).toBeCloseTo(-0.1, 9);
    expect([sheet.cell('sideways'), sheet.cell('upright')]).toEqual([
      '0.2 stop across, right brighter',
      '0.1 stop down, top brighter',
    ]);
  });
  test('are none where the meter cannot tell', async () => {
    const sheet = await copied(grid(['11 5', '11 5', '11 4'], ['11 5', '11 5', '11 4'], ['11 5', '11 5', '11 5']), TENTHS); // prettier-ignore
    expect(sheet.cell('sideways')).toBe('0.07 stop across, less than this can tell');
  });
  const places: readonly [Typed, string][] = [
    [{ left2: null }, 'left2'],
    [{ left3: 165 }, 'left3'],
    [{ down3: 5 }, 'down3'],
  ];
  test.each(places.slice(0, FULL ? places.length : 1))(
    '%o: the places are asked for, and the rest stands',
    async (typed, id) => {
      const sheet = await copied(LUX_GRID, { ...LUX, ...typed });
      expect(sheet.beside(id)).toBe('! more than the one before');
      const asked = 'type where the places are, in order';
      expect([sheet.cell('sideways'), sheet.cell('upright'), sheet.cell('verdict')]).toEqual([
        asked,
        asked,
        'beyond',
      ]);
    },
  );
});

describe('values that are coded', () => {
  test('are refused unless it is said how', async () => {
    const sheet = await copied(grid([250, 250, 250], [250, 250, 250], [250, 250, 250]), { ...CODED, linear: null }); // prettier-ignore
    expect(sheet.beside('scale')).toBe('! coded values are no light');
    expect(sheet.beside('verdict')).toBe('! the scale: coded values are no light');
    expect([sheet.cell('uneven'), sheet.map.flat().join('')]).toEqual(['', '']);
  });
  test('are made linear by the curve of IEC 61966-2-1', async () => {
    // 0.5 is 0.214041140482232 and 0.04045 is 0.00313080495356 of the light in the tests of an image library in C++;
    // 0.461356129500442 is 0.18 in the documentation of one about colour
    const coded = [0.5, 0.04045, 0.461356129500442];
    const sheet = await copied(grid(coded, [0.5, 0.5, 0.5], [0.5, 0.5, 0.5]), { ...CODED, clip: 1, step: 0.001 }); // prettier-ignore
    const light = [1, 2, 3].map((k) => sheet.column('Mean', `Light ${k}`)[0]);
    for (const [i, known] of [0.214041140482232, 0.00313080495356, 0.18].entries())
      expect(light[i]).toBeCloseTo(known, 12);
    // the last thousandth before 0.5, half of it on either side: by those same numbers at 0.5005 and 0.4995
    const curve = (c: number) => ((c + 0.055) / 1.055) ** 2.4;
    expect(sheet.cell('stepPart')).toBeCloseTo((100 * (curve(0.5005) - curve(0.4995))) / curve(0.5), 5);
  });
});

describe('is refused in words, with no answer left:', () => {
  const nine = [[100, 100, 100], [100, 100, 100], [100, 100, 100]] as const; // prettier-ignore
  const four = grid(...[1, 2, 3, 4].map(() => [100, 99, 98, 97]));
  const CLIPPED = '! a value is clipped: see the list, expose less and begin again';
  const LINE = '! a line of the list is not right: see there';
  const refused: readonly [string, Line[], Typed, string][] = [
    ['four by four', four, LUX, '! 4 rows of 4: lay 3 by 3 or 5 by 5 places'],
    ['one clipped value', grid([16383, 900, 900], [900, 900, 900], [900, 900, 900]), RAW, CLIPPED],
    ['no centre', grid([100, 100, 100], [100, null, 100], [100, 100, 100]), LUX, '! a place lacks its value: only corners may be blank'],
    ['a word', grid(['dark', 100, 100], ...nine.slice(1)), LUX, LINE],
    ['three rows of five', four.slice(0, 3).map((row) => [...row, 96]), LUX, '! 3 rows of 5: lay 3 by 3 or 5 by 5 places'],
    ['rows 2 to 4', nine.map((row, r) => [r + 2, ...row]), LUX, '! begin at row 1 and at Across 1, and leave none out'],
    ['one coded white', grid([255, 250, 250], [250, 250, 250], [250, 250, 250]), CODED, CLIPPED],
    ['a raw value below the black level', grid([400, 900, 900], [900, 900, 900], [900, 900, 900]), RAW, LINE],
    ['no light', grid([0, 100, 100], ...nine.slice(1)), LUX, LINE],
    ['a line of no row', [[null, ...nine[0]], [2, ...nine[1]], [3, ...nine[2]]], LUX, LINE],
    ['row 6', [[6, ...nine[0]], [2, ...nine[1]], [3, ...nine[2]]], LUX, LINE],
    ['lux as f-numbers', grid([1210, 1235, 1250], [1195, 1230, 1245], [1180, 1215, 1225]), TENTHS, LINE],
    ['tenths behind a point', grid([11.4, 11, 11], [11, 11, 11], [11, 11, 11]), TENTHS, LINE],
    ['no scale', grid(...nine), { ...LUX, scale: null }, '! the scale: say what the values count'],
    ['another scale', grid(...nine), { ...LUX, scale: 'EV' }, '! the scale: f-number, lux, raw or coded'],
    ['raw without a black level', grid(...nine), { ...RAW, black: null }, '! a cell above is not right'],
    ['raw without its highest value', grid(...nine), { ...RAW, clip: null }, '! a cell above is not right'],
    ['lux with a black level', grid(...nine), { ...LUX, black: 512 }, '! a cell above is not right'],
    ['no step of the meter', grid(...nine), { ...LUX, step: null }, '! a cell above is not right'],
    ['tenths as tens', grid([11, 11, 11], [11, 11, 11], [11, 11, 11]), { ...TENTHS, step: 10 }, '! a cell above is not right'],
    ['lux of a picture', grid(...nine), { ...LUX, turned: 'camera turned too' }, '! a cell above is not right'],
    ['raw values of a meter', grid([900, 900, 900], [900, 900, 900], [900, 900, 900]), { ...RAW, turned: 'metered at each place' }, '! a cell above is not right'],
    ['no value at all', [], LUX, '! no values yet'],
  ]; // prettier-ignore
  test.each(refused.slice(0, FULL ? refused.length : 4))('%s', async (_, lines, typed, says) => {
    const sheet = await copied(lines, typed);
    expect(sheet.beside('verdict')).toBe(says);
    expect(EVENNESS_ANSWERS.map((id) => sheet.cell(id)).join('')).toBe('');
    expect(sheet.map.flat().join('')).toBe('');
    if (says === LINE || says === CLIPPED)
      expect(sheet.lacks()).toHaveLength(1 + (typed === TENTHS && lines[0]?.[1] === 1210 ? 2 : 0));
    expect(sheet.errors).toEqual([]);
  });
});

test('blank corners, all four of them, are no fault', async () => {
  const sheet = await copied(grid([null, 100, null], [95, 100, 98], [null, 100, null]), LUX);
  expect([sheet.cell('uneven'), sheet.map[0]?.[0], sheet.beside('verdict')]).toEqual([
    5,
    '',
    '! the limit is nearer than 1 %',
  ]);
});

test('f-numbers are read as a meter shows them', async () => {
  const sheet = await copied(
    grid(['11 4', 'f/11+0.4', '11⁴'], [11, 'f/11', '11 0'], [5.6, 'f/11.4', 8]),
    TENTHS,
  );
  const [tenths, eleven] = [11 + 0.4, 11].map((n) => 2 ** (n === 11 ? 7 : 7.4)) as [number, number];
  const light = [0, 1, 2].map((r) => [1, 2, 3].map((k) => sheet.column('Mean', `Light ${k}`)[r]));
  const wanted = [[tenths, tenths, tenths], [eleven, eleven, eleven], [32, 11.4 ** 2, 64]]; // prettier-ignore
  for (const [r, row] of wanted.entries())
    for (const [c, n] of row.entries()) expect(light[r]?.[c], `${r}, ${c}`).toBeCloseTo(n, 6);
});

test('each way of taking the values has its own sentence, and none stands for all', async () => {
  const said = new Set<unknown>();
  const ways = [null, 'one picture', 'card turned too', 'camera turned too', 'flat field divided out'];
  const raw = grid([900, 900, 900], [900, 900, 900], [900, 900, 900]);
  for (const turned of ways) said.add((await copied(raw, { ...RAW, turned })).cell('tells'));
  said.add((await copied(LUX_GRID, LUX)).cell('tells'));
  expect(said.size).toBe(6);
  expect([...said].filter((words) => String(words).startsWith('not said'))).toHaveLength(1);
});

test.each<['lux' | 'aperture', Typed, Line[]]>([
  ['lux', LUX, [[211, 240, 230, 222, 201], [233, 260, 251, 240, 218], [238, 266, 258, 247, 224], [230, 255, 250, 236, 215], [207, 236, 228, 216, 196]]],
  ['aperture', TENTHS, [[10.5, 11, 9], [12, 13, 10], [8, 11, 7]].map((row) => row.map((n) => `f/${n} exact`))],
])('in %s it says what LIGHTEVENNESS says', async (scale, typed, rows) => {
  const sheet = await copied(grid(...rows), typed);
  const values = rows.flat().map((value) => Number(String(value).replace(/[^\d.]/g, '')));
  const known = lightEvenness(values, scale);
  expect(isFail(known)).toBe(false);
  expect(sheet.cell('uneven')).toBeCloseTo(known as number, 9);
}); // prettier-ignore

test('empty, it says nothing and shows nothing', async () => {
  const sheet = await calculated(template, false);
  expect(sheet.errors).toEqual([]);
  expect(['verdict', 'uneven', 'limitIs', 'doubt', 'tells'].map((id) => sheet.cell(id)).join('')).toBe('');
  expect(wordsBeside(template, sheet, 'verdict')).toBe('! no values yet');
});

// The longest list, which opens the sheet anew.
test('the copy job of tests/jobs: a flash meter cannot tell 6.7 % from 8 %, with the job’s sum', async () => {
  // five pops at five places, the corners blank; the job knows apart from them what pops vary by
  const cross = [[null, '11 5', null], ['11 5', '11 5', '11 4'], [null, '11 5', null]] as const; // prettier-ignore
  const lines = cross.flatMap((values, r) => Array.from({ length: 5 }, () => [r + 1, ...values]));
  const typed = { ...TENTHS, repeat: 0.05477226, limit: 'FADGI 1 star' };
  const sheet = await copied(lines, typed);
  expect(sheet.cell('uneven')).toBeCloseTo(step('With the flash meter instead').expect as number, 5);
  expect(sheet.cell('stepPart')).toBeCloseTo(6.696701, 5);
  expect(sheet.cell('popPart')).toBeCloseTo(4.642766, 5);
  expect(sheet.cell('doubt')).toBeCloseTo(11.33947, 5);
  expect(sheet.cell('verdict')).toBe(step('Limit 8 %, value 6.7 %').expect);
  expect(sheet.beside('verdict')).toBe('! the limit is nearer than 11.3 %');
  expect(sheet.cell('worked')).toBe('|6.7 − 8| = 1.3 ≤ 11.34 = 6.7 (a step) + 4.64 (the pops)');
  expect(sheet.cell('workedPops')).toBe('the pops: 2.8 × 0.0548 stop / √5 = 0.0686 stop');
});
