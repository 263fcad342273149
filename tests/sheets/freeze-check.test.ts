import { describe, expect, test } from 'vitest';
import type { TemplateTable, TemplateValue } from '../../src/sheets/template';
import { drawn } from '../full';
import { calculated, templateOf, type Typed, typedOver, wordsBeside } from './support';

const template = templateOf('freeze-check');
type Row = readonly TemplateValue[];
const isHeads = (block: { readonly kind: string; readonly id?: string }): block is TemplateTable =>
  block.kind === 'table' && block.id === 'FreezeHeads';
const ROWS = template.blocks.find(isHeads)?.rows ?? [];
const [ALDER, BIRCH, CEDAR, HAZEL] = ROWS as [Row, Row, Row, Row];

/** A row of the table with some of what is typed in it replaced, by the places of the values. */
const PLACES = ['head', 'power', 'reading', 'tenths', 'full', 'least', 'step', 'scale', 'fullShows', 'level', 'energy1', 'flash1', 'energy2', 'flash2'] as const; // prettier-ignore
const row = (of: Row, typed: Partial<Record<(typeof PLACES)[number], TemplateValue>>): Row =>
  of.map((value, i) => {
    const place = PLACES[i];
    return place !== undefined && place in typed ? (typed[place] ?? null) : value;
  });
const NOTHING: Row = ALDER.map(() => null);

/** The sheet with other inputs: fields by id, and rows of heads. */
async function sheet(typed: Typed = {}, heads: readonly Row[] = ROWS, filled = true) {
  const made = await calculated(typedOver(template, typed, { FreezeHeads: heads }), filled);
  return {
    ...made,
    words: (id: string) => wordsBeside(template, made, id),
    head: (column: string, index = 0) => made.column('FreezeHeads', column)[index],
    whatToDo: () => made.column('FreezeHeads', 'What to do'),
  };
}

/**
 * Worked by hand. Milk falls 0.25 m from rest: √(2 × 9.80665 × 0.25) = 2.2143453 m/s. 150 mm of draw for 120 mm: m = 1/4. Twenty
 * pixels are 75.2 µm on the sensor, so the flash may last LIMIT at t0.1.
 */
const LIMIT = 75.2 / (Math.sqrt(2 * 9.80665 * 0.25) / 4); // µs: 135.8415
const stops = (ratio: number): number => Math.log2(ratio);
/** Stops that a head lies above the lower of two entries of its table, by the logarithms of energy and time. */
const between = (low: number, high: number): number => stops(LIMIT / low) / stops(high / low);
/** What the heads read at the powers that freeze: f/11 is 2^3.5, f/22 2^4.5, f/4 2^2. */
const ALDER_LIGHT = 2 ** 7 * (600 * 2 ** -3.9) / 300; // prettier-ignore
const BIRCH_LIGHT = 2 ** 9 * 2 ** -1.7;
const HAZEL_LIGHT = 2 ** 4 * 2 ** 0.8;
const TOGETHER = Math.sqrt(ALDER_LIGHT + BIRCH_LIGHT + HAZEL_LIGHT); // 14.2335
/** f/16, 1.25 of bellows, a third of a stop of filter. */
const NEEDED = 16 * 1.25 * 2 ** (1 / 6); // 22.4492
const SHORT = 2 * stops(NEEDED / TOGETHER); // 1.31475

const WORKED: readonly (readonly [id: string, value: number | string, working: string])[] = [
  ['longest', LIMIT, '75.2 µm / (2.2143453 m/s × 0.25)'],
  ['longestAs', 1e6 / LIMIT, 'one over it'],
  ['ready', 1, 'the Hazel alone, at 50 Ws'],
  ['can', 3, 'the Cedar gets longer when it is turned down from 1500 µs'],
  ['reads', 'f/11 +0.7', '2 × log2(14.2335/11.3137) = 0.66'],
  ['must', 'f/22', '2 × log2(22.4492/22.6274) = −0.02: nearer to f/22 than to f/16 +0.9'],
  ['off', -SHORT, '2 × log2(14.2335/22.4492)'],
  ['more', 3, '2^(1.31475 − 0.05) = 2.40: three of each'],
  ['nearer', 0.634, '2^(−1.31475/2) = 0.63404'],
  ['open', 'f/10', '16 × 0.63404 = 10.14: the mark below, 2^(20/6) = 10.079'],
  ['depthLeft', (2 * 2 ** (20 / 6) * 0.012 * 1.25) / (1 / 16), '2 × N × c × (1 + m) / m²'],
  ['shutter', '1/640 s', '1200 + 135.84 × ln(14.9327)/ln 10 = 1359.5 µs: 1/640 is 1550, 1/800 only 1230'],
  ['fire', 1000 * Math.sqrt(0.5 / 9.80665), '√(2 × 0.25 / 9.80665) = 225.8 ms'],
];
/** At full power less a whole number of tenths: the first that lies below what the table allows. */
const HEADS: readonly (readonly [head: number, column: string, value: number | string, working: string])[] = [
  [0, 'Smear', (20 * 700) / LIMIT, '300 Ws: 700 µs'],
  [0, 'Freezing Ws', 600 * 2 ** -3.9, '5 − (4 + log2(135.84/125)/log2(220/125)) = 3.853 below full: 3.9'],
  [0, 'Freezes at', '1/8 −0.9', 'it shows fractions: 3 stops and 0.9'],
  [0, 'Reads there', 'f/4 +0.1', '√17.148 = 4.141; 2 × log2(4.141/4) = 0.1'],
  [0, 'What to do', 'too long as set: turn by −2.9', '300 Ws is one stop below full'],
  [1, 'Freezing Ws', 1200 * 2 ** -1.7, '2 − log2(135.84/90)/log2(300/90) = 1.658 below full: 1.7'],
  [1, 'Freezes at', '8.3', 'full shows 10'],
  [1, 'Reads there', 'f/11 +0.3', '√157.586 = 12.553, and f/11 +0.3 is 2^3.65 = 12.553'],
  [2, 'Freezes at', 'none', '1500 µs is its shortest'],
  [2, 'Reads there', '', 'no power, no reading'],
  [2, 'What to do', 'no setting is short enough: leave it off', 'never a reading of it'],
  [3, 'Smear', (20 * 20 * stops(10)) / LIMIT, '50 Ws: t0.5 20 µs, t0.1 log2(10) times as long'],
  [3, 'Freezing Ws', 400 * 2 ** -2.2, 't0.5 may be 135.84/log2(10) = 40.89: 3 − log2(40.89/20)/log2(45/20) = 2.118: 2.2'],
  [3, 'Freezes at', '22 %', '2^−2.2 = 0.2176'],
  [3, 'What to do', 'freezes as set; may be turned by +0.8', '50 Ws is 3 below full'],
]; // prettier-ignore

describe('the demo job', () => {
  test('gives what is worked out by hand', async () => {
    const { cell, head, errors } = await sheet();
    for (const [id, value, working] of WORKED)
      expect(cell(id), `${id}: ${working}`).toEqual(
        typeof value === 'number' ? expect.closeTo(value, 6) : value,
      );
    for (const [i, column, value, working] of HEADS)
      expect(head(column, i), `${column} of ${ROWS[i]?.[0]}: ${working}`).toEqual(
        typeof value === 'number' ? expect.closeTo(value, 6) : value,
      );
    expect(errors).toEqual([]);
  });

  test('says that it is too dark, and nothing else', async () => {
    const { words, plan, values } = await sheet();
    expect(words('off')).toBe('! 1.3 stop short: take one of three ways');
    const warnings = plan.cells.filter(({ part, row: r, column: c }) => part === 'warning' && String(values(r, c)).startsWith('!')); // prettier-ignore
    expect(warnings).toHaveLength(1);
  });

  test('each of the three ways brings the light, and no shorter one does', async () => {
    const { cell } = await sheet();
    const left = (gained: number): number => SHORT - gained;
    const many = cell('more') as number;
    expect(left(stops(many))).toBeLessThanOrEqual(0.05);
    expect(left(stops(many - 1))).toBeGreaterThan(0.05);
    expect(left(-2 * stops(cell('nearer') as number))).toBeLessThanOrEqual(0);
    // f/10 is 2^(20/6), f/11 the next mark above, 2^(21/6)
    expect(left(2 * stops(16 / 2 ** (20 / 6)))).toBeLessThanOrEqual(0.05);
    expect(left(2 * stops(16 / 2 ** (21 / 6)))).toBeGreaterThan(0.05);
  });

  test('has a table of its own name, so that a list of heads can stand beside it', () => {
    expect(template.blocks.flatMap((block) => (block.kind === 'table' ? [block.id] : []))).toEqual([
      'Manuals',
      'FreezeHeads',
    ]);
  });
});

describe('the power that freezes is a setting of the head', () => {
  /** Duration by the logarithms, between two entries. */
  const lasts = (power: number, [lowWs, low]: readonly [number, number], [highWs, high]: readonly [number, number]) =>
    low * (high / low) ** (stops(power / lowWs) / stops(highWs / lowWs)); // prettier-ignore

  test('which is short enough, and the next above it is not', async () => {
    const { head } = await sheet();
    const alder = head('Freezing Ws', 0) as number;
    expect(stops(600 / alder) / 0.1).toBeCloseTo(39, 9);
    expect(lasts(alder, [37.5, 125], [75, 220])).toBeLessThanOrEqual(LIMIT);
    expect(lasts(alder * 2 ** 0.1, [37.5, 125], [75, 220])).toBeGreaterThan(LIMIT);
  });

  test('also where the head flashes longer below it', async () => {
    // The limit is 75.2 µm at 0.25 × 2.214 m/s; smear 13.4 px is 91.01 µs: just above 300 Ws (90 µs), at 299 Ws too, but not at 250.
    const { head, whatToDo } = await sheet({ smear: 13.4 }, [row(BIRCH, { power: 75 })]);
    expect(head('Freezing Ws')).toBeCloseTo(300, 6);
    expect(whatToDo()).toEqual(['too long as set: turn by +2']);
  });

  test('with a step of a third, and of a whole stop', async () => {
    const { head } = await sheet({}, [row(ALDER, { step: '1/3' }), row(ALDER, { step: '1' })]);
    // 3.853 below full: four stops by either
    for (const i of [0, 1]) expect(head('Freezing Ws', i)).toBeCloseTo(37.5, 6);
    expect(head('Freezes at')).toBe('1/16');
  });

  test('not below the least power of the head', async () => {
    const { head, whatToDo, cell } = await sheet({}, [row(ALDER, { least: 75 })]);
    expect(head('Freezes at')).toBe('none');
    expect(whatToDo()).toEqual(['no setting is short enough: leave it off']);
    expect([cell('can'), cell('reads'), cell('off')]).toEqual([0, '', '']);
  });

  test('from all six pairs', async () => {
    // 12 px: 81.50 µs, between 80 at 18.75 Ws and 125 at 37.5 Ws: log2(81.50/80)/log2(125/80) = 0.042 above the sixth
    const { head } = await sheet({ smear: 12 });
    expect(head('Freezing Ws')).toBeCloseTo(18.75, 6);
  });

  test('a display that rounds is read as the setting behind it', async () => {
    // 40.2 Ws is shown for 600 × 2^−3.9 = 40.1915
    const { whatToDo } = await sheet({}, [row(ALDER, { power: '40.2 Ws' })]);
    expect(whatToDo()).toEqual(['freezes as set']);
  });

  test('a power beyond the printed durations is not guessed at', async () => {
    const { head, whatToDo } = await sheet({}, [row(ALDER, { power: 10 })]);
    expect([head('Smear'), head('Freezes')]).toEqual(['', '']);
    expect(whatToDo()).toEqual(['unknown as set: turn by +2']);
  });

  test('the level is each head’s own', async () => {
    const { head } = await sheet({}, [HAZEL, row(HAZEL, { level: 't0.1' })]);
    // Read as t0.1 the limit lies between 200 Ws (120 µs) and 400 Ws (320 µs): 1 − 0.126 = 0.874 below full, so 0.9.
    expect(1 - between(120, 320)).toBeCloseTo(0.874, 3);
    expect(head('Freezing Ws', 0)).toBeCloseTo(400 * 2 ** -2.2, 6);
    expect(head('Freezing Ws', 1)).toBeCloseTo(400 * 2 ** -0.9, 6);
    expect(head('Smear', 0)).toBeCloseTo((head('Smear', 1) as number) * stops(10), 6);
  });
});

describe('what moves', () => {
  test('a rim, and a speed that is known, count where they are faster', async () => {
    const spun = await sheet({ diameter: 0.3, turns: 600 });
    // 0.3 m × π × 10 turns a second
    expect(spun.cell('fastest')).toBeCloseTo(0.3 * Math.PI * 10, 9);
    expect(spun.cell('longest')).toBeCloseTo(75.2 / (3 * Math.PI * 0.25), 6);
    const known = await sheet({ moves: '72 km/h', drop: null });
    expect([known.cell('fastest'), known.cell('fire')]).toEqual([expect.closeTo(20, 9), '']);
  });

  test('the magnification is the draw’s, or what is typed', async () => {
    const typed = await sheet({ magnification: '1:4', focal: null, draw: null });
    expect(typed.cell('longest')).toBeCloseTo(LIMIT, 6);
    const both = await sheet({ magnification: 0.5 });
    expect(both.cell('longest')).toBeCloseTo(LIMIT / 2, 6);
    expect(both.words('magnification')).toBe('! the draw is unused');
  });

  test('says so when no head is short enough as it is set, and when none can be', async () => {
    const set = await sheet({}, [ALDER, BIRCH]);
    expect([set.cell('ready'), set.words('ready')]).toEqual([0, '! no head is short enough as it is set']);
    const none = await sheet({ smear: 1 });
    expect([none.cell('can'), none.cell('more'), none.cell('open')]).toEqual([0, '', '']);
    expect(none.words('can')).toBe('! none: allow more smear, picture it smaller, or bring shorter heads');
  });
});

describe('the light', () => {
  test('too much of it asks for no way out', async () => {
    const { cell, words } = await sheet({ aperture: 8 });
    // f/8 needs half the reading of f/16: 2 stops less
    expect(cell('off')).toBeCloseTo(2 - SHORT, 6);
    expect(words('off')).toBe('! over: stop down by 0.7 stop, or take a head away');
    for (const id of ['more', 'nearer', 'open', 'depthLeft']) expect(cell(id), id).toBe('');
  });

  test('within half a tenth it is enough', async () => {
    const { cell, words } = await sheet({ aperture: '10' });
    // f/10 is 2^(20/6): 16/10.079 is 4/3 stops; 1.31475 − 1.33333 = −0.0186
    expect(cell('off')).toBeCloseTo(4 / 3 - SHORT, 6);
    expect(words('off')).toBe('against the lens setting');
    expect(cell('more')).toBe('');
  });

  test('beyond the lens is said, with what is still short', async () => {
    const { cell, words } = await sheet({ opens: 11 });
    expect(cell('open')).toBe('f/10');
    // f/16 to f/11 gains one stop of 1.31
    expect(words('open')).toBe('! beyond the lens: wide open it is still 0.3 stop short');
    expect((await sheet({ opens: null })).words('open')).toBe('lens setting, the other two left as they are');
  });

  test('two heads alike count twice', async () => {
    const { cell, head } = await sheet({}, [BIRCH, BIRCH]);
    expect(head('Light there', 1)).toBeCloseTo(BIRCH_LIGHT, 6);
    expect(cell('together')).toBeCloseTo(Math.sqrt(2 * BIRCH_LIGHT), 6);
  });

  test('a head without a reading freezes, and is told to be left out of the sum', async () => {
    const { cell, words, whatToDo } = await sheet({}, [ALDER, row(BIRCH, { reading: null, tenths: null })]);
    expect(whatToDo()[1]).toBe('too long as set: turn by −1.7; no reading');
    expect(cell('together')).toBeCloseTo(Math.sqrt(ALDER_LIGHT), 6);
    expect(words('reads')).toBe('! not counted in it: 1 head, see What to do');
  });

  test('tenths of a reading count', async () => {
    const { head } = await sheet({}, [row(BIRCH, { reading: 16, tenths: 7 })]);
    // f/16 +0.7 is 2^4.35; squared and 1.7 stops down
    expect(head('Light there')).toBeCloseTo(2 ** (8.7 - 1.7), 6);
  });
});

describe('the shutter', () => {
  test('waits for a late trigger, and for none', async () => {
    // Without: 135.84 × ln(14.9327)/ln 10 = 159.5 µs. 1/6400 stands for 2^(−38/3) s = 153.8, 1/5000 for 2^(−37/3) = 193.8.
    expect((await sheet({ delay: null })).cell('shutter')).toBe('1/5000 s');
    // 4 ms later 4.16 ms: 1/200 is 4.92, 1/250 only 3.91
    expect((await sheet({ delay: 0.004 })).cell('shutter')).toBe('1/200 s');
  });
});

describe('what is missing, or cannot be', () => {
  const ABOVE: readonly (readonly [typed: Typed, said: string])[] = [
    [{ drop: 0 }, 'the height of the fall cannot be read'],
    [{ drop: 25 }, 'the height of the fall cannot be read'],
    [{ drop: '2 s' }, 'the height of the fall cannot be read'],
    [{ drop: 46000 }, 'the height of the fall cannot be read'],
    [{ drop: null, moves: null }, 'type a fall, a rim or a speed'],
    [{ diameter: 0.3 }, 'type diameter and turns, or neither'],
    [{ turns: 600 }, 'type diameter and turns, or neither'],
    [{ diameter: 0.3, turns: 'fast' }, 'diameter or turns cannot be read'],
    [{ moves: 0 }, 'the speed cannot be read'],
    [{ moves: '5 kg' }, 'the speed cannot be read'],
    [{ moves: 46000 }, 'the speed cannot be right'],
    [{ focal: null }, 'type focal length and draw, or the magnification'],
    [{ draw: null }, 'type focal length and draw, or the magnification'],
    [{ focal: 200 }, 'focal length, draw or magnification cannot be right'],
    [{ focal: '1/60' }, 'focal length, draw or magnification cannot be right'],
    [{ draw: 120 }, 'focused at infinity: type the magnification'],
    [{ magnification: 46000 }, 'focal length, draw or magnification cannot be right'],
    [{ magnification: 'infinity' }, 'focused at infinity: type the magnification'],
    [{ pitch: null }, 'type the pixel pitch'],
    [{ pitch: '3 px' }, 'pixel pitch or smear cannot be read'],
    [{ smear: null }, 'type the smear allowed'],
    [{ smear: 0 }, 'pixel pitch or smear cannot be read'],
    [{ smear: '3 mm' }, 'pixel pitch or smear cannot be read'],
    [{ smear: 46000 }, 'the smear allowed cannot be right'],
  ];
  test.each(drawn(ABOVE))('%o: nothing is answered', async (typed, said) => {
    const { cell, words, whatToDo, column } = await sheet(typed);
    expect(words('longest')).toBe(`! ${said}`);
    for (const id of ['longest', 'longestAs', 'ready', 'can', 'reads', 'off', 'more', 'open', 'shutter'])
      expect(cell(id), id).toBe('');
    expect(column('FreezeHeads', 'Freezes at')).toEqual(['', '', '', '']);
    expect(new Set(whatToDo())).toEqual(new Set(['say above what moves, and how it is pictured']));
  });

  const LIGHT: readonly (readonly [typed: Typed, said: string])[] = [
    [{ aperture: null }, 'type the lens setting'],
    [{ aperture: 'wide' }, 'the lens setting cannot be read'],
    [{ aperture: 46000 }, 'the lens setting cannot be read'],
    [{ aperture: 1600 }, 'the lens setting cannot be right'],
    [{ filters: 'dark' }, 'what filters take cannot be read'],
    [{ filters: 46000 }, 'what filters take cannot be read'],
    [{ filters: '-1/3' }, 'filters take light: no stops below 0'],
    [{ opens: '4 m' }, 'what the lens opens to cannot be read'],
    [{ opens: 1600 }, 'what the lens opens to cannot be right'],
    [{ blur: '2 s' }, 'the blur allowed cannot be read'],
  ];
  test.each(drawn(LIGHT))('%o: it freezes, but the light is not told', async (typed, said) => {
    const { cell, words } = await sheet(typed);
    expect(words('must')).toBe(`! ${said}`);
    expect(cell('reads')).toBe('f/11 +0.7');
    for (const id of ['must', 'off', 'more', 'nearer', 'open', 'depthLeft']) expect(cell(id), id).toBe('');
  });

  test('a blank filter takes nothing, a blank blur gives no depth', async () => {
    const { cell } = await sheet({ filters: null, blur: null });
    expect(cell('off')).toBeCloseTo(1 / 3 - SHORT, 6);
    expect([cell('open') === '', cell('depthLeft')]).toEqual([false, '']);
  });

  test('a delay that cannot be read leaves the shutter out alone', async () => {
    const { cell, words } = await sheet({ delay: '3 m' });
    expect([cell('shutter'), words('shutter')]).toEqual([
      '',
      '! the time from open to the flash cannot be read',
    ]);
    expect(cell('reads')).toBe('f/11 +0.7');
  });

  const HALF: readonly (readonly [heads: Row, said: string])[] = [
    [row(ALDER, { head: null }), 'name the head'],
    [row(ALDER, { power: null }), 'type the power it is set to'],
    [row(ALDER, { power: 0 }), 'its power cannot be read, or is more than full'],
    [row(ALDER, { power: 700 }), 'its power cannot be read, or is more than full'],
    [row(ALDER, { power: 46000 }), 'its power cannot be read, or is more than full'],
    [row(ALDER, { power: '400 W' }), 'its power cannot be read, or is more than full'],
    [row(ALDER, { full: null }), 'type its full power, further right'],
    [row(ALDER, { full: 'all' }), 'its full power or step cannot be right'],
    [row(ALDER, { full: 46000 }), 'its full power cannot be right'],
    [row(ALDER, { full: 500, power: 300 }), 'its durations go beyond its full power'],
    [row(ALDER, { least: '10 s' }), 'its least power cannot be right'],
    [row(ALDER, { least: 700 }), 'its least power cannot be right'],
    [row(ALDER, { step: null }), 'type the step of its dial, further right'],
    [row(ALDER, { step: 46000 }), 'its full power or step cannot be right'],
    [row(ALDER, { scale: 'volts' }), 'choose its scale, and what it shows at full power'],
    [row(BIRCH, { fullShows: null }), 'choose its scale, and what it shows at full power'],
    [row(ALDER, { level: null }), 'choose the level of its durations: t0.1 or t0.5'],
    [row(ALDER, { level: 't0.7' }), 'choose the level of its durations: t0.1 or t0.5'],
    [row(ALDER, { energy1: null, flash1: null }), 'type its durations, further right'],
    [row(ALDER, { energy1: null }), 'its durations cannot be read: energy beside flash'],
    [row(ALDER, { flash1: null }), 'its durations cannot be read: energy beside flash'],
    [row(ALDER, { flash1: 2600 }), 'its durations cannot be read: energy beside flash'],
    [row(ALDER, { flash1: 46000 }), 'its durations cannot be read: energy beside flash'],
    [row(ALDER, { flash1: '1250 px' }), 'its durations cannot be read: energy beside flash'],
    [row(ALDER, { energy2: 600 }), 'its durations cannot be read: energy beside flash'],
    [row(ALDER, { reading: 'bright' }), 'its reading cannot be read'],
    [row(ALDER, { reading: 46000 }), 'its reading cannot be read'],
    [row(ALDER, { reading: 1600 }), 'its reading cannot be right'],
    [row(ALDER, { tenths: 12 }), 'its reading cannot be read'],
    [row(ALDER, { reading: null, tenths: 3 }), 'tenths without a reading'],
    [NOTHING, ''],
  ];
  test('a row half filled says in words what it lacks, and answers nothing', async () => {
    const { whatToDo, column, cell, words } = await sheet({}, [...HALF.map(([heads]) => heads), HAZEL]);
    expect(whatToDo().slice(0, -1)).toEqual(HALF.map(([, said]) => said));
    for (const name of ['Smear', 'Freezes at', 'Reads there'])
      expect(new Set(column('FreezeHeads', name).slice(0, -1)), name).toEqual(new Set(['']));
    expect([cell('can'), cell('together')]).toEqual([1, expect.closeTo(Math.sqrt(HAZEL_LIGHT), 6)]);
    expect(words('reads')).toBe(`! not counted in it: ${HALF.length - 1} heads, see What to do`);
  });

  test('what it says in a row fits the column', () => {
    const wide = template.columns[3] ?? 0;
    for (const [, said] of HALF) expect(said.length, said).toBeLessThanOrEqual(wide);
    expect('freezes as set; may be turned by +0.8; no reading'.length).toBeLessThanOrEqual(wide);
  });
});

test('empty, it shows neither results nor errors', async () => {
  const { cell, errors, plan, values, whatToDo } = await sheet({}, ROWS, false);
  expect(errors).toEqual([]);
  for (const [id] of WORKED) expect(cell(id), id).toBe('');
  expect(whatToDo()).toEqual(['', '', '', '']);
  const said = plan.cells.filter(({ part, row: r, column: c }) => part === 'warning' && String(values(r, c)).startsWith('!')); // prettier-ignore
  expect(said).toEqual([]);
});

describe('on paper and beside the pane', () => {
  const { sheet: laid } = { sheet: template };
  test('every answer of a row stands left of column I, and what prints is no wider than a page', () => {
    const heads = laid.blocks.find(isHeads);
    expect(heads?.columns.slice(0, 8).map(({ id }) => id)).toEqual([
      'Head', 'Power', 'Smear', 'What to do', 'Freezes at', 'Reads there', 'Reading', 'Tenths',
    ]); // prettier-ignore
    expect(laid.printsTo).toMatch(/^H/);
    // A column of n characters is (7n + 5) × ¾ points wide; an A4 or Letter page lengthwise takes 720 at full size.
    const points = laid.columns.slice(0, 8).reduce((sum, n) => sum + (7 * n + 5) * 0.75, 0);
    expect(points).toBeLessThanOrEqual(720);
  });
});

test('durations are told in µs and ms', () => {
  expect(
    template.blocks.flatMap((block) =>
      block.kind === 'form' ? block.fields.filter(({ quantity }) => quantity === 'flash') : [],
    ),
  ).toEqual([]);
  expect(CEDAR[11]).toBe('1500 µs');
});
