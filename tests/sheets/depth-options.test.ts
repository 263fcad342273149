import { describe, expect, test } from 'vitest';
import { isCellError } from '../../src/formula/errors';
import { depthOf } from '../../src/sheets/check';
import type { TemplateTable, TemplateValue } from '../../src/sheets/template';
import { calculated, templateOf, type Typed, typedOver } from './support';

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
  const rows = apertures.map((n) => [n ?? null]);
  const made = await calculated(typedOver(template, typed, { Options: rows }), filled);
  const column = (name: string) => made.column('Options', name);
  const row = (aperture: number, name: string) => column(name)[apertures.indexOf(aperture)];
  const warnings = made.plan.cells
    .filter(({ part }) => part === 'warning')
    .map(({ row: r, column: c }) => String(made.values(r, c)))
    .filter((text) => text.startsWith('!'));
  return { ...made, column, row, warnings };
}

/**
 * The demo job worked by hand, without any function of ours. Subject 40 mm deep, draw 150 mm of 120 mm: m = 30/120 =
 * 1/4, so 1 + m = 1.25 and m² = 1/16. Blur circle 0.06 mm, pitch 3.76 µm. One pop f/16 and 3 tenths lets in 2^8.3 parts
 * of light less than f/1; what is lost is a factor of 1.25² × 2.5 = 3.90625. Mark number s of a stop's thirds is
 * 2^(s/6): f/8 18, f/10 20, f/11 21, f/25 28, f/45 33, f/64 36. 1.2 + 1 s a pop, 5 s a step, slices overlap by a fifth.
 *
 * Geometric blur g of a depth d, blurred alike at both ends: d·m² / (N·(1.25 + √(1.25² + (d·m/f)²))), the exact total
 * depth of a thin lens solved for its blur circle; with a depth of 40 mm d·m/f = 10/120.
 */
const DEMO: readonly (readonly [cell: string, value: number, working: string])[] = [
  ['H5', 25, 'least blur of f/22, f/25 and f/29, which alone do the job'],
  ['H6', 57.924159, 'g = 2.5/(25 × 2.502774) = 39.95565 µm with 41.9375 µm: √(1596.454 + 1758.754)'],
  ['H7', 8, '2^(28/3 − 8.3 − 0.05) × 3.90625 = 7.7228'],
  ['H8', 17.6, '8 × 2.2'],
  ['H9', 10, 'least blur of all stacks'],
  ['H10', 4, 'slice 2 × 10 × 0.06 × 1.25 × 16 × 0.8 = 19.2: 40/19.2 = 2.08, 3 steps, 4 frames'],
  ['H11', 13.3333333, '40/3'],
  ['H12', 37.3126985, 'g = 0.833333/(10 × 2.500308) = 33.32922 µm with 16.775 µm'],
  ['H13', 8, '4 frames of 2 pops: 2^(20/3 − 8.35) × 3.90625 = 1.2163'],
  ['H14', 37.6, '4 × (2 × 2.2 + 5)'],
  ['H16', 20.6114605, '57.924159 − 37.3126985'],
  ['H18', 20, '37.6 − 17.6'],
  ['B23', 19.2049165, 'f/8: 2 × 8 × 0.06 × 1.25 / (1/16 − 0.004²)'],
  ['B33', 60.1503759, 'f/25: 3.75 / (1/16 − 0.0125²)'],
  ['C23', 10, '8 × 1.25'],
  ['D33', 41.9375, '2.44 × 0.55 × 31.25'],
  ['E33', 11.1535904, '41.9375/3.76'],
  ['F23', 125.5805332, 'g = 2.5/(8 × 2.502774) = 124.86142 µm with 13.42 µm'],
  ['F38', 78.6835145, 'f/45: 22.19759 and 75.4875 µm'],
  ['I23', 1, '2^(6 − 8.35) × 3.90625 = 0.766'],
  ['I38', 25, '2^(11 − 8.35) × 3.90625 = 24.518'],
  ['I41', 50, '2^(12 − 8.35) × 3.90625 = 49.037'],
  ['J41', 110, '50 × 2.2'],
  ['K26', 3, 'f/11: 40/21.12 = 1.89, 2 steps'],
  ['L26', 20, '40/2'],
  ['M26', 49.0455239, 'g = 1.25/(11 × 2.500694) = 45.44193 µm with 18.4525 µm'],
  ['M33', 57.924159, 'f/25: 2 frames, one step of 40 mm: as much as one frame'],
  ['O23', 28.8, 'f/8: 4 × (2.2 + 5)'],
  ['O38', 120, 'f/45: 2 × (55 + 5)'],
  ['Q41', 60, '0.06 mm'],
  ['B45', 0.25, '30/120'],
  ['B46', 24.415675, '√(2.5 / (4.88 × 0.00055)) / 1.25'],
  ['B47', 17.7531116, '2^(8.3/2)'],
  ['B48', 0.6438562, 'log2 of 1.25²'],
  ['B49', 1.3219281, 'log2 of 2.5'],
  ['B50', 1.9657843, 'log2 of 3.90625'],
];

describe('the demo job', () => {
  test('gives what is worked out by hand', async () => {
    const { at } = await sheet();
    for (const [cell, value, working] of DEMO) {
      const found = at(cell);
      expect(typeof found, `${cell}: ${working}`).toBe('number');
      expect((found as number) / value, `${cell}: ${working}`).toBeCloseTo(1, 7);
    }
  });

  test('says of each row whether one frame does the job, and the stack', async () => {
    const { column, cell, warnings } = await sheet();
    // Depth reaches 40 mm from f/18 on (16.6 worked by hand); √(g² + Airy²) is within 60 µm from f/22 to f/29 only.
    expect(column('One frame')).toEqual([
      ...Array<string>(7).fill('too little depth'),
      ...Array<string>(2).fill('too much blur'),
      ...Array<string>(3).fill('does the job'),
      ...Array<string>(4).fill('too much blur'),
      ...Array<string>(3).fill('beyond the lens'),
    ]);
    expect(column('Frame rank')).toEqual([...Array(9).fill(''), 2, 1, 3, ...Array(7).fill('')]);
    // Two frames, one at each end, are as blurred midway as one frame is at the ends.
    expect(column('Stack')).toEqual([
      ...Array<string>(12).fill('does the job'),
      ...Array<string>(4).fill('too much blur'),
      ...Array<string>(3).fill('beyond the lens'),
    ]);
    expect([cell('best'), cell('quicker')]).toEqual(['stack', 'single frame']);
    expect(warnings).toEqual([]);
  });

  test('ranks by the least blur in all', async () => {
    const { column } = await sheet();
    const ranked = column('Stack rank').flatMap((rank, i) =>
      rank === '' ? [] : [[Number(rank), Number(column('Stack blur')[i])] as const],
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
    const { row } = await sheet({
      depth: 10,
      magnification: '1:1',
      focal: null,
      draw: null,
      blur: 0.015,
      overlap: 0.3,
    });
    expect(row(8, 'Frames')).toBe(31);
    expect(row(8, 'Depth')).toBeCloseTo(0.48, 12);
    expect(row(8, 'Working aperture')).toBe(16);
    // Airy disc of f/16 at 550 nm, 21.472 µm: a published table prints 21.5.
    expect(row(8, 'Airy disc')).toBeCloseTo(21.472, 9);
  });

  /**
   * "How to select the f-stop", page on large-format photography, table of focus spread against f-stop with tenths: 2 mm
   * f/22 and 6 tenths (27.9), 4 mm f/32 and 6 tenths (39.4), 8 mm f/45 and 6 tenths (55.7). The spread is depth × m²,
   * the table's f-stop the working aperture: at 1:4 the lens setting is less by 1.25, 22.3, 31.5 and 44.6.
   */
  test.each([
    [2, 22],
    [4, 32],
    [8, 45],
  ])('a focus spread of %d mm has its least blur in all at f/%d', async (spread, setting) => {
    const { column } = await sheet({ depth: spread * 16 });
    const blurs = column('Blur in all') as number[];
    expect(EVERY_ROW[blurs.indexOf(Math.min(...blurs))]).toBe(setting);
  });
});

describe('what the job asks for', () => {
  // 0.03 mm is met by no frame: the least possible blur is √(2.44 × 0.00055 × 40/16) = 0.0579 mm.
  test('a job that no single frame does, but a stack', async () => {
    const { cell, warnings, errors } = await sheet({ blur: 0.03 });
    expect([cell('frame'), cell('framePops'), cell('frameTime')]).toEqual(['none', '', '']);
    expect(cell('stack')).toBe(8);
    // Slice 2 × 8 × 0.03 × 1.25 × 16 × 0.8 = 7.68 mm: 5.2 of them, 6 steps, 7 frames of 2.2 + 5 s.
    // g = 0.416667/(8 × 2.5) = 20.8 µm with 13.4 µm is 24.8 µm; f/10 with 6 frames 26.1 µm.
    expect(cell('stackFrames')).toBe(7);
    expect(cell('stackTime')).toBeCloseTo(50.4, 9);
    expect([cell('best'), cell('quicker'), cell('sharperBy')]).toEqual(['stack', '', '']);
    expect(warnings).toEqual(['! no row does the job in one frame: stack, or allow a wider blur circle']);
    expect(errors).toEqual([]);
  });

  test('a job that one frame does at every setting of the lens', async () => {
    // 2 mm deep: depth at f/8 is 19.2 mm, and the Airy disc of f/22 is 36.9 µm.
    const { column, cell } = await sheet({ depth: 2, smallest: 22 });
    expect(column('One frame').slice(0, 10)).toEqual(Array(10).fill('does the job'));
    // √((0.125/20)² + 0.01342²) = 14.8 µm at f/8; f/9: 5.56 and 15.1 µm give 16.1.
    expect([cell('frame'), cell('framePops'), cell('stack')]).toEqual([8, 1, 8]);
    // Two frames at the two ends are as blurred midway as one is at the ends: time decides, 2.2 s against 2 × 7.2 s.
    expect([cell('sharperBy'), cell('best'), cell('quicker')]).toEqual([0, 'single frame', 'single frame']);
    expect(cell('quickerBy')).toBeCloseTo(12.2, 9);
  });

  test('a job that nothing does', async () => {
    // The Airy disc of f/8 alone is 13.4 µm.
    const { cell, warnings } = await sheet({ blur: 0.01 });
    expect([cell('frame'), cell('stack'), cell('best'), cell('quicker')]).toEqual([
      'none',
      'none',
      'none',
      '',
    ]);
    expect(warnings).toHaveLength(2);
  });

  test('a lens that stops down less leaves rows out, and a blank none', async () => {
    const less = await sheet({ smallest: 22 });
    expect([less.cell('frame'), less.row(25, 'One frame')]).toEqual([22, 'beyond the lens']);
    const all = await sheet({ smallest: null });
    expect(all.row(64, 'One frame')).toBe('too much blur');
  });

  test('a stack can be the quicker one', async () => {
    // f/9: 4 frames of 1 pop, 4 × 2.2 s without a step; f/10 has 2 pops. One frame: f/25, 8 pops, 17.6 s.
    const { cell } = await sheet({ stepTime: null }, [9, 25]);
    expect([cell('stack'), cell('quicker')]).toEqual([9, 'stack']);
    expect(cell('quickerBy')).toBeCloseTo(17.6 - 8.8, 9);
  });

  test('more flashes than the maker allows are warned of, for one frame and for all of a stack', async () => {
    const { warnings } = await sheet({ allowed: 7 });
    expect(warnings).toEqual(
      Array(2).fill('! more flashes in a row than allowed: let the heads cool in between'),
    );
    expect((await sheet({ allowed: 8 })).warnings).toEqual([]);
    expect((await sheet({ allowed: null })).warnings).toEqual([]);
  });
});

test('two rows of one blur: the one of less time comes first', async () => {
  // At its least the blur is the same to 15 figures at 22 and 22.0000001. The first is a mark, 22.627, and takes 2^(9 − 8.35) ×
  // 3.90625 = 6.13, 7 pops; the second is no mark and takes 22² / 2^8.35 × 3.90625 = 5.79, 6 pops.
  const job = { depth: 32.4764, magnification: '1:4', focal: null, draw: null };
  const { column } = await sheet(job, [22, 22.0000001]);
  const [one, other] = column('Blur in all');
  expect(Number(one) / Number(other)).toBeCloseTo(1, 12);
  expect(column('Pops')).toEqual([7, 6]);
  expect([column('Frame rank'), column('Stack rank')]).toEqual([
    [2, 1],
    [2, 1],
  ]);
});

describe('where the picture’s scale comes from', () => {
  // 120/(600 − 120) = 1/4 and (150 − 120)/120 = 1/4.
  test.each<[string, Typed]>([
    ['a magnification as a ratio', { magnification: '1:4', draw: null }],
    ['a magnification as a number', { magnification: 0.25, draw: null }],
    ['a distance', { draw: null, distance: 600 }],
    ['a draw, whatever the distance', { distance: 900 }],
    ['a magnification, whatever the draw', { magnification: '25%', draw: 200 }],
  ])('%s', async (_, typed) => {
    const { cell, errors } = await sheet(typed);
    expect(cell('scale')).toBeCloseTo(0.25, 12);
    expect([cell('frame'), cell('stack')]).toEqual([25, 10]);
    expect(errors).toEqual([]);
  });

  test('a magnification beside a draw is said to count', async () => {
    expect((await sheet({ magnification: '1:4' })).warnings).toEqual(['! draw and distance are unused']);
  });

  test.each<[string, Typed, string]>([
    ['a draw shorter than the focal length', { draw: 100 }, '! shorter than the focal length'],
    ['a distance within the focal length', { draw: null, distance: 100 }, '! not beyond the focal length'],
  ])('%s: one cell refuses, in words, and the rest stays blank', async (_, typed, words) => {
    const { cell, errors, warnings, column } = await sheet(typed);
    expect(errors).toHaveLength(1);
    expect(isCellError(cell('scale'))).toBe(true);
    expect(warnings).toEqual([words, '! the draw or the distance cannot be right']);
    expect(cell('frame')).toBe('');
    for (const name of ['Depth', 'Airy disc', 'Blur in all', 'Pops', 'Frames', 'Stack'])
      expect(new Set(column(name)), name).toEqual(new Set(['']));
  });
});

describe('to infinity', () => {
  test.each<[string, Typed]>([
    ['typed', { magnification: 'infinity', draw: null }],
    ['as a draw of the focal length', { draw: 120 }],
  ])('%s: no end to the depth, nothing to stack, and no error', async (_, typed) => {
    const { cell, column, errors, warnings } = await sheet(typed);
    expect([errors, warnings]).toEqual([[], []]);
    expect(cell('scale')).toBe(0);
    expect(new Set(column('Depth'))).toEqual(new Set(['no end']));
    expect(new Set(column('Frames'))).toEqual(new Set(['']));
    // Diffraction alone: 2.44 × 0.55 × 8 = 10.736 µm.
    expect(cell('frame')).toBe(8);
    expect(cell('frameBlur')).toBeCloseTo(10.736, 9);
    expect([cell('stack'), cell('best')]).toEqual(['none', 'single frame']);
  });

  test('beyond the hyperfocal distance only', async () => {
    // m = 120/(6120 − 120) = 0.02; 2 × 120 × 0.02/0.06 = 80, so f·m/c = 40: there the far limit is at infinity.
    const { row, errors } = await sheet({ draw: null, distance: 6120, depth: 3000, smallest: null });
    expect(errors).toEqual([]);
    expect(typeof row(36, 'Depth')).toBe('number');
    expect([row(40, 'Depth'), row(64, 'Depth')]).toEqual(['no end', 'no end']);
    // 2 × 36 × 0.06 × 1.02 / (0.02² − 0.018²)
    expect(row(36, 'Depth')).toBeCloseTo(57978.947368421, 6);
  });
});

describe('what is missing', () => {
  test('empty, it shows the settings and nothing else, and no error', async () => {
    const { plan, values, column, errors, warnings } = await sheet({}, EVERY_ROW, false);
    expect(errors).toEqual([]);
    expect(warnings).toEqual([]);
    expect(column('Aperture')).toEqual(EVERY_ROW);
    const results = plan.cells.filter(({ part }) => part === 'result' || part === 'answer');
    expect(results.length).toBeGreaterThan(300);
    const shown = results.map(({ row, column: c }) => values(row, c)).filter((value) => value !== '');
    // No filter takes no light.
    expect(shown).toEqual([0]);
  });

  test('without a reading it still tells of depth and blur', async () => {
    const { cell, errors } = await sheet({ reading: null });
    expect([cell('frame'), cell('stack'), cell('best')]).toEqual([25, 10, 'stack']);
    expect([cell('framePops'), cell('frameTime'), cell('stackFlashes'), cell('quicker')]).toEqual([
      '',
      '',
      '',
      '',
    ]);
    expect(errors).toEqual([]);
  });

  test('a reading that cannot be read is one error, and takes nothing else with it', async () => {
    const { cell, errors } = await sheet({ reading: 'f/16+3' });
    expect(errors).toHaveLength(1);
    expect(isCellError(cell('reads'))).toBe(true);
    expect([cell('frame'), cell('framePops')]).toEqual([25, '']);
  });

  test.each(['recycle', 'pitch', 'filters', 'pause', 'overlap', 'blur', 'depth', 'focal', 'draw'])(
    'blank %s: no error',
    async (id) => {
      const { errors } = await sheet({ [id]: null });
      expect(errors).toEqual([]);
    },
  );

  test('a row without a setting stays blank and spoils no other', async () => {
    const { row, column, cell, errors } = await sheet({}, [22, null, 25]);
    expect(errors).toEqual([]);
    for (const name of [
      'Depth',
      'Blur in all',
      'One frame',
      'Frame rank',
      'Pops',
      'Stack time',
      'Blur allowed',
    ])
      expect(column(name)[1], name).toBe('');
    expect([row(22, 'Frame rank'), row(25, 'Frame rank'), cell('frame')]).toEqual([2, 1, 25]);
  });
});
