import { describe, expect, it } from 'vitest';
import { caseNumbers } from '../../full';
import { inSteps } from '../../../src/exposure/balance/inSteps';
import { random } from '../random';

const STEP = 0.1;
/** A share that lies so many tenths of a stop below the most. */
const down = (tenths: number): number => 2 ** (-tenths * STEP);

interface Given {
  /** Light of each head at its most, point by point. */
  readonly reach: readonly (readonly number[])[];
  /** Present powers, powers to settle and last settings, in tenths of a stop below the most; Infinity is off. */
  readonly now: readonly number[];
  readonly to: readonly number[];
  readonly last: readonly number[];
}
/** Settings in tenths of a stop below the most. */
function settled({ reach, now, to, last }: Given): number[] {
  const lighting = { reach, now: now.map(down), least: last.map(down), mayGoOff: now.map(() => false) };
  return inSteps(lighting, to.map(down), { step: STEP, last }).map((share) => {
    if (share === 0) return Infinity;
    const tenths = -Math.log2(share) / STEP;
    expect(tenths).toBeCloseTo(Math.round(tenths), 9);
    return Math.round(tenths) + 0;
  });
}

describe('settings near the powers', () => {
  // The first head alone lights the point, and is in place from its tenth setting on; the others light nothing, so that
  // of their settings tried the one nearest to the present is kept: it tells how far those tried reach.
  const beside = (others: number, place: number, now: number, last = 20): number => {
    const list = (first: number, x: number): number[] => [first, ...Array.from({ length: others }, () => x)];
    const came = settled({
      reach: [list(down(-10), 0)],
      now: list(20, now),
      to: list(10, place),
      last: list(20, last),
    });
    expect(came[0]).toBe(10);
    expect(new Set(came.slice(1)).size).toBe(1);
    return came[1] as number;
  };

  it.each([
    [10, 8, 12],
    [10.3, 8, 12],
    [10.7, 9, 13],
    [0, 0, 4],
    [0.7, 0, 4],
    [1.2, 0, 4],
    [3.3, 1, 5],
    [19.8, 16, 20],
    [20, 16, 20],
    [20.4, 16, 20],
    [17.2, 15, 19],
  ])(
    'of five heads are the five nearest within the range, from %s tenths down those from %s to %s',
    (place, low, high) => {
      expect(beside(4, place, 0)).toBe(low);
      expect(beside(4, place, 20)).toBe(high);
    },
  );

  it('are all where there are no more', () => {
    expect(beside(4, 1, 0, 2)).toBe(0);
    expect(beside(4, 1, 20, 2)).toBe(2);
    expect(beside(4, 0, 20, 0)).toBe(0);
  });

  it('of three heads are seventeen, of six four', () => {
    expect(beside(2, 10.2, 0)).toBe(2);
    expect(beside(2, 10.2, 20)).toBe(18);
    expect(beside(5, 10.2, 0)).toBe(9);
    expect(beside(5, 10.2, 20)).toBe(12);
  });
});

describe('settings of heads', () => {
  it('stay as they are where the present ones are as good as the best, and lie on the nearest of them', () => {
    // the present light is what is wanted; the powers to settle lie elsewhere, as bright together
    const given = { reach: [[down(-1), down(-1)]], now: [11, 11], to: [6, 18], last: [30, 30] };
    expect(settled(given)).toEqual([11, 11]);
    // a tie goes to the higher power
    expect(settled({ reach: [[down(-10)]], now: [10.4], to: [10], last: [30] })).toEqual([10]);
    expect(settled({ reach: [[down(-9.6), 0]], now: [9.5, 4.5], to: [10, 4], last: [30, 30] })).toEqual([
      10, 4,
    ]);
    expect(settled({ reach: [[down(-20)]], now: [20.4], to: [20], last: [20] })).toEqual([20]);
  });

  it('leave off what is off', () => {
    const given = { reach: [[down(-10), down(-10)]], now: [0, 0], last: [30, 30] };
    expect(settled({ ...given, to: [10, Infinity] })).toEqual([10, Infinity]);
    expect(settled({ ...given, to: [Infinity, 10] })).toEqual([Infinity, 10]);
  });
});

describe('the present settings', () => {
  it('are tried as they are, however far from the powers to settle, or from the range', () => {
    const given = { reach: [[down(-10), 0, 0, 0, 0]], to: [10, 30, 30, 30, 30], last: [60, 60, 60, 60, 60] };
    expect(settled({ ...given, now: [10, 5, 50, 0, 60] })).toEqual([10, 5, 50, 0, 60]);
    expect(settled({ ...given, now: [10, 5.4, 5.6, 60.4, 0] })).toEqual([10, 5, 6, 60, 0]);
  });
});

describe('settings tried near the powers of heads that are lit', () => {
  it('are as many as if those that are off were not there', () => {
    // three lit, so that seventeen settings of each are tried: the second goes eight steps down from its tenth
    const now = [20, 20, 20, 20, 20];
    const given = { reach: [[down(-10), 0, 0, 0, 0]], now, to: [10, 10, 10, Infinity, Infinity], last: now };
    expect(settled(given)).toEqual([10, 18, 18, Infinity, Infinity]);
  });
});

describe('moves from the best of the settings tried', () => {
  // The first head and the last light two points, each by half and by about as much, and give just what is wanted at their
  // twentieth settings; four others between them give a quarter each of what a third point wants, at their thirtieth. The
  // first head has a few settings too high for all others which no point tells on its own, so that the search over all
  // settings comes to its end with it: what is found is found by moves.
  const reach = [[2, 0, 0, 0, 0, 2], [2.4, 0, 0, 0, 0, 1.6], [0, 2, 2, 2, 2, 0]]; // prettier-ignore
  const last = [60, 60, 60, 60, 60, 60];
  const now = [50, 50, 50, 50, 50, 50];

  it.each([
    ['one head, one step', 18.9, 20],
    ['one head the other way', 22.5, 20],
    ['one head, many steps', 32.5, 20],
    ['the last head', 20, 10.5],
    ['both heads against each other, as neither alone does better', 24.5, 15.5],
    ['both heads the other way', 15.5, 25.5],
    ['both heads from far', 30, 30],
  ])('come to what is wanted: %s', (_, first, sixth) => {
    for (const points of [reach, [...reach].reverse()])
      expect(settled({ reach: points, now, to: [first, 30, 30, 30, 30, sixth], last })).toEqual([20, 30, 30, 30, 30, 20]); // prettier-ignore
  });

  it('end at the ends of the ranges, also where what is wanted lies beyond them', () => {
    const ends = (weaker: number, end: number): readonly number[] => {
      const points = reach.map((row) => row.map((a, h) => (h % 5 === 0 ? a / weaker : a)));
      const lasts = [end, 60, 60, 60, 60, end];
      const came = settled({ reach: points, now, to: [10, 30, 30, 30, 30, 10], last: lasts });
      return [came[0] as number, came[5] as number];
    };
    expect(ends(4, 60)).toEqual([0, 0]);
    expect(ends(4.4, 60)).toEqual([0, 0]);
    expect(ends(1, 20)).toEqual([20, 20]);
    expect(ends(1, 18)).toEqual([18, 18]);
  });

  it('move no head that gains nothing by it', () => {
    // a seventh head lights nothing and has two settings
    const given = { reach: reach.map((row) => [...row, 0]), last: [...last, 1], now: [...now, 0] };
    expect(settled({ ...given, to: [24.5, 30, 30, 30, 30, 15.5, 0.5] })).toEqual([20, 30, 30, 30, 30, 20, 0]);
    expect(settled({ ...given, to: [32.5, 30, 30, 30, 30, 20, 0.5] })).toEqual([20, 30, 30, 30, 30, 20, 0]);
  });
});

describe('the search over all settings', () => {
  it('comes to within 0.005 stop of the best of all, from wherever the powers lie', () => {
    for (const seed of caseNumbers(40)) {
      const next = random(seed);
      const reach = [0, 1, 2].map(() => [next(), next(), next()]);
      const last = [24, 24, 24];
      const marks = Array.from({ length: 25 }, (_, k) => k);
      const light = (row: readonly number[], way: readonly number[]): number =>
        row.reduce((all, a, h) => all + a * down(way[h] as number), 0);
      // just what is wanted at one setting of all
      const wanted = [0, 1, 2].map(() => Math.floor(25 * next()));
      const scaled = reach.map((row) => row.map((a) => a / light(row, wanted)));
      const to = seed % 2 ? [0, 24, 0] : [24, 0, 24];
      const came = settled({ reach: scaled, now: [12, 12, 12], to, last });
      expect(Math.max(...scaled.map((row) => Math.abs(Math.log2(light(row, came))))), `case ${seed}`).toBeLessThanOrEqual(0.005); // prettier-ignore
      expect(came.every((k) => marks.includes(k))).toBe(true);
    }
  });

  it('lights no head that is off, though that would be better', () => {
    // half a step too much or too little without it
    expect(settled({ reach: [[down(-10.5), down(-5)]], now: [0, 0], to: [10, Infinity], last: [30, 60] })[1]).toBe(Infinity); // prettier-ignore
  });
});

describe('of settings that are as good as the best', () => {
  it('those with the smallest largest change are kept, though others have the smaller sum', () => {
    // light by weight·2^0.5 + 1 from the first alone, five steps up, is that of both, four steps up
    const weight = (2 ** 0.4 - 1) / (2 ** 0.5 - 2 ** 0.4);
    const whole = (weight + 1) * 2 ** 0.4 * down(20);
    expect(settled({ reach: [[weight / whole, 1 / whole]], now: [20, 20], to: [16, 16], last: [30, 30] })).toEqual([16, 16]); // prettier-ignore
    expect(settled({ reach: [[weight / whole, 1 / whole]], now: [20, 20], to: [15, 20], last: [30, 30] })).toEqual([16, 16]); // prettier-ignore
  });

  it('of those, the one with the smallest sum', () => {
    // the first must go ten steps; the second lights nothing
    expect(settled({ reach: [[down(-10), 0]], now: [20, 15], to: [10, 8], last: [30, 30] })).toEqual([
      10, 15,
    ]);
  });

  it('of those that change as much, the one that misses by less', () => {
    for (const [off, mark] of [
      [-0.01, 10],
      [0.01, 11],
    ] as const)
      // prettier-ignore
      for (const now of [10.5, 20.5, 0.5, 33.5]) {
        const by = now - 10.5;
        expect(settled({ reach: [[down(-now - off)]], now: [now], to: [now], last: [60] })).toEqual([mark + by]);
      }
  });
});
