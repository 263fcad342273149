import { at } from '../core/at';
import { log2Ratio, roundStops, SLACK, spoken } from '../core/numbers';
import { ABOVE_ZERO, outside, outsideAny } from '../core/range';
import { fail, isFail, type Fail, type Result } from '../core/result';
import type { Vector } from '../core/vector';
import { aboveMost, stepsDown } from '../distance/nearestSetting';
import { rootSumOfSquares } from '../light/lightSum';
import { evenest } from './evenest';
import { inSteps } from './inSteps';
import { type Lighting } from './lighting';

/** Readings of one point, head by head; undefined where a head does not reach the point. */
export type PointReadings = readonly (number | undefined)[];

export interface EvenLightOptions {
  /** Step of the settings, in stops. */
  readonly step?: number;
  /** Heads that may be switched off: one flag a head, or none. */
  readonly mayGoOff?: readonly boolean[] | false;
}

/** A lighting that is as even as the heads allow. */
export interface EvenLight {
  /** Smallest worst miss in reach, in stops, before the powers are settled in steps. */
  readonly error: number;
  /** Powers to set, in the unit of the powers given; 0 for off. */
  readonly powers: readonly number[];
  /** f-number of all heads together at each point, now and with the powers to set. */
  readonly before: readonly number[];
  readonly after: readonly number[];
  /** Stops that each point then reads over (+) or under (−) what is wanted. */
  readonly misses: readonly number[];
  /** The largest of them, without its sign. */
  readonly worst: number;
}

/** As many as are balanced in no time. */
const MOST_HEADS = 12;
const MOST_POINTS = 25;

const wrongCount = (name: string, count: number, wanted: number, of: 'point' | 'head'): Fail =>
  fail(
    'unreadable',
    `${name} must be as many as the ${of}s: ${count} for ${wanted} ${wanted === 1 ? of : `${of}s`}.`,
  );

function wrongShape(
  readings: readonly PointReadings[],
  lists: Readonly<Record<string, Vector>>,
): Fail | undefined {
  const heads = readings[0]?.length ?? 0;
  if (heads === 0) return fail('unreadable', 'readings is blank: give one row a point, one column a head.');
  for (const [p, row] of readings.entries()) {
    if (row.length !== heads)
      return fail(
        'unreadable',
        `readings must have as many columns at each point: ${row.length} at point ${p + 1}, ${heads} at point 1.`,
      );
    for (const [h, reading] of row.entries()) {
      const wrong = outside(`readings (point ${p + 1}, head ${h + 1})`, reading, ABOVE_ZERO);
      if (wrong) return wrong;
    }
  }
  for (const [name, list] of Object.entries(lists)) {
    const wrong = outsideAny(name, list, ABOVE_ZERO);
    if (wrong) return wrong;
    const isOfPoints = name === 'targets';
    const wanted = isOfPoints ? readings.length : heads;
    if (list.length !== wanted) return wrongCount(name, list.length, wanted, isOfPoints ? 'point' : 'head');
  }
  if (heads > MOST_HEADS || readings.length > MOST_POINTS)
    return fail(
      'domain',
      `readings may have up to ${MOST_HEADS} heads and ${MOST_POINTS} points, not ${heads} and ${readings.length}.`,
    );
  const dark = readings.findIndex((row) => row.every((reading) => reading === undefined));
  if (dark >= 0)
    return fail('no-answer', `Point ${dark + 1} is reached by no head: meter it again, or leave it out.`);
  return undefined;
}

function outOfRange(
  powers: Vector,
  least: Vector,
  most: Vector,
  last: Vector,
  step: number,
): Fail | undefined {
  for (const [h, power] of powers.entries()) {
    const [low, high] = [at(least, h), at(most, h)];
    const head = `(number ${h + 1} of the list)`;
    const tooMuch = aboveMost(`least ${head}`, low, high) ?? aboveMost(`powers ${head}`, power, high);
    if (tooMuch) return tooMuch;
    const lowest = Math.min(low, high * 2 ** (-at(last, h) * step));
    if (power < lowest * (1 - SLACK))
      return fail(
        'domain',
        `powers ${head} must not be less than least: ${spoken(power)} is less than ${spoken(low)}.`,
      );
  }
  return undefined;
}

/** Whether all numbers keep to what arithmetic can tell apart: a thousand million times, 30 stops. */
function reachable({ reach, least }: Lighting): boolean {
  const sane = (x: number): boolean => x > 1e-9 && x < 1e9;
  return reach.every((row) => sane(row.reduce((a, b) => a + b, 0))) && least.every((low) => low > 1e-9);
}

/**
 * Powers that bring the light of several heads as near as can be to what is wanted at several points, and otherwise keep the
 * lighting.
 *
 * The light of a head goes with its power, and light adds: with powers x the point p has the light Σ(N_ph²/P_h)·x_h. The worst
 * miss ε over the points, 2^(−ε)T² ≤ light ≤ 2^ε T², is made as small as the heads' ranges allow, by bisection over linear
 * programmes. No head goes off unless it may. Among powers within 0.005 stop of the best: the fewest heads off, then the
 * smallest largest change from the present in stops, then a small sum of changes (not claimed to be the smallest). Then each
 * head is settled on most·2^(−k·step), k from 0 to round(log2(most/least)/step) (the last may lie half a step below least),
 * which adds half a step at the most. Thousands of settings near the powers are tried: all that there are for one or two
 * heads of up to 69 steps.
 *
 * A target out of reach is no refusal: the nearest is answered, and `error` says how far it stays away.
 *
 * @param readings - point × head, exact f-numbers of each head alone at its present power (above 0); undefined where it does
 *   not reach. Up to 25 points and 12 heads.
 * @param powers - present powers (each within the head's range), in any unit that goes with the light.
 * @param targets - f-number wanted of all heads together at each point (above 0).
 * @param least - least power of each head (above 0).
 * @param most - full power of each head.
 */
export function evenLight(
  readings: readonly PointReadings[],
  powers: Vector,
  targets: Vector,
  least: Vector,
  most: Vector,
  { step = 0.1, mayGoOff = false }: EvenLightOptions = {},
): Result<EvenLight> {
  const wrong = wrongShape(readings, { powers, targets, least, most }) ?? outside('step', step, ABOVE_ZERO);
  if (wrong) return wrong;
  const flags = mayGoOff === false || mayGoOff.length === 0 ? powers.map(() => false) : mayGoOff;
  if (flags.length !== powers.length) return wrongCount('mayGoOff', flags.length, powers.length, 'head');
  const last = least.map((low, h) => stepsDown(low, at(most, h), step));
  const beyond = outOfRange(powers, least, most, last, step);
  if (beyond) return beyond;

  const now = powers.map((power, h) => Math.min(1, power / at(most, h)));
  const lighting: Lighting = {
    reach: readings.map((row, p) =>
      row.map((reading, h) => (reading === undefined ? 0 : (reading / at(targets, p)) ** 2 / at(now, h))),
    ),
    now,
    least: least.map((low, h) => Math.min(low / at(most, h), at(now, h))),
    mayGoOff: flags,
  };
  if (!reachable(lighting))
    return fail(
      'domain',
      'readings and targets lie more than 30 stops apart, or the ends of a range: check the numbers that go in.',
    );
  const found = evenest(lighting);
  if (isFail(found)) return found;
  const shares = inSteps(lighting, found.shares, { step, last });
  const total = (row: PointReadings, factor: (h: number) => number): number =>
    rootSumOfSquares(row.flatMap((n, h) => (n === undefined ? [] : [n * Math.sqrt(factor(h))])));
  const after = readings.map((row) => total(row, (h) => at(shares, h) / at(now, h)));
  const misses = after.map((reading, p) => roundStops(2 * log2Ratio(reading, at(targets, p))));
  return {
    error: roundStops(found.error),
    powers: shares.map((share, h) => share * at(most, h)),
    before: readings.map((row) => total(row, () => 1)),
    after,
    misses,
    worst: misses.reduce((worst, miss) => Math.max(worst, Math.abs(miss)), 0),
  };
}
