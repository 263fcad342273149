import { Decimal } from 'decimal.js';
import * as fc from 'fast-check';
import { describe } from 'vitest';
import { kelvinShift, miredShift } from '../../src/exposure/colour/mired';
import { fallOff } from '../../src/exposure/distance/fallOff';
import { headPower } from '../../src/exposure/distance/headPower';
import { powerForDistance, powerForReading } from '../../src/exposure/distance/power';
import { distanceForReading, readingForPower } from '../../src/exposure/distance/reading';
import { lightEvenness } from '../../src/exposure/light/lightEvenness';
import { lightMinus } from '../../src/exposure/light/lightMinus';
import { lightMinusRange } from '../../src/exposure/light/lightMinusRange';
import { lightRatio } from '../../src/exposure/light/lightRatio';
import { lightShare } from '../../src/exposure/light/lightShare';
import { lightSum } from '../../src/exposure/light/lightSum';
import { lightTargets } from '../../src/exposure/light/lightTargets';
import { lightMean, lightRepeat, lightSpread } from '../../src/exposure/light/repeats';
import { bellowsLoss, magnificationLoss } from '../../src/exposure/loss/bellowsLoss';
import { filterLoss } from '../../src/exposure/loss/filterLoss';
import { meterTarget } from '../../src/exposure/loss/meterTarget';
import { exposureValue } from '../../src/exposure/metering/exposureValue';
import { guideNumber, guideReading } from '../../src/exposure/metering/guideNumber';
import { apertureForLuxSeconds, luxSeconds } from '../../src/exposure/metering/luxSeconds';
import { fallSpeed, fallTime } from '../../src/exposure/motion/fall';
import { flashLevel } from '../../src/exposure/duration/flashLevel';
import { reciprocityTime } from '../../src/exposure/duration/reciprocity';
import { flashClip, flashShare, shutterForFlash } from '../../src/exposure/duration/shutter';
import { hireCost } from '../../src/exposure/hire/hireCost';
import { freezeBlur, freezeTime } from '../../src/exposure/motion/freeze';
import { freezeDuration } from '../../src/exposure/motion/freezeDuration';
import { freezePower } from '../../src/exposure/motion/freezePower';
import { spinSpeed } from '../../src/exposure/motion/spinSpeed';
import { creepTime } from '../../src/exposure/pops/creepTime';
import { popsMiss, popsReading } from '../../src/exposure/pops/pops';
import { popsPlan, popsPlanTime } from '../../src/exposure/pops/plan/popsPlan';
import { popsBuild } from '../../src/exposure/pops/popsBuild';
import { popsTime } from '../../src/exposure/pops/popsTime';
import { blurCircle } from '../../src/exposure/sharpness/blurCircle';
import { apertureForDepth, depth, depthFar, depthNear, hyperfocal } from '../../src/exposure/sharpness/depth';
import {
  airyDisc,
  bestAperture,
  spreadAperture,
  workingAperture,
} from '../../src/exposure/sharpness/diffraction';
import { drawFor, fieldMagnification, magnification } from '../../src/exposure/sharpness/magnification';
import { stackStep } from '../../src/exposure/sharpness/stack';
import { hingeForTilt, tiltForHinge } from '../../src/exposure/sharpness/tilt';
import { SCALES } from '../../src/exposure/stops/scales';
import { stopDiff } from '../../src/exposure/stops/stopDiff';
import { stopShift } from '../../src/exposure/stops/stopShift';
import { withTenths } from '../../src/exposure/stops/withTenths';
import { mainsCurrent } from '../../src/exposure/supply/mainsCurrent';
import {
  args,
  D,
  decades,
  log2,
  metres,
  oracle,
  pair,
  PI,
  reading,
  readings,
  stops,
  sum,
  two,
  type Wanted,
  wide,
} from './decimal';
import { value } from './support';

describe('stops', () => {
  for (const scale of SCALES) {
    const per = scale === 'aperture' ? 2 : 1;
    oracle(
      `between two values of ${scale} are ${per}·log2(to / from)`,
      pair.map(([a, b]): [number, number] => [a, b]),
      (a, b) => stopDiff(a, b, scale),
      (a, b) => ({ stops: log2(D(b).div(D(a))).times(per) }),
    );
    oracle(
      `shift a value of ${scale} by 2^(stops / ${per})`,
      args(wide, stops),
      (a, s) => stopShift(a, s, scale),
      (a, s) => two(D(s).div(per)).times(a),
    );
  }
  oracle(
    'in tenths raise an aperture by 2^(tenths / 20)',
    args(reading, fc.double({ min: 0, max: 9.99, noNaN: true })),
    (n, t) => withTenths(n, t),
    (n, t) => two(D(t).div(20)).times(n),
  );
});

describe('light', () => {
  const square = (n: number): Decimal => D(n).pow(2);
  oracle(
    'adds up to √ΣN²',
    args(readings),
    (list) => lightSum(list),
    (list) => sum(list.map(square)).sqrt(),
  );
  oracle(
    'less a part is √(total² − part²), also where they are nearly equal',
    pair
      .map(([a, b]): [number, number] => [Math.max(a, b), Math.min(a, b)])
      .filter(([total, part]) => part < total * (1 - 2e-9)),
    (total, part) => lightMinus(total, part),
    (total, part) => square(total).minus(square(part)).sqrt(),
  );
  for (const [name, which] of [
    ['least', 0],
    ['likely', 1],
    ['most', 2],
  ] as const)
    oracle(
      `less a part is ${name} √(total²·2^(±step / 2) − part²·2^(∓step / 2)), against its condition`,
      args(
        reading,
        fc.double({ min: 1, max: 12, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
      ),
      (part, over, step) => lightMinusRange(part * 2 ** (over / 2), part, step)[which],
      (part, over, step) => {
        const off = two(
          D(step)
            .times(which - 1)
            .div(2),
        );
        const [total, less] = [square(part * 2 ** (over / 2)).times(off), square(part).div(off)];
        const left = total.minus(less);
        return { of: left.sqrt(), relative: 1e-14 * Math.max(1, total.div(left).toNumber()) };
      },
    );
  oracle(
    'is shared as N² / ΣN²',
    args(readings, fc.nat()),
    (list, i) => value(lightShare(list))[i % list.length] as number,
    (list, i) => square(list[i % list.length] as number).div(sum(list.map(square))),
  );
  oracle(
    'of key and fill stands as (K² + F²) / F²',
    args(reading, reading),
    (k, f) => lightRatio(k, f),
    (k, f) => square(k).plus(square(f)).div(square(f)),
  );
  oracle(
    'of key against fill stands as K² / F²',
    args(reading, reading),
    (k, f) => lightRatio(k, f, 'each'),
    (k, f) => square(k).div(square(f)),
  );
  oracle(
    'is aimed at T·√(2^s / Σ2^s)',
    args(reading, fc.array(stops, { minLength: 1, maxLength: 8 }), fc.nat()),
    (t, list, i) => value(lightTargets(t, list))[i % list.length] as number,
    (t, list, i) =>
      two(list[i % list.length] as number)
        .div(sum(list.map((s) => two(s))))
        .sqrt()
        .times(t),
  );
  const near = fc
    .tuple(reading, fc.array(fc.double({ min: -0.3, max: 0.3, noNaN: true }), { minLength: 2, maxLength: 9 }))
    .map(([n, spread]) => spread.map((s) => n * 2 ** s));
  const many = fc.oneof(fc.array(reading, { minLength: 2, maxLength: 9 }), near);
  const inStops = (list: readonly number[]): Decimal[] => list.map((n) => log2(n).times(2));
  oracle(
    'that repeats has the mean 2^(mean of log2 N)',
    args(many),
    (list) => lightMean(list),
    (list) => two(sum(inStops(list)).div(2 * list.length)),
  );
  oracle(
    'that repeats spreads over 2·log2(most / least)',
    args(many),
    (list) => lightSpread(list),
    (list) => ({ stops: Decimal.max(...inStops(list)).minus(Decimal.min(...inStops(list))) }),
  );
  oracle(
    'that repeats deviates by √(Σ(s − mean)² / (n − 1))',
    args(many),
    (list) => lightRepeat(list),
    (list) => {
      const mean = sum(inStops(list)).div(list.length);
      const squares = inStops(list).map((s) => s.minus(mean).pow(2));
      return {
        stops: sum(squares)
          .div(list.length - 1)
          .sqrt(),
      };
    },
  );
  for (const scale of ['aperture', 'lux', 'raw'] as const)
    oracle(
      `of a field in ${scale} is uneven by 100·(most − least) / most`,
      args(many),
      (list) => lightEvenness(list, scale),
      (list) => {
        const values = list.map((n) => (scale === 'aperture' ? square(n) : D(n)));
        const most = Decimal.max(...values);
        return most
          .minus(Decimal.min(...values))
          .div(most)
          .times(100);
      },
    );
});

describe('metering', () => {
  oracle(
    'exposure value is log2(N² / t) − log2(S / 100)',
    args(reading, wide, wide),
    (n, t, s) => exposureValue(n, t, s),
    (n, t, s) => ({ stops: log2(D(n).pow(2).div(t)).minus(log2(D(s).div(100))) }),
  );
  oracle(
    'lux seconds are C·N² / S',
    args(reading, wide, wide),
    (n, s, c) => luxSeconds(n, s, c),
    (n, s, c) => D(c).times(n).times(n).div(s),
  );
  oracle(
    'the reading for lux seconds is √(H·S / C)',
    args(wide, wide, wide),
    (h, s, c) => apertureForLuxSeconds(h, s, c),
    (h, s, c) => D(h).times(s).div(c).sqrt(),
  );
  oracle(
    'a guide number is N·d·√(quoted / S)',
    args(reading, metres, wide, wide),
    (n, d, s, q) => guideNumber(n, d, s, q),
    (n, d, s, q) => D(n).times(d).times(D(q).div(s).sqrt()),
  );
  oracle(
    'the reading from a guide number is (G / d)·√(S / quoted)·√share·2^(−loss / 2)',
    args(wide, metres, wide, wide, fc.double({ min: 0.001, max: 1, noNaN: true }), stops),
    (g, d, s, q, share, loss) => guideReading(g, d, s, q, share, loss),
    (g, d, s, q, share, loss) =>
      D(g)
        .div(d)
        .times(D(s).div(q).sqrt())
        .times(D(share).sqrt())
        .times(two(D(loss).div(-2))),
  );
});

const closeUp = (m: Decimal.Value, p: number): Decimal => log2(D(m).div(p).plus(1)).times(2);
const atDraw = (focal: number, draw: number, p: number): Decimal =>
  closeUp(D(draw).div(D(focal)).minus(1), p);
/** Focal length, draw and pupil magnification: draws from the focal length to ten times as much. */
const bellows = fc
  .tuple(decades(1, 3), fc.double({ min: 1, max: 10, noNaN: true }), decades(-0.5, 0.5))
  .map(([focal, times, p]): [number, number, number] => [focal, focal * times, p]);

describe('light lost', () => {
  oracle(
    'at a magnification is 2·log2(1 + m / p)',
    args(decades(-9, 2), decades(-1, 1)),
    (m, p) => magnificationLoss(m, p),
    (m, p) => ({ stops: closeUp(m, p) }),
  );
  oracle(
    'at a draw is that of m = draw / focal − 1',
    bellows,
    (focal, draw, p) => bellowsLoss(focal, draw, p),
    (focal, draw, p) => ({ stops: atDraw(focal, draw, p) }),
  );
  oracle(
    'in a filter is log2 of its factor',
    args(decades(0, 6)),
    (f) => filterLoss(f),
    (f) => ({ stops: log2(f) }),
  );
  oracle(
    'in a filter is its density over log10 2',
    args(fc.double({ min: 0, max: 6, noNaN: true })),
    (d) => filterLoss(d, 'density'),
    (d) => ({ stops: D(d).div(Decimal.log10(2)) }),
  );
  oracle(
    'in a filter is minus log2 of its transmission',
    args(decades(-6, 0)),
    (t) => filterLoss(t, 'transmission'),
    (t) => ({ stops: log2(t).neg() }),
  );
  oracle(
    'is made up by a reading of N·2^((loss + bellows loss) / 2) / √pops',
    args(reading, stops, bellows, fc.integer({ min: 1, max: 999 })),
    (n, loss, [focal, draw, p], pops) => meterTarget(n, loss, focal, draw, p, pops),
    (n, loss, [focal, draw, p], pops) =>
      two(atDraw(focal, draw, p).plus(loss).div(2))
        .times(n)
        .div(D(pops).sqrt()),
  );
});

/** Light of a rectangle: configuration factor of four corners of half the sides, each as it is printed. */
function corner(a: Decimal, b: Decimal): Decimal {
  const one = (x: Decimal, y: Decimal): Decimal => {
    const root = x.pow(2).plus(1).sqrt();
    return x.div(root).times(Decimal.atan(y.div(root)));
  };
  return one(a, b).plus(one(b, a)).div(PI.times(2));
}
function light(d: number, width?: number, height?: number): Decimal {
  if (width === undefined) return D(d).pow(-2);
  if (height === undefined) return D(1).div(D(d).pow(2).plus(D(width).div(2).pow(2)));
  return corner(D(width).div(2).div(d), D(height).div(2).div(d));
}
const lost = (near: number, far: number, width?: number, height?: number): Decimal =>
  log2(light(near, width, height).div(light(far, width, height)));

describe('distance and power', () => {
  const fronts: readonly [string, (w: number, h: number) => [number?, number?]][] = [
    ['a point', () => []],
    ['a round front', (w) => [w]],
    ['a rectangle', (w, h) => [w, h]],
  ];
  for (const [name, size] of fronts) {
    oracle(
      `${name} falls off by the quotient of its light`,
      args(metres, metres, metres, metres),
      (near, far, w, h) => fallOff(near, far, ...size(w, h)),
      (near, far, w, h) => ({ stops: lost(near, far, ...size(w, h)) }),
    );
    oracle(
      `the energy for another distance from ${name} makes that up, and the stops`,
      args(wide, metres, metres, stops, metres, metres),
      (p, d, e, s, w, h) => powerForDistance(p, d, e, s, undefined, undefined, undefined, ...size(w, h)),
      (p, d, e, s, w, h) => two(lost(d, e, ...size(w, h)).plus(s)).times(p),
    );
  }
  const down = fc.double({ min: 0, max: 12, noNaN: true });
  oracle(
    'the energy of stops on a display is most·2^(shown − top)',
    args(wide, down, fc.double({ min: -5, max: 20, noNaN: true })),
    (most, below, top) => headPower(top - below, most, 'stops', top),
    (most, below, top) => two(D(top - below).minus(D(top))).times(most),
  );
  oracle(
    'the energy of a setting is most·2^(−k·step), whatever a display made of it within 0.05 stop',
    args(
      wide,
      fc.integer({ min: 0, max: 60 }),
      fc.constantFrom(0.1, 0.25, 0.5, 1),
      fc.double({ min: -0.049, max: 0.049 }),
    ),
    (most, k, step, off) => headPower(2 ** (off - k * step), most, 'fraction', undefined, step),
    (most, k, step) => two(D(step).times(-k)).times(most),
  );
  oracle(
    'the energy for another reading is P·(N₂ / N₁)²·2^loss / pops',
    args(wide, reading, reading, stops, fc.integer({ min: 1, max: 999 })),
    (p, n, t, loss, pops) => powerForReading(p, n, t, undefined, undefined, undefined, loss, pops),
    (p, n, t, loss, pops) => D(t).div(n).pow(2).times(two(loss)).times(p).div(pops),
  );
  oracle(
    'the reading after a change is N·√(n·P₂ / P₁)·(d₁ / d₂)·2^(−loss / 2)',
    args(reading, wide, wide, metres, metres, fc.integer({ min: 1, max: 999 }), stops),
    (n, p, q, d, e, pops, loss) => readingForPower(n, p, q, d, e, loss, pops),
    (n, p, q, d, e, pops, loss) =>
      D(q)
        .times(pops)
        .div(p)
        .sqrt()
        .times(D(d).div(e))
        .times(two(D(loss).div(-2)))
        .times(n),
  );
  oracle(
    'the distance for another reading of a point is d·N₁ / N₂',
    args(metres, reading, reading),
    (d, n, t) => distanceForReading(d, n, t),
    (d, n, t) => D(d).times(n).div(t),
  );
  oracle(
    // Near contact the two terms cancel: the error may grow by what they are larger than their difference.
    'the distance for another reading of a round front is √((d² + r²)·(N₁ / N₂)² − r²), measured against its condition',
    args(metres, fc.double({ min: 0.3, max: 1, noNaN: true }), metres),
    (d, less, w) => distanceForReading(d, 8, 8 * less, w),
    (d, less, w) => {
      const change = D(8)
        .div(D(8 * less))
        .pow(2);
      const radius = D(w).div(2).pow(2);
      const whole = D(d).pow(2).plus(radius).times(change);
      const square = whole.minus(radius);
      return { of: square.sqrt(), relative: 1e-14 * Math.max(1, whole.div(square).toNumber()) };
    },
  );
});

describe('pops', () => {
  const count = fc.integer({ min: 1, max: 9999 });
  oracle(
    'read N·√n·2^(−(loss + bellows loss) / 2)',
    args(reading, count, stops, bellows),
    (n, pops, loss, [focal, draw, p]) => popsReading(n, pops, loss, focal, draw, p),
    (n, pops, loss, [focal, draw, p]) =>
      two(atDraw(focal, draw, p).plus(loss).div(-2))
        .times(D(pops).sqrt())
        .times(n),
  );
  oracle(
    'miss by log2 n − (2·log2(target / reading) + loss + bellows loss), made of three rounded parts',
    args(reading, reading, count, stops, bellows),
    (n, t, pops, loss, [focal, draw, p]) => popsMiss(n, t, pops, loss, focal, draw, p),
    (n, t, pops, loss, [focal, draw, p]) => ({
      stops: log2(pops)
        .minus(log2(D(t).div(n)).times(2))
        .minus(loss)
        .minus(atDraw(focal, draw, p)),
      roundings: 2,
    }),
  );
  oracle(
    'of several heads build √(Σ nN² + Nₐ²·T / t)·2^(−loss / 2)',
    args(fc.array(args(reading, count), { minLength: 1, maxLength: 6 }), reading, wide, wide, stops),
    (heads, ambient, t, open, loss) =>
      popsBuild(
        heads.map((h) => h[0]),
        heads.map((h) => h[1]),
        ambient,
        t,
        open,
        loss,
      ),
    (heads, ambient, t, open, loss) =>
      sum(heads.map(([n, pops]) => D(n).pow(2).times(pops)))
        .plus(D(ambient).pow(2).times(open).div(t))
        .sqrt()
        .times(two(D(loss).div(-2))),
  );
  oracle(
    'take n·(recycle + pause), or one wait less while the shutter is open',
    args(count, wide, wide, fc.constantFrom('ready' as const, 'open' as const)),
    (n, recycle, pause, basis) => popsTime(n, recycle, pause, basis),
    (n, recycle, pause, basis) =>
      D(recycle)
        .plus(pause)
        .times(basis === 'open' ? n - 1 : n),
  );
  /** One head without a dial that reaches its target in so many pops. */
  const planned = (reads: number, pops: number, loss: number, recycle: number, pause: number) => [
    [reads], [400], [reads * Math.sqrt(pops) * 2 ** (-loss / 2)], [400], [400], [[recycle, undefined]], loss, [0.1], 999, pause, 0, undefined, undefined,
  ] as const; // prettier-ignore
  const fewer = fc.integer({ min: 1, max: 999 });
  oracle(
    'of one fixed head are planned as those that read N·√n·2^(−loss / 2)',
    args(reading, fewer, stops),
    (n, pops, loss) => value(popsPlan(...planned(n, pops, loss, 1, 0))).reading,
    (n, pops, loss) => two(D(loss).div(-2)).times(D(pops).sqrt()).times(n),
  );
  oracle(
    'of one fixed head take n times the longer of recycling and pause, or one wait less while the shutter is open',
    args(fewer, wide, wide, fc.constantFrom('ready' as const, 'open' as const)),
    (pops, recycle, pause, basis) => popsPlanTime(...planned(8, pops, 0, recycle, pause), basis),
    (pops, recycle, pause, basis) =>
      Decimal.max(D(recycle), D(pause)).times(basis === 'open' ? pops - 1 : pops),
  );
  oracle(
    'leave t·(N / Nₐ)²·(2^limit − 1) until ambient light shows',
    args(reading, reading, wide, decades(-9, 1)),
    (n, a, t, limit) => creepTime(n, a, t, limit),
    (n, a, t, limit) => D(n).div(a).pow(2).times(t).times(two(limit).minus(1)),
  );
});

describe('motion', () => {
  const level = fc.double({ min: 0.001, max: 0.999, noNaN: true });
  const ln = (x: number): Decimal => Decimal.ln(D(x));
  /** A pulse at t0.1 for its time at a level: ln 10 / ln(1 / level). */
  const toTenth = (l: number): Decimal => ln(0.1).div(ln(l));
  oracle(
    'a duration at another level is t·ln(1 / to) / ln(1 / from)',
    args(wide, level, level),
    (t, a, b) => flashLevel(t, a, b),
    (t, a, b) => ln(b).div(ln(a)).times(t),
  );
  oracle(
    'the smear on the subject is v·t, in mm',
    args(wide, wide, level),
    (v, t, l) => freezeBlur(v, t, undefined, undefined, l),
    (v, t, l) => toTenth(l).times(v).times(t).times(1000),
  );
  oracle(
    'the smear in pixels is v·t·m over the pitch',
    args(wide, wide, metres, metres, level),
    (v, t, m, pitch, l) => freezeBlur(v, t, m, pitch, l),
    (v, t, m, pitch, l) => toTenth(l).times(v).times(t).times(m).times(1e6).div(pitch),
  );
  oracle(
    'the duration that keeps a smear is smear / (v·m), turned to the level',
    args(wide, wide, metres, metres, level),
    (v, blur, m, pitch, l) => freezeTime(v, blur, m, pitch, l),
    (v, blur, m, pitch, l) => D(blur).times(pitch).div(D(v).times(m).times(1e6)).div(toTenth(l)),
  );
  /** Energy and duration of the lower row, how many times as much the upper one has, and where between them. */
  const timesMore = fc.double({ min: 1.1, max: 50, noNaN: true });
  const twoRows = args(wide, timesMore, wide, timesMore, level);
  oracle(
    'a limit at another level than the table is turned into it',
    args(wide, timesMore, wide, timesMore, level, level, level),
    (p, pTimes, t, tTimes, where, a, b) =>
      freezePower([p, p * pTimes], [t, t * tTimes], (t * tTimes ** where * Math.log(b)) / Math.log(a), a, b),
    (p, pTimes, t, tTimes, where, a, b) => {
      const limit = D((t * tTimes ** where * Math.log(b)) / Math.log(a)).times(
        Decimal.ln(D(a)).div(Decimal.ln(D(b))),
      );
      const part = Decimal.ln(limit.div(t)).div(Decimal.ln(D(t * tTimes).div(t)));
      return D(p * pTimes)
        .div(p)
        .pow(part)
        .times(p);
    },
  );
  oracle(
    'the energy that keeps a limit lies on the straight line of the logarithms between two rows',
    twoRows,
    (p, pTimes, t, tTimes, where) => freezePower([p, p * pTimes], [t, t * tTimes], t * tTimes ** where),
    (p, pTimes, t, tTimes, where) => {
      const [p1, t1, limit] = [D(p * pTimes), D(t * tTimes), D(t * tTimes ** where)];
      const part = Decimal.ln(limit.div(t)).div(Decimal.ln(t1.div(t)));
      return p1.div(p).pow(part).times(p);
    },
  );
  oracle(
    'the duration at an energy lies on the straight line of the logarithms between two rows',
    twoRows,
    (p, pTimes, t, tTimes, where) => freezeDuration([p, p * pTimes], [t, t * tTimes], p * pTimes ** where),
    (p, pTimes, t, tTimes, where) => {
      const [p1, t1, power] = [D(p * pTimes), D(t * tTimes), D(p * pTimes ** where)];
      const part = Decimal.ln(power.div(p)).div(Decimal.ln(p1.div(p)));
      return t1.div(t).pow(part).times(t);
    },
  );
  oracle(
    'a fall ends at √(v² + 2·g·h)',
    args(wide, fc.double({ min: 0, max: 1e4, noNaN: true })),
    (h, v) => fallSpeed(h, v),
    (h, v) => D(v).pow(2).plus(D('9.80665').times(2).times(h)).sqrt(),
  );
  oracle(
    'a fall takes (√(v² + 2·g·h) − v) / g',
    args(wide, fc.double({ min: 0, max: 1e4, noNaN: true })),
    (h, v) => fallTime(h, v),
    (h, v) => D(v).pow(2).plus(D('9.80665').times(2).times(h)).sqrt().minus(D(v)).div('9.80665'),
  );
  oracle(
    'a rim runs at π·d·rpm / 60',
    args(wide, wide),
    (d, rpm) => spinSpeed(d, rpm),
    (d, rpm) => PI.times(d).times(rpm).div(60),
  );
});

/** An answer that is a difference: its error may grow by how much larger the parts are than what is left. */
const difference = (of: Decimal, parts: Decimal, left: Decimal): Wanted => ({
  of,
  relative: 1e-14 * Math.max(1, parts.div(left).abs().toNumber()),
});

describe('flash and shutter', () => {
  const level = fc.double({ min: 0.001, max: 0.999, noNaN: true });
  const decay = (t: number, l: number): Decimal => D(t).div(Decimal.ln(D(l)).neg());
  /** A pulse, and an opening of 1e-9 to 700 decay times: at 700 a share of 1e-304 is left to come. */
  const openings = fc
    .tuple(wide, level, decades(-9, Math.log10(700)))
    .map(([t, l, x]): [number, number, number] => [t, l, (t / -Math.log(l)) * x]);
  const left = (t: number, l: number, open: number): Decimal => D(open).div(decay(t, l)).neg().exp();
  /** −log2(1 − x): by its series where 50 digits hold too few of 1 − x. */
  const cut = (x: Decimal): Decimal =>
    x.lessThan(1e-12)
      ? sum([1, 2, 3, 4, 5].map((n) => x.pow(n).div(n))).div(Decimal.ln(2))
      : log2(D(1).minus(x)).neg();
  oracle(
    'the share that falls in an opening is 1 − e^(−open / τ)',
    openings,
    (t, l, open) => flashShare(t, l, open),
    (t, l, open) => D(1).minus(left(t, l, open)),
  );
  oracle(
    'the share after a delay is that of the time which is left',
    args(wide, level, wide, wide),
    (t, l, open, delay) => flashShare(t, l, open, delay),
    (t, l, open, delay) => D(1).minus(left(t, l, Math.max(0, open - delay))),
  );
  oracle(
    // ln(1 − e^(−x)) as ln1p(−e^(−x)) keeps its digits in long openings: no allowance is needed.
    'the loss of an opening is −log2 of the share, also where hardly anything is lost',
    openings,
    (t, l, open) => flashClip(t, l, open),
    (t, l, open) => cut(left(t, l, open)),
  );
  const opening = (t: number, l: number, loss: number, delay: number): Decimal =>
    D(delay).minus(decay(t, l).times(Decimal.ln(D(1).minus(two(D(loss).neg())))));
  oracle(
    'the opening for a loss up to six stops is delay − τ·ln(1 − 2^(−loss))',
    args(wide, level, decades(-6, Math.log10(6)), wide),
    (t, l, loss, delay) => shutterForFlash(t, l, loss, delay),
    opening,
  );
  oracle(
    'the opening for a loss of any size is the same',
    args(wide, level, decades(-6, 2)),
    (t, l, loss) => shutterForFlash(t, l, loss),
    (t, l, loss) => opening(t, l, loss, 0),
  );
  const exponent = fc.double({ min: 1.0001, max: 2.9999, noNaN: true });
  /** By way of the logarithm; exponents keep off whole numbers, where the library would seek a next digit in vain. */
  const raised = (base: Decimal, p: number): Decimal => Decimal.ln(base).times(D(p)).exp();
  oracle(
    'film takes threshold·(time / threshold)^P above the threshold',
    args(wide, fc.double({ min: 1.0001, max: 9999.7, noNaN: true }), exponent),
    (threshold, times, p) => reciprocityTime(threshold * times, p, threshold),
    (threshold, times, p) => raised(D(threshold * times).div(threshold), p).times(threshold),
  );
  oracle(
    'film takes the time itself up to the threshold',
    args(wide, fc.double({ min: 0.001, max: 1, noNaN: true }), exponent),
    (threshold, part, p) => reciprocityTime(threshold * part, p, threshold),
    (threshold, part) => D(threshold * part),
  );
  oracle(
    'film without a threshold takes time^P from a second on',
    args(decades(0, 6), exponent),
    (t, p) => reciprocityTime(t, p, 0),
    (t, p) => raised(D(t), p),
  );
});

describe('magnification', () => {
  const mm = decades(0, 4);
  oracle(
    'from a draw is (v − f) / f, also where they are nearly equal',
    args(mm, decades(-8, 2)),
    (f, m) => magnification(f, f * (1 + m)),
    (f, m) =>
      D(f * (1 + m))
        .minus(D(f))
        .div(f),
  );
  oracle(
    'from a distance is f / (u − f), also where they are nearly equal',
    args(mm, decades(-8, 4)),
    (f, m) => magnification(f, undefined, f * (1 + m)),
    (f, m) => D(f).div(D(f * (1 + m)).minus(D(f))),
  );
  oracle(
    'takes a draw of f·(1 + m) and a distance of f·(1 + 1 / m)',
    args(mm, decades(-6, 4), fc.constantFrom(0, 1)),
    (f, m, which) => value(drawFor(f, m))[which] as number,
    (f, m, which) => D(f).times(D(1).plus(which === 0 ? D(m) : D(1).div(m))),
  );
  oracle(
    'of a field is sensor / field',
    args(wide, wide),
    (field, sensor) => fieldMagnification(field, sensor),
    (field, sensor) => D(sensor).div(field),
  );
  oracle(
    'raises the f-number to N·(1 + m / p)',
    args(reading, wide, decades(-1, 1)),
    (n, m, p) => workingAperture(n, m, p),
    (n, m, p) => D(m).div(p).plus(1).times(n),
  );
});

describe('depth of field', () => {
  const focal = decades(0, 3.5);
  const blur = decades(-3, 0);
  const total = (n: number, m: Decimal.Value, c: number, p: number): Decimal =>
    D(n).times(c).times(2).times(D(m).div(p).plus(1));
  oracle(
    'is 2·N·c·(1 + m / p) / m² deep',
    args(reading, decades(-4, 2), blur, decades(-1, 1)),
    (n, m, c, p) => depth(n, m, c, p),
    (n, m, c, p) => total(n, m, c, p).div(D(m).pow(2)),
  );
  oracle(
    'of a lens is 2·N·c·(1 + m / p) / (m² − (N·c / f)²) deep, against its condition where the far limit runs away',
    args(reading, decades(-8, 3), blur, decades(-1, 1), focal),
    (n, beyond, c, p, f) => depth(n, ((n * c) / f) * (1 + beyond), c, p, f),
    (n, beyond, c, p, f) => {
      const m = D(((n * c) / f) * (1 + beyond)).pow(2);
      const less = m.minus(D(n).times(D(c)).div(D(f)).pow(2));
      return difference(total(n, m.sqrt(), c, p).div(less), m, less);
    },
  );
  oracle(
    'needs the f-number depth·m² / (2·c·(1 + m / p))',
    args(wide, decades(-4, 2), blur, decades(-1, 1)),
    (d, m, c, p) => apertureForDepth(d, m, c, p),
    (d, m, c, p) =>
      D(d)
        .times(D(m).pow(2))
        .div(total(1, m, c, p)),
  );
  const hyper = (f: number, n: number, c: number): Decimal =>
    D(f)
      .pow(2)
      .div(D(n).times(D(c)));
  for (const form of ['exact', 'handbook'] as const)
    oracle(
      `reaches infinity from ${form === 'exact' ? 'f² / (N·c) + f' : 'f² / (N·c)'}`,
      args(focal, reading, blur),
      (f, n, c) => hyperfocal(f, n, c, form),
      (f, n, c) => hyper(f, n, c).plus(form === 'exact' ? D(f) : 0),
    );
  oracle(
    'begins at u·h / (h + u − f), from next to the focal length to far off',
    args(focal, reading, decades(-7, 5), blur),
    (f, n, beyond, c) => depthNear(f, n, f * (1 + beyond), c),
    (f, n, beyond, c) => {
      const [h, u] = [hyper(f, n, c), D(f * (1 + beyond))];
      return u.times(h).div(h.plus(u).minus(D(f)));
    },
  );
  /** Focused short of the hyperfocal distance by a share of it, down to 1e-8. */
  const short = fc.oneof(
    fc.double({ min: 0.01, max: 0.999, noNaN: true }),
    fc.double({ min: -8, max: -2, noNaN: true }).map((e) => 10 ** e),
  );
  oracle(
    'ends at u·h / (h − (u − f)), against its condition just before the hyperfocal distance',
    args(focal, reading, short, blur).map(([f, n, less, c]): [number, number, number, number] => [
      f,
      n,
      f + ((f * f) / (n * c)) * (1 - less),
      c,
    ]),
    (f, n, u, c) => depthFar(f, n, u, c),
    (f, n, u, c) => {
      const h = hyper(f, n, c);
      const rest = h.minus(D(u).minus(D(f)));
      return difference(D(u).times(h).div(rest), h, rest);
    },
  );
  oracle(
    'goes with a blur circle of √(w² + h²) / divisor',
    args(wide, wide, wide),
    (w, h, divisor) => blurCircle(w, h, divisor),
    (w, h, divisor) => D(w).pow(2).plus(D(h).pow(2)).sqrt().div(divisor),
  );
  oracle(
    'is stacked in steps of depth·(1 − overlap), against its condition where nearly all overlaps',
    args(
      reading,
      decades(-4, 2),
      blur,
      fc.oneof(
        fc.double({ min: 0, max: 0.99, noNaN: true }),
        decades(-6, -2).map((x) => 1 - x),
      ),
      decades(-1, 1),
    ),
    (n, m, c, overlap, p) => stackStep(n, m, c, overlap, p),
    (n, m, c, overlap, p) =>
      total(n, m, c, p)
        .div(D(m).pow(2))
        .times(D(1).minus(D(overlap))),
  );
});

describe('diffraction', () => {
  const nm = decades(2, 3.5);
  oracle(
    'makes a disc of 2.44·λ·N·(1 + m / p)',
    args(reading, decades(-6, 2), nm, decades(-1, 1)),
    (n, m, l, p) => airyDisc(n, m, l, p),
    (n, m, l, p) => D('2.44').times(l).div(1000).times(n).times(D(m).div(p).plus(1)),
  );
  const best = (spread: Decimal.Value, m: number, l: number, p: number): Decimal =>
    D(spread).div(D('4.88e-6').times(l)).sqrt().div(D(m).div(p).plus(1));
  oracle(
    'balances a focus spread at √(spread / (4.88·λ)) / (1 + m / p)',
    args(wide, decades(-6, 2), nm, decades(-1, 1)),
    (s, m, l, p) => spreadAperture(s, m, l, p),
    best,
  );
  oracle(
    'balances a depth at √(depth·m² / (4.88·λ)) / (1 + m / p)',
    args(wide, decades(-6, 2), nm, decades(-1, 1)),
    (d, m, l, p) => bestAperture(d, m, l, p),
    (d, m, l, p) => best(D(d).times(D(m).pow(2)), m, l, p),
  );
});

describe('tilt', () => {
  const degrees = D(180).div(PI);
  oracle(
    'for a hinge is arcsin(f / J), against its condition where the two are nearly equal',
    args(decades(0, 3), fc.oneof(decades(-8, 0), decades(0, 5))),
    (f, more) => tiltForHinge(f, f * (1 + more)),
    (f, more) => {
      const sine = D(f).div(D(f * (1 + more)));
      const tilt = Decimal.asin(sine);
      return difference(tilt.times(degrees), sine, D(1).minus(sine.pow(2)).sqrt().times(tilt));
    },
  );
  oracle(
    'sets the hinge at f / sin(tilt)',
    args(decades(0, 3), fc.oneof(fc.double({ min: 0.1, max: 90, noNaN: true }), decades(-6, -1))),
    (f, tilt) => hingeForTilt(f, tilt),
    (f, tilt) => D(f).div(Decimal.sin(D(tilt).div(degrees))),
  );
});

describe('colour, supply, hire', () => {
  const kelvins = fc.oneof(
    fc.tuple(decades(2, 6), decades(2, 6)),
    fc
      .tuple(decades(2, 6), fc.double({ min: -12, max: -2, noNaN: true }))
      .map(([a, e]): [number, number] => [a, a * (1 + 10 ** e)]),
  );
  oracle(
    // As 10⁶·(from − to) / (from·to) the difference keeps its digits: no allowance is needed.
    'a mired shift is 10⁶ / to − 10⁶ / from, also between two that are nearly equal',
    kelvins.map(([a, b]): [number, number] => [a, b]),
    (from, to) => miredShift(from, to),
    (from, to) =>
      D(1e6)
        .div(D(to))
        .minus(D(1e6).div(D(from))),
  );
  oracle(
    'a shift leads to 10⁶ / (10⁶ / kelvin + mireds), against its condition where hardly a mired is left',
    args(
      decades(2, 6),
      fc.oneof(
        decades(-6, 2).map((x) => x - 1),
        decades(-2, 3),
      ),
    ),
    (kelvin, part) => kelvinShift(kelvin, (1e6 / kelvin) * part),
    (kelvin, part) => {
      const start = D(1e6).div(D(kelvin));
      const rest = start.plus(D((1e6 / kelvin) * part));
      return difference(D(1e6).div(rest), start, rest);
    },
  );
  const share = fc.double({ min: 0.01, max: 1, noNaN: true });
  oracle(
    'the mains current is E / (recycle·efficiency·V·power factor) + lamp / (V·its power factor)',
    args(fc.oneof(fc.constant(0), wide), wide, wide, fc.oneof(fc.constant(0), wide), share, share, share),
    (e, t, v, lamp, efficiency, factor, ofLamp) => mainsCurrent(e, t, v, lamp, efficiency, factor, ofLamp),
    (e, t, v, lamp, efficiency, factor, ofLamp) =>
      D(e)
        .div(D(t).times(efficiency).times(v).times(factor))
        .plus(D(lamp).div(D(v).times(ofLamp))),
  );
  oracle(
    'hire costs the rate·(weeks·w + the smaller of the days over and w)',
    args(
      wide,
      fc.oneof(
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 1, max: 1600 }).map((n) => n / 4),
      ),
      fc.double({ min: 0.5, max: 7, noNaN: true }),
    ),
    (rate, days, w) => hireCost(rate, days, w),
    (rate, days, w) => {
      const weeks = D(days).div(7).floor();
      return weeks
        .times(w)
        .plus(Decimal.min(D(days).minus(weeks.times(7)), w))
        .times(rate);
    },
  );
});
