import { describe, expect, test } from 'vitest';
import { depthOf } from '../../src/sheets/checkTemplate';
import { planAlone } from '../../src/sheets/makePlan';
import type { TemplateTable, TemplateValue } from '../../src/sheets/template';
import { drawn } from '../full';
import { calculated, templateOf, type Typed, typedOver, wordsBeside } from './support';
import { together } from './together';

const template = templateOf('depth-options');
const EVERY_ROW = (template.blocks.find((block) => block.kind === 'table') as TemplateTable).rows.map(
  ([n]) => n,
);

/** The sheet with some of the demo job's inputs typed over; with empty inputs where `filled` is false. */
async function sheet(
  typed: Typed = {},
  apertures: readonly (TemplateValue | undefined)[] = EVERY_ROW,
  filled = true,
) {
  const rows = (id: string) =>
    (template.blocks.find((block) => block.kind === 'table' && block.id === id) as TemplateTable).rows.slice(
      0,
      apertures.length,
    );
  const tables = {
    Options: apertures.map((n) => [n ?? null]),
    Stacks: rows('Stacks'),
    Numbers: rows('Numbers'),
  };
  const made = await calculated(typedOver(template, typed, tables), filled);
  const of = (table: string, column: string, aperture: number) =>
    made.column(table, column)[apertures.indexOf(aperture)];
  const warnings = made.plan.cells
    .filter(({ part }) => part === 'warning')
    .map(({ row: r, column: c }) => String(made.values(r, c)))
    .filter((text) => text.startsWith('!'));
  return { ...made, of, warnings, words: (id: string) => wordsBeside(template, made, id) };
}

/**
 * A job that a single frame can do as well, worked by hand, without any function of ours. Subject 40 mm deep, draw 150 mm of
 * 120 mm: m = 30/120 = 1/4, so 1 + m = 1.25 and m² = 1/16. Blur allowed 0.06 mm, pitch 3.76 µm. One pop f/16 and 3 tenths lets
 * in 2^8.3 parts of light less than f/1; what is lost is a factor of 1.25² × 2.5 = 3.90625. Mark number s of a stop's thirds is
 * 2^(s/6): f/8 18, f/10 20, f/11 21, f/25 28, f/45 33, f/64 36. 1.2 + 1 s a pop, 5 s a step, slices overlap by a fifth.
 *
 * Geometric blur g of a depth d, blurred alike at both ends: d·m² / (N·(1.25 + √(1.25² + (d·m/f)²))), the exact total
 * depth of a thin lens solved for its blur circle; with a depth of 40 mm d·m/f = 10/120.
 */
const WIDE: Typed = { blur: 0.06, reading: 16, readingTenths: 3, filters: '1.3219280949', opens: 8 };
const WIDE_ANSWERS: readonly (readonly [id: string, value: number, working: string])[] = [
  ['frame', 25, 'least blur of f/22, f/25 and f/29, which alone do the job'],
  ['frameBlur', 57.924159, 'g = 2.5/(25 × 2.502774) = 39.95565 µm with 41.9375 µm: √(1596.454 + 1758.754)'],
  ['framePops', 8, '2^(28/3 − 8.3 − 0.05) × 3.90625 = 7.7228'],
  ['frameTime', 17.6, '8 × 2.2'],
  ['stack', 10, 'least blur of all stacks'],
  ['stackFrames', 4, 'slice 2 × 10 × 0.06 × 1.25 × 16 × 0.8 = 19.2: 40/19.2 = 2.08, 3 steps, 4 frames'],
  ['stackStep', 13.3333333, '40/3'],
  ['stackBlur', 37.3126985, 'g = 0.833333/(10 × 2.500308) = 33.32922 µm with 16.775 µm'],
  ['stackFlashes', 8, '4 frames of 2 pops: 2^(20/3 − 8.35) × 3.90625 = 1.2163'],
  ['stackTime', 37.6, '4 × (2 × 2.2 + 5)'],
  ['sharperBy', 20.6114605, '57.924159 − 37.3126985'],
  ['quickerBy', 20, '37.6 − 17.6'],
  ['scale', 0.25, '30/120'],
  ['sharpest', 24.415675, '√(2.5 / (4.88 × 0.00055)) / 1.25'],
  ['reads', 17.7531116, '2^(8.3/2)'],
  ['bellowsLoss', 0.6438562, 'log2 of 1.25²'],
  ['filterLoss', 1.3219281, 'log2 of 2.5'],
  ['loss', 1.9657843, 'log2 of 3.90625'],
  ['frameOver', 0.00088238200458, 'log2 8 − (28/3 − 8.3 + 1.965784284662)'],
  ['stackOver', 0.667549, 'log2 2 − (20/3 − 8.3 + 1.9657843)'],
  ['stackDown', 0.7, 'to the next tenth'],
];
const WIDE_ROWS: readonly (readonly [
  table: string,
  column: string,
  at: number,
  value: number,
  working: string,
])[] = [
  ['Options', 'Depth', 8, 19.2049165, '2 × 8 × 0.06 × 1.25 / (1/16 − 0.004²)'],
  ['Options', 'Depth', 25, 60.1503759, '3.75 / (1/16 − 0.0125²)'],
  ['Numbers', 'Airy disc', 25, 41.9375, '2.44 × 0.55 × 31.25'],
  ['Numbers', 'Airy in pixels', 25, 11.1535904, '41.9375/3.76'],
  ['Options', 'Blur in all', 8, 125.5805332, 'g = 2.5/(8 × 2.502774) = 124.86142 µm with 13.42 µm'],
  ['Options', 'Blur in all', 45, 78.6835145, '22.19759 and 75.4875 µm'],
  ['Options', 'Pops', 8, 1, '2^(6 − 8.35) × 3.90625 = 0.766'],
  ['Options', 'One pop', 8, 0.3342157, '8.3 − 6 − 1.9657843'],
  ['Options', 'Over by', 10, 0.667549, 'two pops at f/10: 1 − (20/3 − 8.3 + 1.9657843)'],
  ['Options', 'Turn down by', 10, 0.7, 'to the next tenth'],
  ['Options', 'Pops', 45, 25, '2^(11 − 8.35) × 3.90625 = 24.518'],
  ['Options', 'Turn down by', 45, 0, 'log2 25 − (11 − 8.3 + 1.9657843) = −0.022'],
  ['Options', 'Pops', 64, 50, '2^(12 − 8.35) × 3.90625 = 49.037'],
  ['Stacks', 'Frames', 11, 3, '40/21.12 = 1.89, 2 steps'],
  ['Stacks', 'Step', 11, 20, '40/2'],
  ['Stacks', 'Blur in all', 11, 49.0455239, 'g = 1.25/(11 × 2.500694) = 45.44193 µm with 18.4525 µm'],
  ['Stacks', 'Blur in all', 25, 57.924159, '2 frames, one step of 40 mm: as much as one frame'],
  ['Stacks', 'Turn down by', 10, 0.7, 'as one frame'],
  ['Stacks', 'Time', 8, 28.8, '4 × (2.2 + 5)'],
  ['Stacks', 'Time', 45, 120, '2 × (55 + 5)'],
  ['Numbers', 'Blur allowed', 64, 60, '0.06 mm'],
];
/**
 * The demo job allows 0.012 mm and has f/22 and 6 tenths, 2^9.6, with 1.25² × 2^(1/3) = 1.968627 lost; the rest is the same.
 * The least blur of one frame is √(2 × 2.44 × 0.55 × 1000 × 40/16) = 81.9 µm² …: 57.9 µm at f/25, as above.
 */
const DEMO: readonly (readonly [id: string, value: number | string, working: string])[] = [
  ['frame', 'none', 'none within 12 µm'],
  ['leastBlur', 57.924159, 'as in the job above: neither blur allowed nor light enter it'],
  ['stack', 4, 'only f/4 and f/4.5 stay within 12 µm: at f/5 the Airy disc is 8.3875 and g = 9.52'],
  ['stackFrames', 28, 'slice 2 × 4 × 0.012 × 1.25 × 16 × 0.8 = 1.536: 40/1.536 = 26.04, 27 steps'],
  ['stackStep', 1.4814815, '40/27'],
  ['stackBlur', 11.434934, 'g = 0.0925926/(4 × 2.5000038) = 9.259245 µm with 2.44 × 0.55 × 5 = 6.71 µm'],
  ['stackFlashes', 28, 'one pop a frame'],
  ['stackDown', 4.6, '9.6 − 4 − 0.977190 = 4.6228 over'],
  ['stackTime', 201.6, '28 × (2.2 + 5)'],
  ['best', 'stack', 'the only one'],
];

describe('the demo job', () => {
  test('gives what is worked out by hand', async () => {
    const { cell, errors } = await sheet();
    for (const [id, value, working] of DEMO)
      expect(cell(id), `${id}: ${working}`).toEqual(
        typeof value === 'number' ? expect.closeTo(value, 5) : value,
      );
    expect(errors).toEqual([]);
  });
  test('says why no single frame does it, and what the heads are over by', async () => {
    const { words, warnings } = await sheet();
    expect(words('frame')).toBe('! the least blur is 57.9 µm, at f/25: stack, or allow more');
    expect(words('stackDown')).toBe('! over by 4.62 stop as they stand');
    expect(warnings).toHaveLength(2);
  });
  test('says of every row what it is over by, and what to turn the heads down by', async () => {
    const { column, of } = await sheet();
    // f/22: 9 − 9.6 + 0.977190 = 0.377190 stop: two pops are 0.622810 over; f/29: 29/3 …, two pops are 0.043857 under.
    expect([of('Options', 'Pops', 22), of('Options', 'Over by', 22)]).toEqual([
      2,
      expect.closeTo(0.62281, 5),
    ]);
    expect([of('Options', 'Turn down by', 22), of('Options', 'Turn down by', 29)]).toEqual([0.6, 0]);
    for (const [i, over] of column('Options', 'Over by').entries())
      expect(Math.abs(Number(over) - Number(column('Options', 'Turn down by')[i]))).toBeLessThanOrEqual(
        0.05 + 1e-9,
      );
  });
  test('one line of its chart is the blur allowed, which is one cell; the best stack is a point', () => {
    const { charts } = planAlone(template, true).sheet;
    expect(charts.map(({ series }) => series.map(({ name, role }) => [name, role]))).toEqual([
      [
        ['Frame blur', undefined],
        ['Stack blur', undefined],
        ['Blur allowed', 'limit'],
        ['Best stack', 'point'],
      ],
    ]);
  });
});

describe('a job that one frame can do as well', () => {
  test('gives what is worked out by hand', async () => {
    const { cell, of } = await sheet(WIDE);
    for (const [id, value, working] of WIDE_ANSWERS) {
      expect(typeof cell(id), `${id}: ${working}`).toBe('number');
      expect(Number(cell(id)) / value, `${id}: ${working}`).toBeCloseTo(1, 6);
    }
    for (const [table, column, at, value, working] of WIDE_ROWS)
      expect(of(table, column, at), `${column} at f/${at}: ${working}`).toBeCloseTo(value, 5);
  });

  test('says of each row whether one frame does the job, and the stack', async () => {
    const { column, cell, words, warnings } = await sheet(WIDE);
    // Depth reaches 40 mm from f/18 on (16.6 worked by hand); √(g² + Airy²) is within 60 µm from f/22 to f/29 only.
    expect(column('Options', 'One frame')).toEqual([
      ...Array<string>(6).fill('beyond the lens'),
      ...Array<string>(7).fill('too little depth'),
      ...Array<string>(2).fill('too much blur'),
      ...Array<string>(3).fill('does the job'),
      ...Array<string>(4).fill('too much blur'),
      ...Array<string>(3).fill('beyond the lens'),
    ]);
    expect(column('Numbers', 'Frame rank')).toEqual([...Array(15).fill(''), 2, 1, 3, ...Array(7).fill('')]);
    // Two frames, one at each end, are as blurred midway as one frame is at the ends.
    expect(column('Stacks', 'Stack')).toEqual([
      ...Array<string>(6).fill('beyond the lens'),
      ...Array<string>(12).fill('does the job'),
      ...Array<string>(4).fill('too much blur'),
      ...Array<string>(3).fill('beyond the lens'),
    ]);
    expect([cell('best'), cell('quicker')]).toEqual(['stack', 'single frame']);
    // The stack at f/10 with two pops over-exposes each frame: said beside what to turn down by.
    expect(words('stackDown')).toBe('! over by 0.67 stop as they stand');
    expect(words('frameDown')).toBe('');
    expect(warnings).toHaveLength(1);
  });

  test('ranks by the least blur in all', async () => {
    const { column } = await sheet(WIDE);
    const ranked = column('Numbers', 'Stack rank').flatMap((rank, i) =>
      rank === '' ? [] : [[Number(rank), Number(column('Numbers', 'Stack blur')[i])] as const],
    );
    ranked.sort(([one], [other]) => one - other);
    expect(ranked.map(([rank]) => rank)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    for (const [i, [, blur]] of ranked.entries())
      if (i > 0) expect(blur).toBeGreaterThan(ranked[i - 1]?.[1] ?? Infinity);
  });
});

test('chains at most two of our functions', () => expect(depthOf(template)).toBe(2));

describe('against what was published', () => {
  // Macro forum thread "Focus stacking steps", 2011: step 2·c·N·(m + 1)/m² with c = 0.015 mm; less the overlap of 30 %
  // that is 0.336 mm, 29.8 of them in 10 mm, and one frame more than the 30 steps.
  test('10 mm at 1:1 and f/8 take 31 frames', async () => {
    const { of } = await sheet({
      depth: 10,
      magnification: '1:1',
      focal: null,
      draw: null,
      blur: 0.015,
      overlap: 0.3,
    });
    expect(of('Stacks', 'Frames', 8)).toBe(31);
    expect(of('Options', 'Depth', 8)).toBeCloseTo(0.48, 12);
    // Airy disc of f/16 at 550 nm, 21.472 µm: a published table prints 21.5.
    expect(of('Numbers', 'Airy disc', 8)).toBeCloseTo(21.472, 9);
  });

  /**
   * "How to select the f-stop", page on large-format photography, table of focus spread against f-stop with tenths: 2 mm
   * f/22 and 6 tenths (27.9), 4 mm f/32 and 6 tenths (39.4), 8 mm f/45 and 6 tenths (55.7). The spread is depth × m²,
   * the table's f-stop the working aperture: at 1:4 the lens setting is less by 1.25, 22.3, 31.5 and 44.6.
   */
  test.each(
    drawn([
      [2, 22],
      [4, 32],
      [8, 45],
    ] as const),
  )('a focus spread of %d mm has its least blur in all at f/%d', async (spread, setting) => {
    const { column } = await sheet({ depth: spread * 16, smallest: null });
    const blurs = column('Options', 'Blur in all') as number[];
    expect(EVERY_ROW[blurs.indexOf(Math.min(...blurs))]).toBe(setting);
  });
});

describe('what the job asks for', () => {
  // 0.03 mm is met by no frame: the least possible blur is √(2.44 × 0.00055 × 40/16) = 0.0579 mm.
  test('a job that no single frame does, but a stack', async () => {
    const { cell, words, warnings, errors } = await sheet({ ...WIDE, blur: 0.03 });
    expect([cell('frame'), cell('framePops'), cell('frameTime')]).toEqual(['none', '', '']);
    expect(cell('stack')).toBe(8);
    // Slice 2 × 8 × 0.03 × 1.25 × 16 × 0.8 = 7.68 mm: 5.2 of them, 6 steps, 7 frames of 2.2 + 5 s.
    // g = 0.416667/(8 × 2.5) = 20.8 µm with 13.4 µm is 24.8 µm; f/10 with 6 frames 26.1 µm.
    expect(cell('stackFrames')).toBe(7);
    expect(cell('stackTime')).toBeCloseTo(50.4, 9);
    expect([cell('best'), cell('quicker'), cell('sharperBy')]).toEqual(['stack', '', '']);
    expect(words('frame')).toBe('! the least blur is 57.9 µm, at f/25: stack, or allow more');
    // One pop at f/8: 8.3 − 6 − 1.9658
    expect(warnings).toEqual([words('frame'), '! over by 0.33 stop as they stand']);
    expect(errors).toEqual([]);
  });

  test('a job that one frame does at every setting of the lens', async () => {
    // 2 mm deep: depth at f/8 is 19.2 mm, and the Airy disc of f/22 is 36.9 µm.
    const { column, cell } = await sheet({ ...WIDE, depth: 2, smallest: 22 });
    expect(column('Options', 'One frame').slice(6, 16)).toEqual(Array(10).fill('does the job'));
    // √((0.125/20)² + 0.01342²) = 14.8 µm at f/8; f/9: 5.56 and 15.1 µm give 16.1.
    expect([cell('frame'), cell('framePops'), cell('stack')]).toEqual([8, 1, 8]);
    // Two frames at the two ends are as blurred midway as one is at the ends: time decides, 2.2 s against 2 × 7.2 s.
    expect([cell('sharperBy'), cell('best'), cell('quicker')]).toEqual([0, 'single frame', 'single frame']);
    expect(cell('quickerBy')).toBeCloseTo(12.2, 9);
  });

  test('a job that nothing does', async () => {
    // The Airy disc of f/8 alone is 13.4 µm.
    const { cell, words } = await sheet({ ...WIDE, blur: 0.01 });
    expect([cell('frame'), cell('stack'), cell('best'), cell('quicker')]).toEqual([
      'none',
      'none',
      'none',
      '',
    ]);
    expect(words('stack')).toBe('! no stack does the job: more overlap makes it sharper');
  });

  test('a lens that stops down less, or opens less, leaves rows out, and a blank none', async () => {
    const less = await sheet({ ...WIDE, smallest: 22 });
    expect([less.cell('frame'), less.of('Options', 'One frame', 25)]).toEqual([22, 'beyond the lens']);
    const opens = await sheet({ ...WIDE, opens: 11 });
    expect([10, 11].map((n) => opens.of('Stacks', 'Stack', n))).toEqual(['beyond the lens', 'does the job']);
    const all = await sheet({ ...WIDE, smallest: null, opens: null });
    expect(all.of('Options', 'One frame', 64)).toBe('too much blur');
    expect(all.of('Options', 'One frame', 4)).toBe('too little depth');
    const none = await sheet({ ...WIDE, opens: 256, smallest: null });
    expect(none.words('frame')).toBe('! no setting on the lens');
  });

  test('a stack can be the quicker one', async () => {
    // f/9: 4 frames of 1 pop, 4 × 2.2 s without a step; f/10 has 2 pops. One frame: f/25, 8 pops, 17.6 s.
    const { cell } = await sheet({ ...WIDE, stepTime: null }, [9, 25]);
    expect([cell('stack'), cell('quicker')]).toEqual([9, 'stack']);
    expect(cell('quickerBy')).toBeCloseTo(17.6 - 8.8, 9);
  });

  test('more flashes than the maker allows are warned of, for one frame and for all of a stack', async () => {
    const said = '! more flashes in a row than allowed: let the heads cool';
    const few = await sheet({ ...WIDE, allowed: 7 });
    expect([few.words('framePops'), few.words('stackFlashes')]).toEqual([said, said]);
    for (const allowed of [8, null]) {
      const { words } = await sheet({ ...WIDE, allowed });
      expect([words('framePops'), words('stackFlashes')]).toEqual(['', '']);
    }
  });
});

test('two rows of one blur: the one of fewer pops comes first', async () => {
  // At its least the blur is the same to 15 figures at 22 and 22.0000001. The first is a mark, 22.627, and takes 2^(9 − 8.35) ×
  // 3.90625 = 6.13, 7 pops; the second is no mark and takes 22² / 2^8.35 × 3.90625 = 5.79, 6 pops.
  const job = { ...WIDE, depth: 32.4764, magnification: '1:4', focal: null, draw: null };
  const { column } = await sheet(job, [22, 22.0000001]);
  const [one, other] = column('Options', 'Blur in all');
  expect(Number(one) / Number(other)).toBeCloseTo(1, 12);
  expect(column('Options', 'Pops')).toEqual([7, 6]);
  expect([column('Numbers', 'Frame rank'), column('Numbers', 'Stack rank')]).toEqual([
    [2, 1],
    [2, 1],
  ]);
});

describe('where the picture’s scale comes from', () => {
  // 120/(600 − 120) = 1/4 and (150 − 120)/120 = 1/4.
  test.each(
    drawn<[string, Typed]>([
      ['a magnification as a ratio', { magnification: '1:4', draw: null }],
      ['a magnification as a number', { magnification: 0.25, draw: null }],
      ['a distance', { draw: null, distance: 600 }],
      ['a draw, whatever the distance', { distance: 900 }],
      ['a magnification, whatever the draw', { magnification: '25%', draw: 200 }],
    ]),
  )('%s', async (_, typed) => {
    const { cell, errors } = await sheet({ ...WIDE, ...typed });
    expect(cell('scale')).toBeCloseTo(0.25, 12);
    expect([cell('frame'), cell('stack')]).toEqual([25, 10]);
    expect(errors).toEqual([]);
  });

  test('a magnification beside a draw is said to count', async () => {
    expect((await sheet({ magnification: '1:4' })).words('magnification')).toBe(
      '! draw and distance are unused',
    );
  });
});

describe('to infinity', () => {
  test.each<[string, Typed]>([
    ['typed', { magnification: 'infinity', draw: null }],
    ['as a draw of the focal length', { draw: 120 }],
  ])('%s: no end to the depth, nothing to stack, and no error', async (_, typed) => {
    const { cell, column, errors, words } = await sheet({ ...WIDE, ...typed });
    expect(errors).toEqual([]);
    expect([words('frame'), words('stack')].filter((said) => said.startsWith('!'))).toEqual([]);
    expect(cell('scale')).toBe(0);
    expect(new Set(column('Options', 'Depth'))).toEqual(new Set(['no end']));
    expect(new Set(column('Stacks', 'Frames'))).toEqual(new Set(['']));
    // Diffraction alone: 2.44 × 0.55 × 8 = 10.736 µm.
    expect(cell('frame')).toBe(8);
    expect(cell('frameBlur')).toBeCloseTo(10.736, 9);
    expect([cell('stack'), cell('best')]).toEqual(['none', 'single frame']);
  });

  test('beyond the hyperfocal distance only', async () => {
    // m = 120/(6120 − 120) = 0.02; 2 × 120 × 0.02/0.06 = 80, so f·m/c = 40: there the far limit is at infinity.
    const { of, errors } = await sheet({ ...WIDE, draw: null, distance: 6120, depth: 3000, smallest: null });
    expect(errors).toEqual([]);
    expect([40, 64].map((n) => of('Options', 'Depth', n))).toEqual(['no end', 'no end']);
    // 2 × 36 × 0.06 × 1.02 / (0.02² − 0.018²)
    expect(of('Options', 'Depth', 36)).toBeCloseTo(57978.947368421, 6);
  });
});

const DATE = 44197;
describe('what is missing, or cannot be read', () => {
  test('empty, it shows the settings and nothing else, and no error', async () => {
    const { plan, values, column, errors, warnings } = await sheet({}, EVERY_ROW, false);
    expect(errors).toEqual([]);
    expect(warnings).toEqual([]);
    for (const table of ['Options', 'Stacks', 'Numbers'])
      expect(column(table, 'Lens setting')).toEqual(EVERY_ROW);
    // What stands under "How it comes about" may tell what a blank means.
    const answers = plan.cells.filter(
      ({ part, row, column: c }) => part === 'answer' || (part === 'result' && row < 98 && c > 0),
    );
    expect(answers.length).toBeGreaterThan(300);
    expect(answers.filter(({ row, column: c }) => values(row, c) !== '')).toEqual([]);
  });

  const jobs: readonly (readonly [id: string, typed: TemplateValue, words: string])[] = [
    ['depth', null, 'type the depth of the subject'],
    ['depth', 0, 'depth of the subject: a number of mm'],
    ['depth', '4 cm', 'depth of the subject: a number of mm'],
    ['depth', 'deep', 'depth of the subject: a number of mm'],
    ['blur', null, 'type the blur allowed'],
    ['blur', 0, 'blur allowed: a number of mm'],
    ['blur', '12 µm', 'blur allowed: a number of mm'],
    ['blur', 12, 'blur allowed: in mm, 12 µm is 0.012'],
    ['blur', DATE, 'blur allowed: in mm, 12 µm is 0.012'],
    ['focal', null, 'type focal length and draw, or a magnification'],
    ['focal', '12 cm', 'focal length: a number of mm'],
    ['focal', 'long', 'the draw or the distance cannot be right'],
    ['draw', null, 'type focal length and draw, or a magnification'],
    ['draw', 100, 'the draw or the distance cannot be right'],
    ['draw', '2 s', 'the draw or the distance cannot be right'],
    ['magnification', 'big', 'the magnification cannot be right'],
    ['magnification', DATE, 'the magnification cannot be right'],
    ['opens', 'wide', 'what the lens opens to cannot be read'],
    ['smallest', '2 m', 'what the lens stops down to cannot be read'],
    ['smallest', 2.8, 'the lens stops down less than it opens'],
    ['overlap', 'half', 'overlap: a share above 0 and up to 90%'],
    ['overlap', 20, 'overlap: a share above 0 and up to 90%'],
  ];
  test.each(drawn(jobs))('%s: %j', async (id, typed, said) => {
    const { cell, words, column } = await sheet({ [id]: typed });
    expect(words('frame')).toBe(`! ${said}`);
    for (const answer of [
      'frame',
      'frameBlur',
      'framePops',
      'frameDown',
      'stack',
      'stackFrames',
      'stackTime',
      'best',
      'quicker',
    ])
      expect(cell(answer) || '', answer).toBe('');
    for (const [table, name] of [
      ['Options', 'Depth'],
      ['Options', 'Blur in all'],
      ['Options', 'One frame'],
      ['Stacks', 'Frames'],
      ['Stacks', 'Stack'],
      ['Stacks', 'Time'],
    ] as const)
      expect(new Set(column(table, name)), name).toEqual(new Set(['']));
  });

  test('a distance within the focal length', async () => {
    const { words } = await sheet({ draw: null, distance: 100 });
    expect(words('distance')).toBe('! not beyond the focal length');
    expect(words('frame')).toBe('! the draw or the distance cannot be right');
  });

  const lights: readonly (readonly [id: string, typed: TemplateValue, words: string])[] = [
    ['reading', null, 'type the reading of one pop'],
    ['reading', 0, 'the reading of one pop cannot be read'],
    ['reading', DATE, 'the reading of one pop cannot be read'],
    ['reading', '2 m', 'the reading of one pop cannot be read'],
    ['filters', 'blue', 'what filters take cannot be read'],
    ['filters', '-1', 'filters take light: no stops below 0'],
    ['allowed', 'some', 'flashes in a row: type a whole number'],
    ['allowed', 0, 'flashes in a row: type a whole number'],
  ];
  test.each(drawn(lights))('%s: %j takes the flashes, not the depth', async (id, typed, said) => {
    const { cell, words, column } = await sheet({ ...WIDE, readingTenths: 0, [id]: typed });
    expect([cell('frame'), cell('stack')]).toEqual([25, expect.any(Number)]);
    expect([words('framePops'), words('stackFlashes')]).toEqual([`! ${said}`, `! ${said}`]);
    for (const answer of [
      'framePops',
      'frameDown',
      'frameTime',
      'stackFlashes',
      'stackDown',
      'stackTime',
      'quicker',
    ])
      expect(cell(answer), answer).toBe('');
    for (const name of ['One pop', 'Pops', 'Over by', 'Turn down by'])
      expect(new Set(column('Options', name)), name).toEqual(new Set(['']));
  });

  test.each(
    drawn<[string, TemplateValue, string]>([
      ['recycle', null, 'type the recycle time'],
      ['recycle', DATE, 'recycle time or pause cannot be read'],
      ['recycle', '2 m', 'recycle time or pause cannot be read'],
      ['pause', 'long', 'recycle time or pause cannot be read'],
      ['stepTime', 'slow', 'the time for a step cannot be read'],
      ['stepTime', '5 mm', 'the time for a step cannot be read'],
    ]),
  )('%s: %j takes the times alone', async (id, typed, said) => {
    const { cell, words } = await sheet({ ...WIDE, [id]: typed });
    expect([cell('frame'), cell('framePops'), cell('stackTime'), cell('quicker')]).toEqual([25, 8, '', '']);
    expect(words('stackTime')).toBe(`! ${said}`);
  });

  test.each(drawn(['pitch', 'filters', 'pause', 'overlap', 'stepTime', 'opens', 'smallest', 'allowed']))(
    'blank %s: no error',
    async (id) => {
      const { errors } = await sheet({ [id]: null });
      expect(errors).toEqual([]);
    },
  );
  test('a blank overlap is a fifth', async () => {
    expect((await sheet({ overlap: null })).cell('stackFrames')).toBe(28);
  });
  test('a pitch that is no number leaves its column blank', async () => {
    const { column, errors } = await sheet({ pitch: 'fine' });
    expect(errors).toEqual([]);
    expect(new Set(column('Numbers', 'Airy in pixels'))).toEqual(new Set(['']));
  });

  test('a row without a setting stays blank and spoils no other', async () => {
    const { of, column, cell, errors } = await sheet(WIDE, [22, null, 25]);
    expect(errors).toEqual([]);
    for (const [table, name] of [
      ['Options', 'Depth'],
      ['Options', 'Blur in all'],
      ['Options', 'One frame'],
      ['Options', 'Pops'],
      ['Options', 'Over by'],
      ['Stacks', 'Stack'],
      ['Stacks', 'Time'],
      ['Stacks', 'Pops'],
      ['Numbers', 'Frame rank'],
    ] as const)
      expect(column(table, name)[1], name).toBe('');
    expect([of('Numbers', 'Frame rank', 22), of('Numbers', 'Frame rank', 25), cell('frame')]).toEqual([
      2, 1, 25,
    ]);
  });
});

describe('at two in the morning', () => {
  // (151 − 120)/120 is 6 h 12 min of a day, which a cell might have made of 6:12.
  test.each(drawn([151, 151.5, 150.75, 265, 271]))(
    'a draw of %d mm is calculated with like any other',
    async (draw) => {
      const { cell, column, errors } = await sheet({ draw });
      expect(errors).toEqual([]);
      const m = draw / 120 - 1;
      expect(cell('scale')).toBeCloseTo(m, 12);
      // The geometry takes f/11 as typed: 2 × 1.22 × 0.55 µm × 11 × (1 + m)
      const row = EVERY_ROW.indexOf(11);
      expect(column('Numbers', 'Airy disc')[row]).toBeCloseTo(2.44 * 0.55 * 11 * (1 + m), 9);
      expect(column('Stacks', 'Frames').every((n) => typeof n === 'number')).toBe(true);
    },
  );

  test.each(
    drawn<[string, Typed, string]>([
      ['a draw that is a year', { draw: 46_329 }, 'the draw or the distance cannot be right'],
      ['a distance of 2 km', { draw: null, distance: 2e6 }, 'the draw or the distance cannot be right'],
      ['a depth of a kilometre', { depth: 1e6 }, 'depth of the subject: a number of mm'],
    ]),
  )('%s is refused', async (_, typed, said) => {
    const { cell, words } = await sheet(typed);
    expect([cell('frame'), cell('stack'), words('frame')]).toEqual(['', '', `! ${said}`]);
  });

  test.each(drawn(['abc', '3,76', -1, 500]))('a pitch of %s is said to be none', async (pitch) => {
    const { words } = await sheet({ pitch });
    expect(words('pitch')).toBe('! a number of µm, from 0.1 to 100');
  });
});

test('beside Heads its slowest head brings its times, and what is no head takes the flashes', async () => {
  const job = typedOver(template, WIDE);
  const book = await together([{ template: templateOf('heads') }, { template: job }]);
  const { cell, words, type } = book.form(1, job);
  // Cedar 2400 is the demo job's: 8 pops of 2.2 s
  expect([cell('recycle'), cell('allowed'), cell('frameTime')]).toEqual([1.2, 40, expect.closeTo(17.6, 9)]);
  // Birch 1200 is ready after 0.9 s and may fire 50 in a row, 7 of them in the end: 8 × 1.9
  await type('head', 'Birch 1200');
  expect([cell('recycle'), cell('allowed'), cell('frameTime')]).toEqual([0.9, 50, expect.closeTo(15.2, 9)]);
  await book.type('Models', 'In a row', 2, 7);
  expect(words('framePops')).toBe('! more flashes in a row than allowed: let the heads cool');
  await book.type('Models', 'In a row', 2, null);
  await book.type('Models', 'Recycle', 2, null);
  await book.type('Models', 'Recycle least', 2, null);
  expect([cell('allowed'), cell('recycle'), words('frameTime')]).toEqual(['', '', '! type the recycle time']);
  await type('head', 'Rowan 300');
  expect([cell('frame'), cell('framePops'), cell('frameTime')]).toEqual([25, '', '']);
  expect(words('head')).toBe('! not in Heads, or its row there is not ready');
  expect(words('framePops')).toBe('! correct the head, or clear it and type times');
  expect(book.errors()).toEqual([]);
  book.dispose();
});
