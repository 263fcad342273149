import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parseAddress, type Place } from '../../src/formula/address';
import { layout, tableTop } from '../../src/sheets/layout';
import type { TemplateValue } from '../../src/sheets/template';
import { FULL } from '../full';
import { templateOf, type Typed, typedOver } from './support';
import { opened } from './tired/opened';

/** What a tired hand types that looks right: opened once, empty, with a list of ten lines. */
const CLEAR: Typed = { scale: null, linear: null, black: null, clip: null, step: null, repeat: null, limit: null, own: null, card: null, turned: null }; // prettier-ignore
const template = typedOver(templateOf('copy-evenness'), CLEAR, {
  Field: Array.from({ length: 10 }, () => [null, null, null, null, null, null]),
});
const { cells, tables } = layout(template);

const LUX: Typed = { scale: 'lux', step: 1, repeat: 0, limit: 'FADGI 2 star', turned: 'metered at each place' }; // prettier-ignore
const TENTHS: Typed = { ...LUX, scale: 'f-number', step: 0.1 };
const RAW: Typed = { ...LUX, scale: 'raw', black: 0, clip: 16383, turned: 'one picture' };
const CODED: Typed = { ...LUX, scale: 'gamma-coded', linear: 'as sRGB', clip: 255, turned: 'one picture' };

type Line = readonly TemplateValue[];
/** Rows 1 to 3, alike but for the first place. */
const grid = (first: TemplateValue, others: TemplateValue): Line[] =>
  [first, others, others].map((value, r) => [r + 1, value, others, others]);

let sheet: Awaited<ReturnType<typeof opened>>;
beforeAll(async () => {
  sheet = await opened(template);
});
afterAll(() => sheet.dispose());

async function typed(inputs: Typed, lines: readonly Line[], mapRow2?: TemplateValue) {
  const field = tables.get('Field');
  const top = field ? tableTop(field) + 1 : NaN;
  const left = parseAddress(field?.at ?? '')?.column ?? NaN;
  const place = (id: string): Place => {
    const found = cells.get(id)?.place;
    if (!found) throw new Error(`There is no cell ${id}.`);
    return found;
  };
  const change = new Map(Object.entries(inputs).map(([id, value]) => [place(id), value]));
  for (const [r, line] of lines.entries())
    for (const [c, value] of line.entries())
      if (value !== null) change.set({ row: top + r, column: left + c }, value);
  const map = tables.get('Map');
  const second: Place = {
    row: map ? tableTop(map) + 2 : NaN,
    column: parseAddress(map?.at ?? '')?.column ?? NaN,
  };
  if (mapRow2 !== undefined) change.set(second, mapRow2);
  const seen = await sheet.after(change);
  return {
    cell: (id: string) => seen(place(id)),
    beside: (id: string) => seen({ ...place(id), column: place(id).column + 2 }),
    secondOfMap: [1, 2, 3, 4, 5].map((c) => seen({ ...second, column: second.column + c })),
    lacks: lines.map((_, r) => seen({ row: top + r, column: left + 6 })).filter((words) => words),
  };
}

/** So many places each way, of 1000 lx but for the first. */
const square = (size: number, first: TemplateValue): Line[] =>
  Array.from({ length: size }, (_, r) => [
    r + 1,
    ...Array.from({ length: size }, (__, c) => (r + c === 0 ? first : 1000)),
  ]);

describe('of light of which pops vary by 0.02 stop', () => {
  // a step of 1 lx is 0.1 %; two readings 2.8 × 0.02 = 0.056 stop, 3.8072 %; nine 4.4 × 0.02 = 0.088 stop, 5.9176 %;
  // 25 5.2 × 0.02 = 0.104 stop, 6.9549 %
  const varying: Typed = { ...LUX, repeat: 0.02, limit: 'my own' };
  test.each([
    // 5 − 0.5 = 4.5 is more than 3.9072, which two readings would need, and less than 6.0176
    [3, 950, 0.5, 6.0176, 'cannot tell'],
    [3, 930, 0.5, 6.0176, 'beyond'],
    [5, 930, 0.5, 7.0549, 'cannot tell'],
    [5, 920, 0.5, 7.0549, 'beyond'],
    // below the limit: 8 − 4.1 = 3.9, and 8 − 4 = 4
    [5, 959, 8, 3.9072, 'cannot tell'],
    [5, 960, 8, 3.9072, 'within'],
  ])(
    '%i places each way, the darkest %i lx, limit %d %%, doubt %d %%: %s',
    async (size, first, own, doubt, verdict) => {
      const copy = await typed({ ...varying, own }, square(size, first));
      expect(copy.cell('doubt')).toBeCloseTo(doubt, 3);
      expect(copy.cell('verdict')).toBe(verdict);
    },
  );
  test('the arithmetic names the places that count', async () => {
    const beyond = await typed({ ...varying, own: 0.5 }, square(5, 920));
    expect(beyond.cell('workedPops')).toBe('the pops: 5.2 × 0.02 stop / √1 = 0.104 stop');
    const within = await typed({ ...varying, own: 8 }, square(3, 960));
    expect(within.cell('workedPops')).toBe('the pops: 2.8 × 0.02 stop / √1 = 0.056 stop');
  });
  test('without a limit the larger counts', async () => {
    const copy = await typed({ ...varying, limit: null }, square(3, 960));
    expect(copy.cell('doubt')).toBeCloseTo(6.0176, 3);
  });
  test('blank corners count for less', async () => {
    // five places: 3.9 × 0.02 = 0.078 stop, 5.2630 %, and the step
    const cross: Line[] = [[1, null, 950, null], [2, 1000, 1000, 1000], [3, null, 1000, null]]; // prettier-ignore
    expect((await typed({ ...varying, own: 0.5 }, cross)).cell('doubt')).toBeCloseTo(5.363, 3);
  });
});

describe('values of 8 bits', () => {
  test('are not made linear by a clip of 14 bits, where the curve is all but straight', async () => {
    const copy = await typed({ ...CODED, clip: 16383 }, grid(240, 250));
    expect([copy.cell('verdict'), copy.cell('uneven')]).toEqual(['', '']);
    expect(copy.beside('clip')).toBe('! far above all the values');
    expect((await typed(CODED, grid(0.8, 0.9))).beside('clip')).toBe('! far above all the values');
    // ((240/255 + 0.055)/1.055)^2.4 over that of 250/255: 0.871367/0.955973
    expect((await typed(CODED, grid(240, 250))).cell('uneven')).toBeCloseTo(8.8502, 2);
  });
  test('are no raw ones', async () => {
    for (const clip of [255, 16383]) {
      const copy = await typed({ ...RAW, clip }, grid(240, 250));
      expect([copy.cell('verdict'), copy.beside('clip')]).toEqual(['', '! 8-bit values are gamma-coded']);
    }
    // nor with any other clip that no file of linear values has
    for (const clip of [250, 256, 511]) {
      const copy = await typed({ ...RAW, clip }, grid(190, 200));
      expect([copy.cell('verdict'), copy.beside('clip')]).toEqual(['', '! 8-bit values are gamma-coded']);
    }
    // linear values as shares of the highest stay raw ones
    expect((await typed({ ...RAW, clip: 1, step: 0.001 }, grid(0.48, 0.5))).cell('uneven')).toBeCloseTo(4, 9);
  });
});

test('a list whose only repeat is like the first says nothing of what pops vary by', async () => {
  const lines = [...grid(97, 100), [1, 97, 100, 100]];
  const twice = await typed({ ...LUX, repeat: null }, lines);
  expect([twice.cell('verdict'), twice.cell('doubt')]).toEqual(['cannot tell', '']);
  expect(twice.beside('verdict')).toBe('! repeats all alike: typed twice?');
  // light that stays, when said so
  expect((await typed(LUX, lines)).cell('verdict')).toBe('within');
  // a meter of tenths does show the same twice, and its step counts that
  const tenths = [...grid('11 0', 11), [1, 11, 11, 11]];
  expect((await typed({ ...TENTHS, repeat: null, limit: 'FADGI 1 star' }, tenths)).cell('verdict')).toBe('within'); // prettier-ignore
});

test('where all repeats are alike, they are no more than one', async () => {
  // so much light twice to the lux, of pops that vary by 0.02 stop: 4.4 × 0.02 = 0.088 stop, 5.9174 %, and 0.1 % of the step
  const lines = [...square(3, 900), ...square(3, 900)];
  const copy = await typed({ ...LUX, repeat: 0.02 }, lines);
  expect(copy.cell('doubt')).toBeCloseTo(6.0174, 3);
  expect(copy.cell('workedPops')).toBe('the pops: 4.4 × 0.02 stop / √1 = 0.088 stop');
  // light that stays
  expect((await typed(LUX, lines)).cell('doubt')).toBeCloseTo(0.1, 9);
});

describe('one value that cannot be right', () => {
  test.each([
    [RAW, 16383, 'across 4: clipped', '! a value is clipped: see the list, expose less and begin again'],
    [LUX, '512 W', 'across 4: not a number', '! a line of the list is not right: see there'],
    [LUX, '2026-11-29', 'across 4: not a number', '! a line of the list is not right: see there'],
    [LUX, 'f/8+0.3', 'across 4: not a number', '! a line of the list is not right: see there'],
    [LUX, -5, 'across 4: not above 0', '! a line of the list is not right: see there'],
    [LUX, '=1/0', 'across 4: an error', '! a line of the list is not right: see there'],
    [TENTHS, 12255, 'across 4: lux, or raw?', '! a line of the list is not right: see there'],
    [TENTHS, '512 W', 'across 4: write as 11 4', '! a line of the list is not right: see there'],
  ] as const)('%o: %s is refused, and its place named', async (inputs, value, says, verdict) => {
    const others = inputs === TENTHS ? '11 4' : 9000;
    const lines = square(5, others).map((values, r) =>
      values.map((each, c) => (c === 0 ? each : r === 2 && c === 4 ? value : others)),
    );
    const copy = await typed(inputs, lines);
    expect([copy.lacks, copy.cell('verdict'), copy.beside('verdict')]).toEqual([[says], '', verdict]);
  });
  test('by more than a stop, such as a date that has become a number, is asked about', async () => {
    // log2(46355/1000) = 5.53
    const copy = await typed(LUX, square(3, 46355));
    expect(copy.beside('verdict')).toBe('! darkest 5.53 stop below brightest: typed right?');
    expect((await typed(LUX, square(3, 500))).beside('verdict')).toBe('! darkest 1 stop below brightest');
  });
});

test('a step of tenths that was left from f-numbers is doubted in lux', async () => {
  expect((await typed({ ...LUX, step: 0.1 }, square(3, 900))).beside('step')).toBe('! so fine? In lux');
  expect((await typed(LUX, square(3, 900))).beside('step')).toBe('stops, lux or file counts');
  expect((await typed({ ...LUX, step: 0.1 }, grid(48, 50))).beside('step')).toBe('stops, lux or file counts');
});

describe('a limit', () => {
  test('of 5 % that the spreadsheet has made 0.05 is asked for again', async () => {
    const copy = await typed({ ...LUX, limit: 'my own', own: 0.05 }, grid(98, 100));
    expect([copy.cell('limitIs'), copy.cell('verdict')]).toEqual(['', '']);
    expect(copy.beside('own')).toBe('! percent, from 0.5 to 99');
  });
  test('of one’s own that is not chosen is said to be unused, and the chosen one holds', async () => {
    const copy = await typed({ ...LUX, own: 1 }, grid(97, 100));
    expect([copy.cell('limitIs'), copy.cell('verdict')]).toEqual([5, 'within']);
    expect(copy.beside('own')).toBe('! unused: not “my own”');
  });
  test('that is an error leaves words, and no error', async () => {
    const copy = await typed({ ...LUX, limit: '=1/0' }, grid(95, 100));
    expect([copy.cell('limitIs'), copy.cell('verdict'), copy.beside('limit')]).toEqual([
      '',
      '',
      '! an error',
    ]);
  });
  test('is no pattern', async () => {
    const copy = await typed({ ...LUX, limit: 'F*' }, grid(95, 100));
    expect([copy.cell('verdict'), copy.beside('limit')]).toEqual(['', '! choose one of the list']);
  });
});

describe('f-numbers', () => {
  test('that are higher mean more light: f/11 is one stop above f/8', async () => {
    const copy = await typed(TENTHS, [1, 2, 3].map((row) => [row, 8, 8, 11])); // prettier-ignore
    expect(copy.secondOfMap).toEqual([0, 0, 1, '', '']);
    // half the light lacks on the left; the places are evenly apart, so the plane rises by that one stop
    expect([copy.cell('uneven'), copy.cell('sideways')]).toEqual([expect.closeTo(50, 9), '1 stop across, right brighter']); // prettier-ignore
    expect(copy.cell('ends')).toBe('row 1, across 3; darkest: row 1, across 1');
  });
  test.each(['11,4', 11.4, '11.4'].slice(0, FULL ? 3 : 1))(
    '%o is asked for again: f/11.4 or four tenths',
    async (value) => {
      const copy = await typed(TENTHS, grid(value, 11));
      expect([copy.lacks, copy.cell('verdict')]).toEqual([['across 1: 11 4 or f/11.4'], '']);
    },
  );
  test('of the scale keep their decimals, with either sign', async () => {
    for (const value of ['5,6', 5.6, 'f/5,6'].slice(0, FULL ? 3 : 1)) {
      const copy = await typed(TENTHS, grid(value, 8));
      expect([value, copy.lacks, copy.cell('uneven')]).toEqual([value, [], expect.closeTo(50, 9)]);
    }
  });
  test('left under lux are doubted', async () => {
    expect((await typed(LUX, grid(8, 11))).beside('scale')).toBe('! so low? Or f-numbers');
    // the light of a gallery of works on paper
    expect((await typed(LUX, grid(48, 50))).beside('scale')).toBe('raw: linear, without a curve');
  });
  test('with a step of a whole stop, as counts have it, are asked for the step', async () => {
    const copy = await typed({ ...TENTHS, step: 1 }, grid(11, 11));
    expect([copy.cell('verdict'), copy.beside('step')]).toEqual(['', '! in stops, such as 0.1']);
  });
});

test('the black level is doubted where a flat field was divided out', async () => {
  const flat = { ...RAW, turned: 'flat field divided out' };
  expect((await typed({ ...flat, black: 512 }, grid(9000, 9100))).beside('black')).toBe('! after a flat field: 0?'); // prettier-ignore
  expect((await typed(flat, grid(9000, 9100))).beside('black')).toBe('raw only; 0 where it is off');
});

test('light that is the same everywhere has no brightest place', async () => {
  expect((await typed(LUX, grid(100, 100))).cell('ends')).toBe('all places alike');
});

test('a place left of the left edge, or above the upper, is asked for again', async () => {
  const left = await typed({ ...LUX, left1: -600 }, grid(90, 100));
  expect([left.cell('sideways'), left.beside('left1')]).toEqual(['type where the places are, in order', '! in millimetres']); // prettier-ignore
  const up = await typed({ ...LUX, down1: -20 }, grid(90, 100));
  expect([up.cell('upright'), up.beside('down1')]).toEqual(['type where the places are, in order', '! in millimetres']); // prettier-ignore
});

// A half turn tells f(x) from f(−x): what is lopsided. What is alike both ways round, as a lens's fall-off is, is in both
// pictures at the same places. A flat field divides out all that was there when it was taken.
test.each([
  [
    'card turned too',
    /what turns with the card is the card, but for what is alike both ways round; light and lens/,
  ],
  [
    'camera turned too',
    /^what is lopsided and stays in its place in the picture is the lens; its even fall-off stays/,
  ],
  [
    'flat field divided out',
    /^light and card, if the flat field was lit evenly; .* in this light has the light out too$/,
  ],
])('%s: it says what that tells, and what it leaves in', async (turned, says) => {
  const copy = await typed({ ...RAW, turned }, grid(9000, 9100));
  expect(copy.cell('tells')).toMatch(says);
});

test('a row of the map that stands for none, such as one put in between, stays empty', async () => {
  for (const label of ['', 'x', 0, 2.5, 6].slice(0, FULL ? 5 : 1))
    expect((await typed(LUX, grid(90, 100), label)).secondOfMap, String(label)).toEqual(['', '', '', '', '']);
});
