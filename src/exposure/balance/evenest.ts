import { at } from '../core/at';
import { isFail, type Result } from '../core/result';
import type { Vector } from '../core/vector';
import { AS_GOOD, changes, lightAtPoints, type Lighting, worstMiss } from './lighting';
import { linearProgramme } from './linearProgramme';

/** Bounds of the shares of the heads. Both are 0 for a head that is off. */
interface Box {
  readonly least: Vector;
  readonly most: Vector;
}
type Fit = Result<readonly number[] | undefined>;

/** To how many stops the worst miss and the largest change are found. */
const FINE = 1e-9;
/** Rounds of a bisection: from any number of stops down to what a number can tell. */
const ROUNDS = 80;
/** What a known answer may be past its bounds by rounding, in stops. */
const ROUNDING = 1e-8;
/** Rounds of improving the sum of changes. */
const SUM_ROUNDS = 20;

/** Factors that bring the light wanted at each point, or what the heads give that is nearest to it, to 1. */
const scales = ({ reach, least, mayGoOff }: Lighting): number[] => {
  const low = lightAtPoints(
    reach,
    least.map((x, h) => (mayGoOff[h] ? 0 : x)),
  );
  return reach.map(
    (row, p) =>
      1 /
      Math.min(
        row.reduce((a, b) => a + b, 0),
        Math.max(1, at(low, p)),
      ),
  );
};

/** Shares in a box with no point more than `stops` from what is wanted. */
function fitting(lighting: Lighting, box: Box, stops: number): Fit {
  const { reach } = lighting;
  const scale = scales(lighting);
  return linearProgramme({
    objective: box.least.map(() => 0),
    rows: reach.map((row, p) => row.map((a) => a * at(scale, p))),
    rowLeast: scale.map((s) => s * 2 ** -stops),
    rowMost: scale.map((s) => s * 2 ** stops),
    ...box,
  });
}

const whole = (lighting: Lighting): Box => ({ least: lighting.least, most: lighting.now.map(() => 1) });
const without = (box: Box, off: ReadonlySet<number>): Box => ({
  least: box.least.map((x, h) => (off.has(h) ? 0 : x)),
  most: box.most.map((x, h) => (off.has(h) ? 0 : x)),
});

/**
 * The same where heads may go off: each is off or within its range. Such a head is first let down to 0; where it then
 * stands between 0 and its least, both ways are tried (branch and bound).
 */
function fittingOrOff(lighting: Lighting, stops: number, undecided: readonly number[], box: Box): Fit {
  const open = new Set(undecided);
  const fit = fitting(
    lighting,
    { least: box.least.map((x, h) => (open.has(h) ? 0 : x)), most: box.most },
    stops,
  );
  if (isFail(fit) || fit === undefined) return fit;
  const between = undecided.find((h) => at(fit, h) > 0 && at(fit, h) < at(box.least, h));
  if (between === undefined) return fit;
  const rest = undecided.filter((h) => h !== between);
  const lit = fittingOrOff(lighting, stops, rest, box);
  if (isFail(lit) || lit !== undefined) return lit;
  return fittingOrOff(lighting, stops, rest, without(box, new Set([between])));
}

/**
 * Smallest value up to `high` with an answer, by bisection, and that answer.
 *
 * @param known - the answer at `high`.
 * @param attained - the value that an answer really has, which may be less than the one asked for.
 */
function smallest<T>(
  high: number,
  known: T,
  tried: (value: number) => Result<T | undefined>,
  attained: (found: T) => number,
): Result<T> {
  const none = tried(0);
  if (isFail(none) || none !== undefined) return none;
  let [from, to, found] = [0, high, known];
  for (let round = 0; round < ROUNDS && to - from > FINE; round++) {
    const middle = (from + to) / 2;
    const fit = tried(middle);
    if (isFail(fit)) return fit;
    if (fit === undefined) from = middle;
    else {
      found = fit;
      to = Math.min(middle, attained(fit));
    }
  }
  return found;
}

/** Shares with the smallest worst miss in reach of the heads. */
function leastError(lighting: Lighting): Result<Vector> {
  const { reach, now, mayGoOff } = lighting;
  const mayGo = mayGoOff.flatMap((may, h) => (may ? [h] : []));
  return smallest<Vector>(
    worstMiss(reach, now),
    now,
    (stops) => fittingOrOff(lighting, stops, mayGo, whole(lighting)),
    (shares) => worstMiss(reach, shares),
  );
}

/** All ways to take `count` of a list. */
function combinations(list: readonly number[], count: number): number[][] {
  if (count === 0) return [[]];
  return list.flatMap((x, i) => combinations(list.slice(i + 1), count - 1).map((rest) => [x, ...rest]));
}

type Way = { readonly off: ReadonlySet<number>; readonly shares: Vector };

/** The ways among some that still have an answer in their box; undefined for none. */
function ways(
  lighting: Lighting,
  some: readonly ReadonlySet<number>[],
  box: Box,
  stops: number,
): Result<Way[] | undefined> {
  const found: Way[] = [];
  for (const off of some) {
    const shares = fitting(lighting, without(box, off), stops);
    if (isFail(shares)) return shares;
    if (shares !== undefined) found.push({ off, shares });
  }
  return found.length > 0 ? found : undefined;
}

/** Fewest heads off for a worst miss: all the ways to choose them. At the last, the way that is known. */
function fewestOff(lighting: Lighting, stops: number, known: Vector): Result<Way[]> {
  const mayGo = lighting.mayGoOff.flatMap((may, h) => (may ? [h] : []));
  for (let count = 0; count <= mayGo.length; count++) {
    const sets = combinations(mayGo, count).map((heads) => new Set(heads));
    const found = ways(lighting, sets, whole(lighting), stops);
    if (found !== undefined) return found;
  }
  return [{ off: new Set(mayGo.filter((h) => at(known, h) <= 0)), shares: known }];
}

/** No share further than `change` stops from the present. */
const near = ({ now, least }: Lighting, change: number): Box => ({
  least: now.map((x, h) => Math.max(at(least, h), x * 2 ** -change)),
  most: now.map((x) => Math.min(1, x * 2 ** change)),
});

/** Smallest largest change from the present, for a worst miss, over ways to choose the heads that are off. */
function leastChange(
  lighting: Lighting,
  stops: number,
  from: readonly Way[],
): Result<{ change: number; way: Way }> {
  const { now, least } = lighting;
  const far = now.reduce((most, x, h) => Math.max(most, -Math.log2(x), Math.log2(x / at(least, h))), 0);
  let left = from;
  const best = smallest<readonly Way[]>(
    far,
    from,
    (change) => {
      const found = ways(
        lighting,
        left.map(({ off }) => off),
        near(lighting, change),
        stops,
      );
      if (!isFail(found) && found) left = found;
      return found;
    },
    (found) => found.reduce((most, { shares }) => Math.min(most, changes(now, shares).largest), Infinity),
  );
  if (isFail(best)) return best;
  const change = ({ shares }: Way): number => changes(now, shares).largest;
  const way = best.reduce((a, b) => (change(b) < change(a) ? b : a));
  return { change: change(way), way };
}

/** A share with a change too small to be one is the present. */
const steady = (share: number, base: number): number => (Math.abs(share - base) < 1e-12 ? base : share);

/**
 * Makes the sum of changes smaller, without more than a worst miss and a largest change.
 *
 * The sum of |log2(x/now)| is not linear, and bulges upwards where heads go up, so no one linear programme has its least. Each
 * round minimises the sum with a price for every head, up and down: its stops by its change of the round before. It ends as
 * soon as the sum gets no smaller. So the sum is never more than it was; that it is the least there is, is not claimed.
 */
function lessChange(lighting: Lighting, stops: number, change: number, way: Way): Result<Vector> {
  const { reach, now } = lighting;
  const box = without(near(lighting, change + ROUNDING), way.off);
  const miss = 2 ** (stops + ROUNDING);
  const base = now.map((x, h) => (way.off.has(h) ? 0 : x));
  const scale = scales(lighting);
  const light = lightAtPoints(reach, base);
  const rows = reach.map((row, p) => [...row, ...row.map((a) => -a)].map((a) => a * at(scale, p)));
  let best = way.shares;
  let up: Vector = now.map((x) => 1 / (x * Math.LN2));
  let down = up;
  for (let round = 0; round < SUM_ROUNDS; round++) {
    const fit = linearProgramme({
      objective: [...up, ...down],
      rows,
      rowLeast: scale.map((s, p) => s * (1 / miss - at(light, p))),
      rowMost: scale.map((s, p) => s * (miss - at(light, p))),
      least: [...now, ...now].map(() => 0),
      most: [...base.map((x, h) => at(box.most, h) - x), ...base.map((x, h) => x - at(box.least, h))],
    });
    if (isFail(fit)) return fit;
    if (fit === undefined) return best;
    const more = fit.slice(0, now.length);
    const less = fit.slice(now.length);
    const shares = base.map((x, h) => steady(x + at(more, h) - at(less, h), x));
    if (changes(now, shares).sum >= changes(now, best).sum - FINE) return best;
    best = shares;
    const price = (by: number, h: number, sign: number, before: Vector): number =>
      by < 1e-9 ? at(before, h) : Math.abs(Math.log2(1 + (sign * by) / at(now, h))) / by;
    up = more.map((by, h) => price(by, h, 1, up));
    down = less.map((by, h) => price(by, h, -1, down));
  }
  return best;
}

/** What the heads are turned to before it is settled in steps. */
export interface Evenest {
  /** Smallest worst miss in reach, in stops. */
  readonly error: number;
  /** Powers as shares of each head's most, 0 for off. */
  readonly shares: Vector;
}

/**
 * Powers that bring each point nearest to what is wanted, and keep the lighting.
 *
 * The worst miss is the smallest that the heads' ranges allow. Among powers within 0.005 stop of it: the fewest heads off, then
 * the smallest largest change from the present, then a small sum of changes.
 */
export function evenest(lighting: Lighting): Result<Evenest> {
  const best = leastError(lighting);
  if (isFail(best)) return best;
  const error = worstMiss(lighting.reach, best);
  const stops = error + AS_GOOD;
  const from = fewestOff(lighting, stops, best);
  if (isFail(from)) return from;
  const least = leastChange(lighting, stops, from);
  if (isFail(least)) return least;
  const shares = lessChange(lighting, stops, least.change, least.way);
  return isFail(shares) ? shares : { error, shares };
}
