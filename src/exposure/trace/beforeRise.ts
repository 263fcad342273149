import { at } from '../core/at';
import { SLACK } from '../core/numbers';
import { NEVER_BY_CHANCE, SURE_OF } from './noiseChance';
import { MEDIAN, median } from './median';
import { SHOWS_NOISE, stepNoise } from './noise';
import { fitPolynomial } from './polynomial';
import { tenthOf, timeAt } from './samples';
import { lightAt, nextBright, type Signal } from './signal';
import { ENOUGH, medianOf } from './meanOverTime';

/** A median of fewer samples at the start is one of their ends, and tells neither level nor noise. */
const LEAST = 5;
/** Samples before the rise that make a sure base: they tell it to a sixth of the noise. */
const SURE = 40;
/** A lead that drifts stays within this share of the whole range, from which on light counts as a pulse. */
const DRIFTING = 0.02;
/** A lead that, carried on to the peak, would reach the lowest level that the trade asks for is the foot of the flash and no base. */
const FLASH = 0.1;
/** A lead whose rise lies within so many standard deviations of none is level: it seldom is the foot of a rise. */
const LEVEL = 2;
/** A lead is straight where its middle lies off the line by no more than this share of its rise, and the noise: a rise that doubles bends as much. */
const STRAIGHT = 0.1;
/** A base lies in the lower half of the range, and drifts by no more than that: what goes higher is flash. */
export const HIGHEST = 0.5;

/** Number of samples from the start up to the last one before the peak that lies within `near` of a level. */
function lastNear(signal: Signal, peak: number, level: number, near: number): number {
  for (let i = peak - 1; i >= 0; i--) if (Math.abs(lightAt(signal, i) - level) <= near) return i + 1;
  return 0;
}

/** What the level of a lead does from its first third to its last, carried on to the peak, and how well three thirds tell. */
function trendOf(
  signal: Signal,
  count: number,
  peak: number,
): { rise: number; bend: number; carried: number } {
  const third = Math.floor(count / 3);
  const [a, b, c] = [0, 1, 2].map((k) => medianOf(signal, k * third, (k + 1) * third)) as [
    number,
    number,
    number,
  ];
  const middle = (k: number): number => timeAt(signal.samples, Math.floor((k + 0.5) * third));
  const span = middle(2) - middle(0);
  const rise = c - a;
  const carried = span > 0 ? (Math.abs(rise) / span) * (timeAt(signal.samples, peak) - middle(2)) : 0;
  return { rise, bend: Math.abs(b - (a + c) / 2), carried };
}

/** Four standard deviations of the difference between two medians of so many samples. */
const chance = (noise: number, each: number): number =>
  SURE_OF * MEDIAN * noise * Math.sqrt(2 / Math.min(each, ENOUGH));

/** Rise in a second of the straight line through a stretch, with its standard deviation and the middle of the stretch. */
function lineOf(
  signal: Signal,
  from: number,
  to: number,
  noise: number,
): { slope: number; doubt: number; middle: number } {
  const line = fitPolynomial(signal, from, to - 1, 1);
  if (line === undefined) return { slope: 0, doubt: 0, middle: 0 };
  const { terms, inverse, half, middle } = line;
  return { slope: at(terms, 1) / half, doubt: (noise * Math.sqrt(at(at(inverse, 1), 1))) / half, middle };
}

/**
 * Whether a lead is the foot of the flash itself: it rises beyond doubt (four standard deviations of a fitted straight line),
 * and carried on to the peak would reach a tenth of it.
 */
function isRise(signal: Signal, lead: number, peak: number, noise: number): boolean {
  const { slope, doubt, middle } = lineOf(signal, 0, lead, noise);
  const span = timeAt(signal.samples, lead - 1) - timeAt(signal.samples, 0);
  return slope > SURE_OF * doubt + SLACK / span && slope * (timeAt(signal.samples, peak) - middle) > FLASH;
}

/**
 * The lead before a rise that noise covers at first, so that it was taken for lead: the first half, quarter … of the samples,
 * where these do not rise and those up to twice as far rise faster beyond doubt. 0 where it rises from the first sample on.
 */
function beforeRise(signal: Signal, lead: number, noise: number): number {
  let end = lead;
  while (end > SURE) {
    const flat = Math.max(SURE, end >> 1);
    const [first, next] = [lineOf(signal, 0, flat, noise), lineOf(signal, flat, end, noise)];
    if (first.slope <= LEVEL * first.doubt)
      return next.slope - first.slope > SURE_OF * Math.hypot(first.doubt, next.doubt) ? flat : 0;
    end = flat;
  }
  return 0;
}

/** Samples before an earlier flash, where one lies in the lead; all of it where none does, or too few lie before it. */
function beforeOthers(signal: Signal, lead: number, level: number, noise: number): number {
  const other = nextBright(signal, 0, lead, 1, level + DRIFTING + NEVER_BY_CHANCE * noise);
  return other >= SURE ? other : lead;
}

/** The lead without its end, where that has begun to rise: halved while its second half lies above the first. */
function flatPart(signal: Signal, lead: number, noise: number): number {
  let count = lead;
  while (count >= 2 * SURE) {
    const half = count >> 1;
    const rise = medianOf(signal, half, count) - medianOf(signal, 0, half);
    if (rise <= chance(noise, half) + SLACK) break;
    count = half;
  }
  return count;
}

/** The lead, or the first half, quarter … of it, along which the base drifts in a straight line; 0 where none is straight. */
function straightPart(signal: Signal, lead: number, peak: number, noise: number): number {
  for (let count = lead; count >= SURE; count >>= 1) {
    const { rise, bend, carried } = trendOf(signal, count, peak);
    if (bend <= STRAIGHT * Math.abs(rise) + noise && carried <= FLASH) return count;
  }
  return 0;
}

/**
 * Samples that were recorded before the flash; 0 where they are too few for a sure base.
 *
 * The rise starts after the last sample before the peak that lies within four times the noise of the median of the first 20
 * (of a short recording: its first tenth). Of these samples the ones before an earlier flash count; what still rises at
 * their end is cut off, halving; and a lead that rises so that carried on to the peak it would reach a tenth of it is no lead
 * but the flash. A lead that drifts ends sooner by the rule: it is let run to 2 % of the range, as far as it is straight.
 * A median in the upper half of the range is no base: that recording starts on the flash.
 *
 * @param signal - the recording from 0 at its lowest to 1 at its highest.
 */
export function leadOf(signal: Signal, peak: number): number {
  const head = Math.min(SHOWS_NOISE, tenthOf(signal.samples.count));
  if (head < LEAST) return 0;
  const level = median(Float64Array.from({ length: head }, (_, i) => lightAt(signal, i)));
  if (level > HIGHEST) return 0;
  const noise = stepNoise(signal, 0, head);
  const strict = lastNear(signal, peak, level, SURE_OF * noise + SLACK);
  if (strict >= SURE) {
    const alone = beforeOthers(signal, strict, level, noise);
    if (isRise(signal, alone, peak, noise)) return beforeRise(signal, alone, noise);
    const flat = flatPart(signal, alone, noise);
    return flat < alone && isRise(signal, flat, peak, noise) ? 0 : flat;
  }
  const drifting = lastNear(signal, peak, level, DRIFTING);
  return straightPart(signal, beforeOthers(signal, drifting, level, noise), peak, noise);
}
