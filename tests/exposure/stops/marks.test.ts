import { describe, expect, it } from 'vitest';
import {
  type Division,
  DIVISIONS,
  exactHalfMark,
  exactMark,
  marks,
  type MarkedScale,
  markText,
  nearestMark,
} from '../../../src/exposure/stops/marks';
import { expectNear, refusal, value } from '../support';

const SCALES: readonly MarkedScale[] = ['aperture', 'time', 'iso'];
const PER_STOP: Readonly<Record<Division, number>> = { third: 3, half: 2, full: 1 };
const ORIGIN: Readonly<Record<MarkedScale, number>> = { aperture: 1, time: 1, iso: 100 };
const series = SCALES.flatMap((scale) => DIVISIONS.map((division) => ({ scale, division })));

/** The exact value behind a step, by the definition of a stop: an f-number doubles in two, a time and a speed in one. */
const exact = (scale: MarkedScale, step: number, division: Division): number =>
  ORIGIN[scale] * 2 ** (step / PER_STOP[division] / (scale === 'aperture' ? 2 : 1));
const stopsBetween = (scale: MarkedScale, a: number, b: number): number =>
  Math.log2(b / a) * (scale === 'aperture' ? 2 : 1);

describe.each(series)('the marks of $scale by $division stops', ({ scale, division }) => {
  const all = marks(scale, division);

  it('rise from each to the next', () => {
    for (const [i, mark] of all.entries()) {
      const before = all[i - 1];
      if (before) expect(mark.marked).toBeGreaterThan(before.marked);
    }
  });

  it('leave no step out, apart from those between f/0.5 and f/0.7', () => {
    const steps = all.filter((m) => m.marked !== 0.5 || scale !== 'aperture').map((m) => m.step);
    const first = steps[0] as number;
    expect(steps).toEqual(steps.map((_, i) => first + i));
  });

  /** Half-stop times such as 1/20 for 1/22.6 s are rounded the most. */
  const widest = scale === 'time' && division === 'half' ? 1 / 5 : 1 / 6;
  it(`are figures within ${widest === 1 / 5 ? 'a fifth' : 'a sixth'} of a stop of the exact value behind them`, () => {
    for (const { marked, step } of all) {
      const off = stopsBetween(scale, exact(scale, step, division), marked);
      expect(Math.abs(off), `${marked}`).toBeLessThan(widest);
    }
  });

  it('stand for the exact value that the definition of a stop gives', () => {
    const behind = division === 'half' ? exactHalfMark : exactMark;
    for (const { marked, step } of all)
      expectNear(behind(scale, marked) as number, exact(scale, step, division), 1e-14);
  });

  it('are each the nearest to their own exact value', () => {
    for (const { marked, step } of all)
      expect(value(nearestMark(scale, exact(scale, step, division), division)).marked).toBe(marked);
  });

  it('win up to half a step away, and the higher wins a tie', () => {
    const half = 0.5 / PER_STOP[division] / (scale === 'aperture' ? 2 : 1);
    for (const { marked, step } of all.slice(1)) {
      const here = exact(scale, step, division);
      expect(value(nearestMark(scale, here * 2 ** -half, division)).marked).toBe(marked);
      expect(value(nearestMark(scale, here * 2 ** (-half * 0.999), division)).marked).toBe(marked);
      expect(value(nearestMark(scale, here * 2 ** (half * 0.999), division)).marked).toBe(marked);
    }
  });

  it('end: beyond them there is no answer, and the message names both ends', () => {
    const first = all[0] as { marked: number };
    const last = all[all.length - 1] as { marked: number };
    for (const far of [first.marked / 2, last.marked * 2]) {
      const { fail, message } = refusal(nearestMark(scale, far, division));
      expect(fail).toBe('no-answer');
      expect(message).toContain(markText(scale, first.marked));
      expect(message).toContain(markText(scale, last.marked));
    }
  });
});

/** What stands on rings and in displays, written down apart from the series of the code. */
const CUSTOMARY: readonly (readonly [MarkedScale, Division, string])[] = [
  [
    'aperture',
    'third',
    '1 1.1 1.2 1.4 1.6 1.8 2 2.2 2.5 2.8 3.2 3.5 4 4.5 5 5.6 6.3 7.1 8 9 10 11 13 14 16 18 20 22 25 29 32 36 40 45 51 57 64',
  ],
  ['aperture', 'half', '1 1.2 1.4 1.7 2 2.4 2.8 3.3 4 4.8 5.6 6.7 8 9.5 11 13 16 19 22 27 32'],
  ['aperture', 'full', '1 1.4 2 2.8 4 5.6 8 11 16 22 32 45 64 90 128'],
  ['time', 'full', '1/1000 1/500 1/250 1/125 1/60 1/30 1/15 1/8 1/4 1/2 1 2 4 8 15 30'],
  [
    'time',
    'third',
    '1/8000 1/6400 1/5000 1/4000 1/3200 1/2500 1/2000 1/1600 1/1250 1/1000 1/800 1/640 1/500 1/400 1/320 1/250 1/200 1/160 1/125 1/100 1/80 1/60 1/50 1/40 1/30 1/25 1/20 1/15 1/13 1/10 1/8 1/6 1/5 1/4 0.3 0.4 0.5 0.6 0.8 1 1.3 1.6 2 2.5 3.2 4 5 6 8 10 13 15 20 25 30',
  ],
  [
    'time',
    'half',
    '1/1000 1/750 1/500 1/350 1/250 1/180 1/125 1/90 1/60 1/45 1/30 1/20 1/15 1/10 1/8 1/6 1/4 1/3 1/2 0.7 1 1.5 2 3 4 6 8 10 15 20 30',
  ],
  [
    'iso',
    'third',
    '25 32 40 50 64 80 100 125 160 200 250 320 400 500 640 800 1000 1250 1600 2000 2500 3200 4000 5000 6400',
  ],
];

describe('the customary figures', () => {
  it.each(CUSTOMARY)(
    'of %s by %s stops stand one after another (common practice, no source)',
    (scale, division, row) => {
      const figures = row.split(' ').map((figure) => {
        const [over, under = 1] = figure.split('/').map(Number) as [number, number?];
        return over / under;
      });
      const all = marks(scale, division).map((m) => m.marked);
      const start = all.indexOf(figures[0] as number);
      expect(all.slice(start, start + figures.length)).toEqual(figures);
    },
  );
});

describe('full stops', () => {
  it.each(SCALES)('of %s are every third of the third-stop marks', (scale) => {
    const thirds = marks(scale, 'third').filter((m) => m.step % 3 === 0);
    expect(marks(scale, 'full').map((m) => m.marked)).toEqual(thirds.map((m) => m.marked));
  });
});

describe('a figure that both series use', () => {
  it.each([
    ['aperture', 13, 2 ** (22 / 6), 2 ** (15 / 4)],
    ['aperture', 1.2, 2 ** (2 / 6), 2 ** (1 / 4)],
    ['time', 1 / 20, 2 ** (-13 / 3), 2 ** (-9 / 2)],
    ['time', 1 / 10, 2 ** (-10 / 3), 2 ** (-7 / 2)],
  ] as const)(
    '%s %d is the third-stop mark unless the half-stop one is asked for',
    (scale, marked, third, half) => {
      expectNear(exactMark(scale, marked) as number, third, 1e-14);
      expectNear(exactHalfMark(scale, marked) as number, half, 1e-14);
    },
  );
});

describe('a figure that is no mark', () => {
  it.each([
    ['aperture', 11.3],
    ['aperture', 12],
    ['aperture', 0.6],
    ['time', 1 / 70],
    ['iso', 110],
    ['iso', 0],
    ['aperture', NaN],
    ['aperture', -8],
  ] as const)('%s %d stands for nothing else', (scale, figure) => {
    expect(exactMark(scale, figure)).toBeUndefined();
    expect(exactHalfMark(scale, figure)).toBeUndefined();
  });

  it('is told from a mark at one part in a thousand million', () => {
    expect(exactMark('aperture', 11 * (1 + 1e-10))).toBeDefined();
    expect(exactMark('aperture', 11 * (1 + 1e-8))).toBeUndefined();
  });
});

describe('other spellings of a mark', () => {
  it.each([
    ['time', 1 / 3, 2 ** (-5 / 3)],
    ['time', 1 / 2.5, 2 ** (-4 / 3)],
    ['time', 1 / 1.6, 2 ** (-2 / 3)],
    ['time', 1 / 1.3, 2 ** (-1 / 3)],
    ['iso', 12500, 12800],
    ['iso', 25000, 25600],
  ] as const)('%s %d is read as the mark it stands for', (scale, figure, behind) => {
    expectNear(exactMark(scale, figure) as number, behind, 1e-14);
  });
});

describe('a mark as text', () => {
  it.each([
    ['aperture', 5.6, 'f/5.6'],
    ['time', 1 / 125, '1/125 s'],
    ['time', 1 / 2, '1/2 s'],
    ['time', 1 / 3, '1/3 s'],
    ['time', 0.3, '0.3 s'],
    ['time', 2, '2 s'],
    ['iso', 400, 'ISO 400'],
  ] as const)('of %s %d is %s', (scale, marked, text) => {
    expect(markText(scale, marked)).toBe(text);
  });
});
