import { describe, expect, test } from 'vitest';
import { isCellError } from '../../src/formula/errors';
import { parseAddress } from '../../src/formula/address';
import { layout } from '../../src/sheets/layout';
import { planAlone } from '../../src/sheets/makePlan';
import type { TemplateTable, TemplateValue } from '../../src/sheets/template';
import { widthOfColumns } from '../../src/book/widthsAndHeights';
import { PAGE } from '../../src/book/printedPages';
import { drawn, FULL } from '../full';
import { calculated, templateOf, type Typed, typedOver, wordsBeside } from './support';

const demo = templateOf('lights-on-set');
const lights = demo.blocks.find((b): b is TemplateTable => b.kind === 'table' && b.id === 'Lights');
if (!lights) throw new Error('There is no table of lights.');
const TYPED = lights.columns.filter(({ formula }) => formula === undefined).map(({ id }) => id);

type Light = Readonly<Record<string, TemplateValue>>;
const demoRow = (index: number): Light =>
  Object.fromEntries(TYPED.map((id, i) => [id, lights.rows[index]?.[i] ?? null]));
const KEY = demoRow(0);
const FILL = demoRow(1);
const RIM = demoRow(2);
const ACCENT = demoRow(3);
const BACKGROUND = demoRow(4);
const ROOM = demoRow(5);
const DEMO = [KEY, FILL, RIM, ACCENT, BACKGROUND, ROOM];

/** The sheet with such lights, and other cells of the camera. */
async function sheetOf(rows: readonly Light[], camera: Typed = {}) {
  for (const row of rows)
    for (const name of Object.keys(row)) if (!TYPED.includes(name)) throw new Error(`no column ${name}`);
  const typed = rows.map((row) => TYPED.map((id) => row[id] ?? null));
  const template = typedOver(demo, camera, { Lights: typed });
  const sheet = await calculated(template);
  return {
    ...sheet,
    /** What the answers say of a light, counted from 1. */
    turn: (column: string, light: number) => sheet.column('Turn', column)[light - 1],
    light: (column: string, light: number) => sheet.column('Lights', column)[light - 1],
    says: (light: number) => sheet.column('Turn', 'Note')[light - 1],
    beside: (id: string) => wordsBeside(template, sheet, id),
  };
}
/** Without loss on the way: f/22 on the lens, 2^4.5, is what the meter must read: 2^9 of light. */
const NO_LOSS: Typed = { focal: null, draw: null, filter: null };
/** A head of energy in tenths that was metered as a key. */
const head = (name: string, part: string, power: string, reading: number, more: Light = {}): Light => ({
  Head: name, Part: part, Power: power, Reading: reading, Tenths: 0, 'At the subject': 'yes', Wanted: null,
  Most: 800, Least: 25, Step: '0.1', Scale: 'energy', ...more,
}); // prettier-ignore

/**
 * Worked by hand from powers of 2. A meter's f/16 and 5 tenths lets in 2^8.5 parts of light less than f/1, its reading
 * is 2^4.25. The lens loses 2·log2(150/120) + 1/3 = 0.977190 stop, so that the meter must read 2^9 × 2^0.977190 = 1007.937,
 * of which the room gives 2² = 4: 1003.937 is left. Weights: 1 + 2^−1.5 + 2^−1 + 2^−1.4, the last as far from the key as
 * it is, 7.1 − 8.5: 1 + 0.353553 + 0.5 + 0.378929 = 2.232483. The key must read 1003.937 / 2.232483 = 449.695 = 2^8.8128039.
 */
const WORKED: readonly (readonly [column: string, light: number, value: number | string, working: string])[] =
  [
    ['Must read', 1, 21.20602, '√449.695'],
    ['Must read', 2, 12.60917, '√(449.695 × 2^−1.5)'],
    ['Must read', 4, 13.05384, '√(449.695 × 2^−1.4)'],
    ['Must read', 5, 14.99492, '√(449.695 × 2^−1), at the background'],
    ['Takes', 1, 372.6358, '300 Ws × 2^(8.812803 − 8.5)'],
    ['Power then', 1, 369.3433, 'log2(600/372.636) = 0.6872: 7 tenths below 600'],
    ['Power then', 2, 559.8198, '7.312803 − 6.9 = 0.4128 up from 1.5 below 1200: 1.0872, 11 tenths'],
    ['Power then', 3, 141.4214, '7.812803 − 7.3 = 0.5128 up from 2 below 400: 1.4872, 15 tenths'],
    ['Power then', 4, 61.55722, '7.412803 − 7.1 = 0.3128 up from 3 below 400: 2.6872, 27 tenths'],
    ['Power then', 5, 738.6866, '7.812803 − 7.5 = 0.3128 up from 2 below 2400: 1.6872, 17 tenths'],
    ['Reads then', 1, 21.11213, '2^(8.8/2)'],
    ['Miss', 1, -0.0128039, '8.8 − 8.8128039'],
    ['Share', 1, 0.464009, '362.0387 of 362.0387 + 119.4282 + 157.5865 + 137.1870 + 4 = 780.2404'],
    ['Share', 6, 0.005126625, '4 of 780.2404'],
    ['Key now', 2, -1.6, '6.9 − 8.5'],
    ['Key then', 6, -6.8, '2 − 8.8'],
  ];

describe('the demo job', () => {
  test('light by light', async () => {
    const sheet = await sheetOf(DEMO);
    for (const [column, light, value, working] of WORKED)
      expect(Number(sheet.light(column, light)) / Number(value), `${column} ${light}: ${working}`).toBeCloseTo(1, 5); // prettier-ignore
  });

  test('what is set is said as each head shows it, and what it then reads as a meter does', async () => {
    const sheet = await calculated(demo);
    const turn = (column: string) => sheet.column('Turn', column).slice(0, 6);
    // 7 tenths below full; 10 − 1.1 of a head that shows 10; 2^−1.5 = 35.4 %; 2^−2.7 = 15.4 %; 738.7 Ws
    expect(turn('Set to')).toEqual(['1/1 −0.7', '8.9', '35 %', '15 %', '739 Ws', '']);
    expect(turn('Turn by')).toEqual(['+0.3', '+0.4', '+0.5', '+0.3', '+0.3', '']);
    // 8.8; 6.9 + 0.4 = 7.3; 7.3 + 0.5 = 7.8; 7.1 + 0.3 = 7.4; 7.5 + 0.3 = 7.8 stops above f/1
    expect(turn('Then reads')).toEqual(['f/16 +0.8', 'f/11 +0.3', 'f/11 +0.8', 'f/11 +0.4', 'f/11 +0.8', 'f/2']);
    expect(turn('Note')).toEqual(['', '', '', '', '', 'cannot be turned: taken off first']);
    expect(sheet.column('Turn', 'Head').slice(4)).toEqual(['Cedar 2400', 'Room, 1/2 s', '', '', '', '', '', '']);
  }); // prettier-ignore

  test('all together, before and after', async () => {
    const sheet = await sheetOf(DEMO);
    // log2 1007.937 = 9.977; log2 780.24 = 9.608; then 2^8.8 + 2^7.3 + 2^7.8 + 2^7.4 + 4 = 999.066: 9.964
    expect([sheet.cell('target'), sheet.cell('together'), sheet.cell('togetherThen')]).toEqual([
      'f/32',
      'f/22 +0.6',
      'f/32',
    ]);
    // key and fill against fill: 1 + 2^1.6, 1 + 2^1.5
    expect(sheet.cell('ratio')).toBeCloseTo(4.0314331, 6);
    expect(sheet.cell('ratioThen')).toBeCloseTo(3.8284271, 6);
    expect([sheet.beside('target'), sheet.beside('together'), sheet.beside('togetherThen')]).toEqual([
      'on the meter, all lights together',
      '',
      'at the new settings',
    ]);
  });
});

describe('a light that is not metered at the subject', () => {
  test('enters neither the total nor a share, and follows the key', async () => {
    // f/11 twice: 2^7 + 2^7 = 2^8. The background's 2^9 would make it 2^9.58.
    const rows = [
      head('A', 'key', '100', 11),
      head('B', 'fill', '100', 11),
      head('C', 'background', '100', 22, { 'At the subject': 'no' }),
    ];
    const sheet = await sheetOf(rows, NO_LOSS);
    expect(sheet.cell('together')).toBe('f/16');
    expect([sheet.light('Share', 1), sheet.light('Share', 2), sheet.light('Share', 3)]).toEqual([
      0.5,
      0.5,
      '',
    ]);
    expect(sheet.cell('ratio')).toBeCloseTo(2, 9);
    // 2^9 in equal parts: each 2^8, one stop up from 2^7. The background, 2 stops over the key, goes up with it.
    expect([1, 2, 3].map((light) => sheet.turn('Set to', light))).toEqual(['200 Ws', '200 Ws', '200 Ws']);
    expect(sheet.turn('Then reads', 3)).toBe('f/32');
    expect(sheet.cell('togetherThen')).toBe('f/22');
  });

  test('is wanted so many stops from the key all the same', async () => {
    const rows = [
      head('A', 'key', '100', 22),
      head('C', 'background', '100', 22, { 'At the subject': 'no', Wanted: -1 }),
    ];
    const sheet = await sheetOf(rows, NO_LOSS);
    expect([sheet.turn('Turn by', 1), sheet.turn('Turn by', 2)]).toEqual(['0', '−1']);
    expect(sheet.turn('From key', 2)).toBeCloseTo(-1, 9);
  });
});

describe('what is wanted', () => {
  test('left blank, keeps the present distance from the key: same balance, new aperture', async () => {
    // f/16 and f/5.6: 2^8 and 2^5, three stops apart. All at f/22: 2^9 = k (1 + 1/8), k = 2^8.830, 8 tenths up.
    const rows = [head('A', 'key', '100', 16), head('B', 'fill', '100', 5.6)];
    const sheet = await sheetOf(rows, NO_LOSS);
    expect([sheet.turn('Turn by', 1), sheet.turn('Turn by', 2)]).toEqual(['+0.8', '+0.8']);
    expect(sheet.turn('From key', 2)).toBeCloseTo(-3, 9);
    const wider = await sheetOf(rows, { ...NO_LOSS, aperture: 16 });
    expect([wider.turn('Turn by', 1), wider.turn('Turn by', 2)]).toEqual(['−0.2', '−0.2']);
  });

  test('as 0 is no blank: as much as the key', async () => {
    const rows = [head('A', 'key', '100', 16), head('B', 'fill', '100', 5.6, { Wanted: 0 })];
    const sheet = await sheetOf(rows, NO_LOSS);
    // each 2^8: the key stays, the fill goes up three stops
    expect([sheet.turn('Turn by', 1), sheet.turn('Turn by', 2)]).toEqual(['0', '+3']);
  });

  test('may be written as a fraction', async () => {
    const rows = [head('A', 'key', '100', 16), head('B', 'fill', '100', 16, { Wanted: '−1 1/2' })];
    const sheet = await sheetOf(rows, NO_LOSS);
    expect(sheet.light('Stops', 2)).toBeCloseTo(-1.5, 9);
  });

  test('of two keys, from the first', async () => {
    const rows = [
      head('A', 'key', '100', 16),
      head('B', 'key', '100', 16, { Wanted: -1 }),
      head('C', 'fill', '100', 8, { Wanted: -1 }),
    ];
    const sheet = await sheetOf(rows, NO_LOSS);
    // 2^9 in 1 + 1/2 + 1/2: the first stays at 2^8
    expect([1, 2, 3].map((light) => sheet.turn('Turn by', light))).toEqual(['0', '−1', '+1']);
    // (2^8 + 2^8 + 2^6) / 2^6, then (2^8 + 2^7 + 2^7) / 2^7
    expect(sheet.cell('ratio')).toBeCloseTo(9, 9);
    expect(sheet.cell('ratioThen')).toBeCloseTo(4, 9);
  });
});

describe('light that cannot change', () => {
  test('is taken off first: ambient and a head of one power', async () => {
    const rows = [
      head('A', 'key', '100', 11),
      head('Old', 'rim', '400', 11, { Most: 400, Least: 400, Step: null }),
      { Head: 'Window', Part: 'ambient', Reading: 11, Tenths: 0, 'At the subject': 'yes' },
    ];
    const sheet = await sheetOf(rows, NO_LOSS);
    // 2^9 − 2^7 − 2^7 = 2^8: one stop more than f/11
    expect([sheet.turn('Set to', 1), sheet.turn('Turn by', 1), sheet.turn('Then reads', 1)]).toEqual(['200 Ws', '+1', 'f/16']); // prettier-ignore
    expect([sheet.turn('Set to', 2), sheet.turn('Turn by', 2), sheet.says(2)]).toEqual(['400 Ws', '0', 'fixed power']); // prettier-ignore
    expect([sheet.turn('Set to', 3), sheet.turn('Turn by', 3), sheet.turn('Then reads', 3)]).toEqual(['', '', 'f/11']); // prettier-ignore
    expect(sheet.cell('togetherThen')).toBe('f/22');
    expect(sheet.cell('fixedReads')).toBe('f/16');
  });

  test('that is all there may be leaves nothing, and the sheet says so', async () => {
    const window = { Head: 'Window', Part: 'ambient', Reading: 22, Tenths: 3, 'At the subject': 'yes' };
    const sheet = await sheetOf([head('A', 'key', '100', 11), window], NO_LOSS);
    expect(sheet.says(1)).toBe('light that cannot be turned reads f/22 +0.3: nothing is left');
    expect(sheet.beside('togetherThen')).toBe(`! ${String(sheet.says(1))}`);
    expect([sheet.turn('Set to', 1), sheet.cell('togetherThen'), sheet.cell('ratioThen')]).toEqual(['', '', '']); // prettier-ignore
    expect(sheet.errors).toEqual([]);
  });

  test('says how far it ends from what is wanted', async () => {
    const old = head('Old', 'rim', '400', 11, { Most: 400, Least: 400, Wanted: -2 });
    const sheet = await sheetOf([head('A', 'key', '100', 16), old], NO_LOSS);
    // the key gets 2^9 − 2^7 = 2^8.585, which is 8.6 in tenths: the rim ends at 7 − 8.6 = −1.6
    expect(sheet.says(2)).toBe('fixed power: ends 0.4 stop over what is wanted');
  });

  test('as the key: the others share what it leaves, and say how far from it they end', async () => {
    const key = head('Old', 'key', '400', 16, { Most: 400, Least: 400 });
    const sheet = await sheetOf([key, head('B', 'fill', '100', 11, { Wanted: -1 })], NO_LOSS);
    // 2^9 − 2^8 = 2^8: as much as the key, one stop more than wanted
    expect([sheet.turn('Turn by', 2), sheet.says(2)]).toEqual(['+1', 'ends 1 stop over what is wanted']);
    expect(sheet.cell('togetherThen')).toBe('f/22');
  });

  test('alone, it is held against what the meter must read', async () => {
    const key = head('Old', 'key', '400', 16, { Most: 400, Least: 400 });
    const sheet = await sheetOf([key], NO_LOSS);
    expect([sheet.cell('togetherThen'), sheet.beside('togetherThen')]).toEqual(['f/16', '! 1 stop under what the meter must read']); // prettier-ignore
  });
});

describe('out of reach', () => {
  // f/11 at 400 of 800 Ws: 2^8 at full power, where 2^9 is wanted
  const short = (more: Light): Light => head('A', 'key', '400', 11, more);

  test('a small light says by how much, how many pops, and how much nearer', async () => {
    const sheet = await sheetOf([short({})], { ...NO_LOSS, aperture: '27' });
    // f/27 is 2·log2 27 = 9.5098 stops above f/1: 1.5098 short; 2^(1.5098 − 0.05) = 2.75: 3 pops; 2^−0.7549 = 0.593
    expect(sheet.says(1)).toBe('1.5 stops short: 3 pops, or 0.59 × the distance');
    expect([sheet.turn('Set to', 1), sheet.turn('Turn by', 1), sheet.turn('Then reads', 1)]).toEqual(['800 Ws', '+1', 'f/16']); // prettier-ignore
    expect(sheet.beside('togetherThen')).toBe('! 1.5 stops under what the meter must read');
  });

  test('a large light says where to stand, if that is anywhere', async () => {
    const sheet = await sheetOf([short({ Distance: 1.5, Width: 1 })], NO_LOSS);
    // one stop: d² + 0.5² = (1.5² + 0.5²) / 2, d = 1
    expect(sheet.says(1)).toBe('1 stop short: 2 pops, or at 1 m');
    const contact = await sheetOf([short({ Distance: 0.4, Width: 1 })], NO_LOSS);
    // (0.16 + 0.25) / 2 is less than 0.25: right at the front it is still too little
    expect(contact.says(1)).toBe('1 stop short: 2 pops, or cannot be reached by moving');
  });

  test('too strong, it says by how much and how much farther', async () => {
    // f/22 at 25 Ws, its least: 2^9 where f/11, 2^7, is wanted
    const sheet = await sheetOf([head('A', 'key', '25', 22)], { ...NO_LOSS, aperture: 11 });
    expect(sheet.says(1)).toBe('2 stops too strong at least power: 2 × the distance');
    expect([sheet.turn('Set to', 1), sheet.turn('Turn by', 1)]).toEqual(['25 Ws', '0']);
  });

  test('a head that is a little off at its end is not', async () => {
    // 0.1 stop short: f/16 at full, wanted f/16 +0.1
    const sheet = await sheetOf([head('A', 'key', '800', 16)], { ...NO_LOSS, aperture: 'f/16+0.1' });
    expect([sheet.says(1), sheet.turn('Set to', 1)]).toEqual(['', '800 Ws']);
  });

  test('a dial of whole stops says what it cannot do between them', async () => {
    // f/16, 2^8, where f/16 +0.4 is wanted
    const rows = [head('A', 'key', '200', 16, { Step: '1' })];
    const sheet = await sheetOf(rows, { ...NO_LOSS, aperture: 'f/16+0.4' });
    expect([sheet.turn('Turn by', 1), sheet.says(1)]).toEqual(['0', '0.4 stop under: its dial has no step between']); // prettier-ignore
  });

  test('the others keep what they are wanted', async () => {
    // 2^9 in 1 + 1: each 2^8. The first gives 2^7 at most.
    const rows = [head('A', 'key', '800', 11), head('B', 'fill', '100', 11, { Wanted: 0 })];
    const sheet = await sheetOf(rows, NO_LOSS);
    expect([sheet.says(1), sheet.turn('Set to', 2)]).toEqual(['1 stop short: 2 pops, or 0.71 × the distance', '200 Ws']); // prettier-ignore
  });
});

describe('a head', () => {
  test('that shows thirds is turned by thirds', async () => {
    const rows = [head('A', 'key', '200', 16, { Step: '1/3' })];
    const sheet = await sheetOf(rows, { ...NO_LOSS, aperture: 'f/16 2/3' });
    expect([sheet.turn('Turn by', 1), sheet.turn('Set to', 1)]).toEqual(['+2/3', '317 Ws']);
  });
  test('is set within what it gives, a target lower than the reading turned down to', async () => {
    const sheet = await sheetOf([head('A', 'key', '200', 22)], { ...NO_LOSS, aperture: 16 });
    expect([sheet.turn('Turn by', 1), sheet.turn('Set to', 1)]).toEqual(['−1', '100 Ws']);
  });
  test('of a model that stands twice is two heads, told apart by part', async () => {
    const rows = [head('Hazel', 'key', '100', 16), head('Hazel', 'rim', '50', 16)];
    const sheet = await sheetOf(rows, NO_LOSS);
    expect([sheet.turn('Set to', 1), sheet.turn('Set to', 2)]).toEqual(['100 Ws', '50 Ws']);
  });
});

/** A date as a spreadsheet keeps it: 45,658 days. */
const DATE = 45658;
/** What may stand in a cell by mistake, which cell is named, and what is said of it. */
const BAD: readonly (readonly [column: string, bad: readonly TemplateValue[], lacks: string, says: RegExp])[] = [
  ['Head', [null], 'head', /^type the head's name$/],
  ['Part', [null, 'hair', 0, DATE], 'part', /^choose the part it plays, under Part$/],
  ['Reading', [null, 0, DATE, 'bright', '2 m', -8, 16.3, 8.3, '1/60', '#'], 'reading', /^type its reading: the full stop, the small figure under Tenths$/],
  ['Tenths', [12, -1, 0.3, 'three', DATE], 'tenths', /^tenths: a whole number from 0 to 9/],
  ['At the subject', [null, 'maybe', 1, 0], 'subject', /^say yes or no: metered at the subject\?/],
  ['Wanted', ['brighter', 20, '2 m', DATE], 'wanted', /^Wanted: stops from the key, such as -1\.5/],
  ['Most', [null, 0, DATE, '1.2 m', -5, 'full'], 'most', /^type its most Ws, up to 10 000$/],
  ['Least', [null, 0, DATE, 'low', -5, 801], 'least', /^type its least Ws, not above its most$/],
  ['Step', [null, 0, DATE, 'tenths', -0.1, 3], 'step', /^type the step of its dial: 0\.1, 1\/3, 1\/2 or 1$/],
  ['Scale', [null, 'numbers', 0, DATE], 'scale', /^choose what its display shows, under Scale$/],
  ['Top', ['10', 10], 'top', /^Top: what the scale stops shows at full power; else blank$/],
  ['Power', [null, 0, DATE, 'half', '80 cm', 900, 5, -100], 'power', /^type its power as it shows it, within least and most$/],
  ['Distance', [0, DATE, 80, 'near', '1 s', -1], 'distance', /^type its distance in metres, above 0 and up to 20$/],
  ['Width', [0, DATE, 90, 'wide', -1], 'width', /^type its width in metres, above 0 and up to 20$/],
]; // prettier-ignore

describe('a row that is half filled or wrong', () => {
  const good = head('A', 'key', '100', 16, { Distance: 1 });
  const other = head('B', 'fill', '100', 8, { Distance: 1 });
  test.each(drawn(BAD))('%s: %j', async (column, bad, lacks, says) => {
    const rows = bad.map((value, i) => ({ ...other, Head: `B${i}`, [column]: value }));
    const sheet = await sheetOf([good, ...rows], NO_LOSS);
    const at = (what: readonly unknown[]) => what.slice(1, 1 + bad.length);
    expect(sheet.column('Lights', 'Lacks')).toEqual(['', ...bad.map(() => lacks)]);
    for (const words of at(sheet.column('Turn', 'Note'))) expect(words).toMatch(says);
    // nothing is added up without it, and no head is turned
    const waits = `row 2 is not ready: ${lacks}`;
    expect([sheet.says(1), sheet.beside('together')]).toEqual([waits, `! ${waits}`]);
    const answers = ['Set to', 'Turn by', 'Then reads', 'From key'].flatMap((id) => sheet.column('Turn', id));
    expect(answers.filter((answer) => answer !== '')).toEqual([]);
    expect(['together', 'togetherThen', 'ratio', 'ratioThen'].map((id) => sheet.cell(id))).toEqual(['', '', '', '']); // prettier-ignore
    expect(sheet.column('Lights', 'Share')).toEqual(['', ...bad.map(() => '')]);
    expect(sheet.errors).toEqual([]);
  });

  test.each(drawn([1.4, 2.8, 5.6, 6.3, 9.5, 13, 'f/8 2/3', 'f/11+0.3', '11³']))(
    'a reading is no fault: %s',
    async (Reading) => {
      const sheet = await sheetOf([{ ...good, Reading, Tenths: null }], NO_LOSS);
      expect(sheet.light('Lacks', 1)).toBe('');
    },
  );

  test('a head of the scale stops needs its top', async () => {
    const sheet = await sheetOf([{ ...good, Scale: 'stops', Power: '8' }], NO_LOSS);
    expect(sheet.light('Lacks', 1)).toBe('top');
    const none = await sheetOf([{ ...good, Scale: 'stops', Power: '−2', Top: 'none' }], NO_LOSS);
    // 2 stops below 800 Ws: 200 Ws at f/16; f/22 takes 400, one below full
    expect([none.light('Lacks', 1), none.turn('Set to', 1), none.turn('Turn by', 1)]).toEqual(['', '−1', '+1']); // prettier-ignore
  });
  test('a wide light has a distance', async () => {
    const sheet = await sheetOf([{ ...good, Distance: null, Width: 1 }], NO_LOSS);
    expect([sheet.light('Lacks', 1), sheet.says(1)]).toEqual(['distance', 'type its distance in metres, above 0 and up to 20']); // prettier-ignore
  });
  test('a text that has tenths of its own has none beside it', async () => {
    const own = await sheetOf([{ ...good, Reading: 'f/16+0.3', Tenths: null }], NO_LOSS);
    expect(own.cell('together')).toBe('f/16 +0.3');
    const both = await sheetOf([{ ...good, Reading: 'f/16+0.3', Tenths: 2 }], NO_LOSS);
    expect(both.light('Lacks', 1)).toBe('tenths');
  });
  test('the key is at the subject, and no stops from itself', async () => {
    const away = await sheetOf([{ ...good, 'At the subject': 'no' }], NO_LOSS);
    expect(away.says(1)).toBe('say yes or no: metered at the subject? (the key: yes)');
    const off = await sheetOf([{ ...good, Wanted: -1 }], NO_LOSS);
    expect(off.says(1)).toBe('Wanted: stops from the key, such as -1.5; for the key 0 or blank');
  });
  test('a row that stands twice is not added twice', async () => {
    const sheet = await sheetOf([good, good], NO_LOSS);
    expect([sheet.says(1), sheet.cell('together')]).toEqual(['stands twice with this part: name the two apart', '']); // prettier-ignore
  });
  test('without a key nothing keeps a distance', async () => {
    const sheet = await sheetOf([other], NO_LOSS);
    expect([sheet.says(1), sheet.beside('together')]).toEqual(['no light is the key: choose it under Part', '! no light is the key: choose it under Part']); // prettier-ignore
  });
  test('an empty row between lights is none', async () => {
    const sheet = await sheetOf([good, {}, other], NO_LOSS);
    // 2^8 + 2^6 = 2^8.32
    expect([sheet.cell('together'), sheet.says(2), sheet.turn('Turn by', 3)]).toEqual(['f/16 +0.3', '', '+0.7']); // prettier-ignore
  });
  test('ambient needs neither power nor limits, but its reading', async () => {
    const sheet = await sheetOf([good, { ...ROOM, Reading: null }], NO_LOSS);
    expect(sheet.says(2)).toBe('type its reading: the full stop, the small figure under Tenths');
  });
});

/** The camera's cells: what may stand there by mistake, and what is said of it. */
const BAD_CAMERA: readonly (readonly [id: string, bad: readonly TemplateValue[], says: string])[] = [
  ['aperture', [null], 'type the lens setting'],
  ['aperture', [0, -22, 'wide', '2 m', '1/60', DATE], 'the lens setting cannot be read'],
  ['aperture', [128], 'the meter would have to read above f/128'],
  ['focal', [null], 'type focal length and draw, or neither'],
  ['draw', [null], 'type focal length and draw, or neither'],
  ['focal', [0, 'long', -120, '1 s'], 'focal length or draw cannot be right'],
  ['draw', [0, 'far', -150, 100], 'focal length or draw cannot be right'],
  ['filter', ['dark', DATE, '2 m'], 'what filters take cannot be read'],
  ['filter', [-1], 'filters take light: no stops below 0'],
  ['filter', [20], 'the meter would have to read above f/128'],
];

describe('the camera', () => {
  for (const [id, bad, says] of BAD_CAMERA)
    test.each(bad.slice(0, FULL ? bad.length : 1))(`${id}: %s`, async (value) => {
      const sheet = await sheetOf(DEMO, { [id]: value });
      expect([sheet.cell('target'), sheet.beside('target')]).toEqual(['', `! ${says}`]);
      expect([sheet.says(1), sheet.turn('Set to', 1), sheet.cell('togetherThen')]).toEqual([says, '', '']);
      // what the lights do now is known all the same
      expect(sheet.cell('together')).toBe('f/22 +0.6');
      const errors = sheet.errors.map(({ row, column }) => sheet.values(row, column));
      // the exact numbers beside the sheet hold the refusal, which the pane explains
      expect(errors.length).toBeLessThanOrEqual(1);
    });
});

test('empty, it says nothing and shows nothing', async () => {
  const sheet = await calculated(demo, false);
  const shown = demo.blocks.flatMap((block) =>
    block.kind === 'form' && parseAddress(block.at)?.column === 0
      ? block.fields.filter(({ formula }) => formula).map(({ id }) => sheet.cell(id))
      : [],
  );
  expect(new Set(shown)).toEqual(new Set(['']));
  for (const id of ['Set to', 'Then reads', 'Turn by', 'From key', 'Note', 'Head', 'Part'])
    expect(new Set(sheet.column('Turn', id)), id).toEqual(new Set(['']));
  expect(sheet.errors).toEqual([]);
});

test('more lights than the answers have rows are counted, and the sheet says so', async () => {
  const rows = Array.from({ length: 13 }, (_, i) => head(`H${i}`, i === 0 ? 'key' : 'accent', '100', 8));
  const sheet = await sheetOf(rows, NO_LOSS);
  // 13 × 2^6 = 2^9.70
  expect([sheet.cell('together'), sheet.beside('togetherThen')]).toEqual(['f/22 +0.7', '! only the first 12 lights stand below']); // prettier-ignore
});

describe('as it lies', () => {
  const { sheet } = planAlone(demo, true);
  test('nothing stands below the table that is typed into', () => {
    const lowest = Math.max(...sheet.cells.map(({ row }) => row));
    const table = sheet.tables.find(({ name }) => name === 'Lights');
    expect((table?.area.row ?? 0) + (table?.area.rows ?? 0) - 1).toBe(lowest);
  });
  test('answers stand left of column I, what other cells use right of what prints', () => {
    const { tables, cells } = layout(demo);
    for (const id of ['target', 'together', 'togetherThen', 'ratio', 'ratioThen'])
      expect(cells.get(id)?.place.column).toBeLessThan(8);
    expect(tables.get('Turn')?.columns.length).toBeLessThanOrEqual(8);
    expect(sheet.page.area?.columns).toBe(16);
    for (const id of ['wanted', 'now', 'left'])
      expect(cells.get(id)?.place.column).toBeGreaterThanOrEqual(16);
  });
  test('what prints fits the width of a page as it is, so that 9 points stay 9 points', () => {
    expect(widthOfColumns({ column: 0, columns: 16 }, sheet.widths)).toBeLessThanOrEqual(
      PAGE.lengthwise.width,
    );
    for (const { style } of sheet.cells) expect(style?.size ?? 10).toBeGreaterThanOrEqual(9);
  });
  test('the answers fill one page, the lights begin another', () => {
    const height = (from: number, to: number): number =>
      Array.from({ length: to - from }, (_, i) => sheet.heights[from + i] ?? 15).reduce((a, b) => a + b, 0);
    expect(sheet.page.breaks).toEqual([30]);
    expect(height(0, 30)).toBeLessThanOrEqual(PAGE.lengthwise.height);
  });
  test('its chart names the lights by part', () =>
    expect(demo.charts[0]).toMatchObject({ table: 'Lights', x: 'Part', series: ['Share'] }));
  test('no note stands twice', () => {
    const notes = sheet.cells.flatMap(({ note }) => note ?? []);
    expect(new Set(notes).size).toBe(notes.length);
  });
  test('no formula that is typed into a sheet shows an error', async () => {
    const { values, plan } = await calculated(demo);
    expect(plan.cells.filter(({ row, column }) => isCellError(values(row, column)))).toEqual([]);
  });
});

test('each head shows its own scale', () => {
  const scale = (row: Light): TemplateValue[] => ['Step', 'Scale', 'Top'].map((id) => row[id] ?? null);
  expect([KEY, FILL, RIM, ACCENT, BACKGROUND].map(scale)).toEqual([
    ['0.1', 'fraction', null],
    ['0.1', 'stops', '10'],
    ['0.1', 'percent', null],
    ['0.1', 'percent', null],
    ['0.1', 'energy', null],
  ]);
});
