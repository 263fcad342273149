import { SURE_OF, WITHIN_CHANCE } from './noiseChance';
import { HIGHEST, leadOf } from './beforeRise';
import { MEDIAN } from './median';
import { bendNoise, SHOWS_NOISE } from './noise';
import { quiet } from './quietLevel';
import { tenthOf, timeAt } from './samples';
import { lightAt, type Signal } from './signal';
import { meanOver, medianOf } from './meanOverTime';

/** What the recording shows without light. */
export interface Base {
  /** At the time `origin`. */
  readonly level: number;
  /** Rise in a second: 0 unless the base drifts along a straight line. */
  readonly slope: number;
  readonly origin: number;
  /** Standard deviation of one sample about it. */
  readonly noise: number;
  /** Standard deviation of the base itself. */
  readonly error: number;
  /** Forty or more samples lie before the flash, or the base was given. */
  readonly sure: boolean;
}

/** The last tenth of a shorter recording has fewer than six samples, which tell no noise. */
const SHORT = 60;
/** The tail is read in tenths of the recording: short enough to follow it, long enough to average its noise. */
const TENTHS = 10;
/** No drift is looked for where the lead ends within so many tenths of the end: two of them are compared, one lies between. */
const APART = 3;
/** Share of the range that values lose to rounding where they are kept in single precision (6e-8): such a rise is no drift. */
const ROUNDING = 1e-7;
/** A drift is straight where its middle lies off the line by no more than this share of its rise: a decay by a third bends as much. */
const STRAIGHT = 0.05;
/**
 * A tail whose fall shrinks by less than a fifth from tenth to tenth is too nearly straight to say where it leads: the step to
 * that level would be more than four times the last fall, and so would be its error.
 */
const SLOWEST = 0.8;
/**
 * The last tenth falls by so much of what an exponential would, or the fall before it was an edge: the side of a square pulse
 * has a sum over its tenths, and leads nowhere.
 */
const GOES_ON = 0.5;

/** Base of a recording from 0 at its lowest to 1 at its highest, as measured before the flash, or else after it. */
export function baseOf(signal: Signal, peak: number): Base {
  const lead = leadOf(signal, peak);
  return lead > 0 ? baseBefore(signal, lead) : baseAfter(signal);
}

/** A base that the user gives, with the noise of the recording. */
export function baseGiven(signal: Signal, peak: number, level: number): Base {
  const lead = leadOf(signal, peak);
  const noise = lead > 0 ? quiet(signal, 0, lead).spread : noiseAfter(signal);
  return { level, slope: 0, origin: 0, noise, error: 0, sure: true };
}

/** The level of the samples before the flash, and the straight line from there to the end where the base drifts along it. */
function baseBefore(signal: Signal, lead: number): Base {
  const before = quiet(signal, 0, lead);
  const origin = (timeAt(signal.samples, 0) + timeAt(signal.samples, lead - 1)) / 2;
  const slope = driftOf(signal, lead, before.level, origin, before.spread);
  const flat = { level: before.level, slope, origin, sure: true };
  if (slope === 0) return { ...flat, noise: before.spread, error: before.spread / Math.sqrt(before.count) };
  const straight = { ...signal, slope: slope / signal.scale, origin };
  const { level, spread, count } = quiet(straight, 0, lead);
  return { ...flat, level, noise: spread, error: spread / Math.sqrt(count) };
}

/**
 * Rise of the base in a second, where the last two tenths of the time lie on one line with the samples before the flash; the
 * tail of a flash bends away from such a line, and the base counts as flat.
 */
function driftOf(signal: Signal, lead: number, level: number, origin: number, noise: number): number {
  const start = timeAt(signal.samples, 0);
  const end = timeAt(signal.samples, signal.samples.count - 1);
  const tenth = (end - start) / TENTHS;
  if (timeAt(signal.samples, lead - 1) > end - APART * tenth) return 0;
  const last = meanOver(signal, end - tenth, end);
  const next = meanOver(signal, end - 2 * tenth, end - tenth);
  const rise = last.level - level;
  const doubt = noise * Math.sqrt(1 / lead + 1 / Math.min(last.count, next.count));
  if (Math.abs(rise) <= SURE_OF * doubt + ROUNDING || Math.abs(rise) > HIGHEST) return 0;
  const slope = rise / (last.time - origin);
  const off = next.level - level - slope * (next.time - origin);
  return Math.abs(off) <= STRAIGHT * Math.abs(rise) + WITHIN_CHANCE * doubt ? slope : 0;
}

/** The lower of the first sample and what the tail comes down to. */
function baseAfter(signal: Signal): Base {
  const noise = noiseAfter(signal);
  const first = lightAt(signal, 0);
  const tail = comesDownTo(signal, noise);
  const level = first < tail - SURE_OF * noise ? first : tail;
  const error = (MEDIAN * noise) / Math.sqrt(signal.samples.count / TENTHS);
  return { level, slope: 0, origin: 0, noise, error, sure: false };
}

/** Noise in the last tenth. */
function noiseAfter(signal: Signal): number {
  const { count } = signal.samples;
  return count < SHORT ? 0 : bendNoise(signal, count - Math.max(SHOWS_NOISE, tenthOf(count)), count);
}

/**
 * Median of the last tenth; where the tail still falls there, the level it falls towards, from the means of the last three
 * tenths of the time: for an exponential tail these differ by a constant factor (Aitken's process, Proceedings of the Royal
 * Society of Edinburgh 46, 1926).
 */
function comesDownTo(signal: Signal, noise: number): number {
  const { samples } = signal;
  const last = Math.max(1, tenthOf(samples.count));
  const middle = medianOf(signal, samples.count - last, samples.count);
  const end = timeAt(samples, samples.count - 1);
  const tenth = (end - timeAt(samples, 0)) / TENTHS;
  const mean = (from: number, to: number): number =>
    meanOver(signal, end - from * tenth, end - to * tenth).level;
  const [a, b, c] = [mean(3, 2), mean(2, 1), mean(1, 0)];
  const doubt = noise * Math.sqrt(2 / last);
  const fall = b - c;
  const factor = fall / (a - b);
  if (!(fall > SURE_OF * doubt && factor > 0 && factor < SLOWEST)) return middle;
  // what an exponential falls by from the middle of one half of the last tenth to that of the other
  const goesOn = (2 * factor * fall) / (1 + Math.sqrt(factor)) ** 2;
  if (mean(1, 0.5) - mean(0.5, 0) < GOES_ON * goesOn - SURE_OF * Math.SQRT2 * doubt) return middle;
  return c - (fall * factor) / (1 - factor);
}
