import { Decimal } from 'decimal.js';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../full';
import { dialChange } from '../../src/exposure/distance/dialChange';
import { headSetting } from '../../src/exposure/distance/headSetting';
import { popsForTarget } from '../../src/exposure/pops/pops';
import { stackFrames } from '../../src/exposure/sharpness/stack';
import { stopMark } from '../../src/exposure/stops/stopMark';
import { stopText } from '../../src/exposure/stops/stopText';
import { args, D, decades, log2, reading, stops, two, wide } from './decimal';
import { answerOf, value } from './support';

/**
 * What is no number of its own, but a mark, a text or a count, worked out a second time in decimal arithmetic of 50 digits.
 * A value that lies so near to the middle of two answers that rounding may take either is not drawn.
 */
const NEAR = 1e-9;
const isClear = (x: Decimal): boolean => x.minus(x.round()).abs().greaterThan(NEAR);
const half = new Decimal(0.5);

/** States that a function of the arguments drawn answers just what is worked out here. */
function says<A extends unknown[], T>(
  title: string,
  draw: fc.Arbitrary<A>,
  run: (...drawn: A) => T,
  wanted: (...drawn: A) => T,
): void {
  it(title, () =>
    fc.assert(
      fc.property(draw, (drawn) => {
        expect(run(...drawn)).toEqual(wanted(...drawn));
      }),
      trials(2025, 120),
    ),
  );
}

describe('marks', () => {
  /** Figures on rings and displays a third or a whole stop apart, as the trade writes them (common practice, no source). */
  const THIRDS = [
    1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10, 11, 13, 14, 16, 18, 20, 22,
    25, 29, 32, 36, 40, 45, 51, 57, 64,
  ]; // prettier-ignore
  const SECONDS = [
    '1/1000',
    '1/500',
    '1/250',
    '1/125',
    '1/60',
    '1/30',
    '1/15',
    '1/8',
    '1/4',
    '1/2',
    '1',
    '2',
  ];
  const FIRST_SECOND = -10;
  const ISO = [25, 50, 100, 200, 400, 800, 1600, 3200, 6400];
  const FIRST_ISO = -2;
  /** Steps from f/1 of a value between two ends of the list, and not in the middle between two of its figures. */
  const between = (least: number, most: number): fc.Arbitrary<number> =>
    fc.double({ min: least, max: most, noNaN: true }).filter((x) => isClear(D(x).plus(half)));

  says(
    'nearest to an aperture: round(6·log2 N) thirds of a stop from f/1',
    args(between(0, THIRDS.length - 1)),
    (thirds) => value(stopMark(2 ** (thirds / 6))),
    (thirds) => THIRDS[D(thirds).plus(half).floor().toNumber()] as number,
  );
  const apart = between(0.5, THIRDS.length - 1.5).filter((x) => isClear(D(x)));
  says(
    'next above an aperture, and next below it',
    args(apart, fc.constantFrom('up' as const, 'down' as const)),
    (thirds, way) => value(stopMark(2 ** (thirds / 6), 'aperture', 'third', way)),
    (thirds, way) => THIRDS[(way === 'up' ? D(thirds).ceil() : D(thirds).floor()).toNumber()] as number,
  );
  says(
    'nearest to a time: round(log2 t) stops from a second',
    args(between(0, SECONDS.length - 1)),
    (step) => value(stopMark(2 ** (FIRST_SECOND + step), 'time', 'full')),
    (step) => {
      const [above, below = '1'] = (SECONDS[D(step).plus(half).floor().toNumber()] as string).split('/');
      return Number(above) / Number(below);
    },
  );
  says(
    'nearest to a speed: round(log2(S / 100)) stops from ISO 100',
    args(between(0, ISO.length - 1)),
    (step) => value(stopMark(100 * 2 ** (FIRST_ISO + step), 'iso', 'full')),
    (step) => ISO[D(step).plus(half).floor().toNumber()] as number,
  );
  says(
    'said in tenths: the full stop at or below round(20·log2 N) tenths, and what is over',
    args(between(0, 119)),
    (tenths) => value(stopText(2 ** (tenths / 20))),
    (tenths) => {
      const all = D(tenths).plus(half).floor().toNumber();
      const over = all % 10;
      return `f/${THIRDS[3 * ((all - over) / 10)]}${over === 0 ? '' : ` +0.${over}`}`;
    },
  );
});

describe('texts of a head', () => {
  const step = new Decimal('0.1');
  /** Tenths of a stop as a display has them. */
  const tenths = (count: number): string => step.times(count).toFixed(count % 10 === 0 ? 0 : 1);
  /** Steps down from full power, and how far off the energy lies: less than half a step. */
  const down = (most: number): fc.Arbitrary<[number, number, number]> =>
    args(
      decades(2, 4),
      fc.integer({ min: 0, max: most }),
      fc.double({ min: -0.499, max: 0.499, noNaN: true }),
    );
  const energy = (most: number, k: number, off: number): number =>
    two(step.times(k + (k === 0 ? Math.abs(off) : off)).neg())
      .times(most)
      .toNumber();

  says(
    'in stops: top − k / 10',
    args(down(99), fc.integer({ min: 0, max: 10 })),
    ([most, k, off], top) => value(headSetting(energy(most, k, off), most, 'stops', top, 0.1)),
    ([, k], top) => tenths(10 * top - k).replace('-', '−'),
  );
  says(
    'in fractions: the nearest at or above, and the tenths off it',
    args(down(99)),
    ([most, k, off]) => value(headSetting(energy(most, k, off), most, 'fraction', undefined, 0.1)),
    ([, k]) => `1/${2 ** Math.floor(k / 10)}${k % 10 === 0 ? '' : ` −0.${k % 10}`}`,
  );
  says(
    // down to 10 Ws a whole number tells one setting from the next
    'in Ws: round(most·2^(−k / 10))',
    args(down(30).filter(([most, k]) => isClear(two(step.times(k).neg()).times(D(most)).plus(half)))),
    ([most, k, off]) => value(headSetting(energy(most, k, off), most, 'energy', undefined, 0.1)),
    ([most, k]) => `${two(step.times(k).neg()).times(D(most)).plus(half).floor().toFixed()} Ws`,
  );
  says(
    // down to a quarter of full power a whole per cent tells one setting from the next
    'in per cent: round(100·2^(−k / 10))',
    args(down(20)),
    ([most, k, off]) => value(headSetting(energy(most, k, off), most, 'percent', undefined, 0.1)),
    ([, k]) => `${two(step.times(k).neg()).times(100).plus(half).floor().toFixed()} %`,
  );
  const change = args(wide, stops);
  const turned = (stopsMore: Decimal, perStop: number): Decimal =>
    stopsMore.times(perStop).plus(half).floor();
  const sign = (x: Decimal): string => (x.isNegative() ? '−' : '+');
  const moreBy = (power: number, more: number): number => two(more).times(power).toNumber();
  const drawnFor = (perStop: number): fc.Arbitrary<[number, number]> =>
    change.filter(([, more]) => isClear(D(more).times(perStop).plus(half)));
  says(
    'to turn it by: round(10·log2(new / old)) tenths',
    drawnFor(10),
    (power, more) => dialChange(power, moreBy(power, more)),
    (_, more) => {
      const count = turned(D(more), 10);
      return count.isZero() ? '0' : `${sign(count)}${tenths(count.abs().toNumber())}`;
    },
  );
  says(
    'to turn it by: round(3·log2(new / old)) thirds, as a mixed number',
    drawnFor(3),
    (power, more) => dialChange(power, moreBy(power, more), 1 / 3),
    (_, more) => {
      const count = turned(D(more), 3);
      if (count.isZero()) return '0';
      const [whole, over] = [count.abs().div(3).floor(), count.abs().mod(3)];
      return `${sign(count)}${[whole.isZero() ? '' : whole.toFixed(), over.isZero() ? '' : `${over.toFixed()}/3`].filter(Boolean).join(' ')}`;
    },
  );
});

describe('counts', () => {
  const needed = (n: number, target: number, loss: number, tolerance: number): Decimal =>
    two(log2(D(target).div(n)).times(2).plus(loss).minus(tolerance));
  const job = args(
    reading,
    fc.double({ min: 0, max: 5, noNaN: true }),
    fc.double({ min: 0, max: 6, noNaN: true }),
    fc.double({ min: 0.001, max: 0.5, noNaN: true }),
  ).map(([n, up, loss, tolerance]): [number, number, number, number] => [n, n * 2 ** up, loss, tolerance]);
  says(
    'of pops: the smallest n with log2 n ≥ 2·log2(target / reading) + loss − tolerance',
    job.filter((drawn) => isClear(needed(...drawn))),
    (n, target, loss, tolerance) =>
      value(popsForTarget(n, target, loss, undefined, undefined, undefined, tolerance)),
    (...drawn) => Decimal.max(1, needed(...drawn).ceil()).toNumber(),
  );
  /** Steps in a depth: m² / (2·N·c·(1 + m / p)·(1 − overlap)) of it. */
  const steps = (d: number, n: number, m: number, c: number, overlap: number, p: number): Decimal =>
    D(d)
      .times(D(m).pow(2))
      .div(D(n).times(c).times(2).times(D(m).div(p).plus(1)).times(D(1).minus(overlap)));
  const stack = args(
    decades(-1, 2),
    decades(0.3, 1.5),
    decades(-2, 1),
    decades(-2.5, -1),
    fc.double({ min: 0, max: 0.9, noNaN: true }),
    decades(-1, 1),
  );
  says(
    'of frames: ⌈depth / (depth of field·(1 − overlap))⌉ + 1',
    stack.filter((drawn) => isClear(steps(...drawn)) && steps(...drawn).lessThan(1e6)),
    (...drawn) => value(stackFrames(...drawn)),
    (...drawn) =>
      steps(...drawn)
        .ceil()
        .toNumber() + 1,
  );
});

describe('texts of times and lengths', () => {
  /** A number with so few decimals that its text is the number, and not three of them, which may part thousands. */
  const figure = fc.integer({ min: 1, max: 99_999 }).map((hundredths) => new Decimal(hundredths).div(100));
  function nearly(came: unknown, wanted: Decimal): void {
    expect(
      D(came as number)
        .minus(wanted)
        .abs()
        .div(wanted)
        .toNumber(),
    ).toBeLessThan(1e-15);
  }
  const reads = (id: string, units: readonly (readonly [string, Decimal])[]): void =>
    it(`in ${units.map(([unit]) => unit).join(', ')}`, () =>
      fc.assert(
        fc.property(figure, fc.constantFrom(...units), (x, [unit, size]) => {
          nearly(answerOf(id, `${x.toFixed()} ${unit}`), x.times(size));
        }),
        trials(2026, 120),
      ));

  // the SI's prefixes and minute; the yard of 0.9144 m (international agreement of 1959) has 3 ft of 12 in
  const foot = new Decimal('0.9144').div(3);
  reads('SECONDS', [
    ['s', new Decimal(1)],
    ['ms', new Decimal('1e-3')],
    ['µs', new Decimal('1e-6')],
    ['min', new Decimal(60)],
  ]);
  reads('METRES', [
    ['m', new Decimal(1)],
    ['cm', new Decimal('1e-2')],
    ['mm', new Decimal('1e-3')],
    ['ft', foot],
    ['in', foot.div(12)],
  ]);
  it('of a shutter: 1/n is 2^−k s for the k nearest to log2 n, where n is a full stop’s figure', () => {
    for (const [n, k] of [
      [2, 1],
      [4, 2],
      [8, 3],
      [15, 4],
      [30, 5],
      [60, 6],
      [125, 7],
      [250, 8],
      [500, 9],
      [1000, 10],
    ] as const)
      // prettier-ignore
      expect(answerOf('SECONDS', `1/${n}`, true)).toBe(1 / 2 ** k);
  });
});
