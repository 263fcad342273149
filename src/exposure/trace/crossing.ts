import { at } from '../core/at';
import { bendIn } from './bendBetween';
import { NEVER_BY_CHANCE } from './noiseChance';
import type { TracePoint } from './lightAtTime';
import { fitPolynomial, passes } from './polynomial';
import type { Pulse } from './pulse';
import { timeAt } from './samples';
import { lightAt, nextBright, nextDark, type Signal } from './signal';

/** How a pulse comes up through a level, going inward from one end of its light. */
export interface Crossing {
  /** Undefined where the light begins (or ends) above the level. */
  readonly place: TracePoint | undefined;
  /** Sample from which to look for a higher level. */
  readonly seen: number;
}

/** A parabola through fewer samples than this on either side follows their noise. */
const FEW = 4;
/** How far from the level the samples of a fit lie, in standard deviations of the noise: its hysteresis, and what chance never adds. */
const REACH = 8;
/** Standard deviations above and below the level that the light has to pass: noise at the level seldom takes both. */
const HYSTERESIS = 2;
/** What these distances take, at most, of the height that is left above the level: near the top there is less than noise asks. */
const ROOM = { up: 0.5, sure: 0.75 } as const;

/**
 * First crossing of a level, going inward to the peak from the first sample of the light (`way` 1: the rise) or from the
 * last (−1: the fall).
 *
 * Hysteresis of twice the noise: the light has come up where it is that much above the level, and was still down where it
 * last lay that much below. A hump is passed on its own side where it is dark again behind it, by eight times the noise.
 *
 * Between neighbours the straight line gives the instant (a parabola where samples are fine, which is what linear
 * interpolation errs by). Where noise spreads the crossing over many samples, a parabola is fitted to those around it, as many
 * on either side, within eight times the noise of the level: a jump is never part of them.
 */
export function crossingOf(pulse: Pulse, level: number, way: 1 | -1, start: number): Crossing {
  const { signal, noise, peak } = pulse;
  const outer = way > 0 ? pulse.from : pulse.to;
  const up = level + Math.min(HYSTERESIS * noise, ROOM.up * (1 - level));
  const sure = level + Math.min(NEVER_BY_CHANCE * noise, ROOM.sure * (1 - level));
  const down = level - HYSTERESIS * noise;
  const seen = nextBright(signal, start, peak, way, up);
  const inside = nextBright(signal, seen, peak, way, sure);
  const hump = humpIn(signal, seen, inside, way, level - REACH * noise);
  let outside = hump ?? inside;
  while (outside !== outer && lightAt(signal, outside) > down) outside -= way;
  if (lightAt(signal, outside) > down && lightAt(signal, outside) >= level) return { place: undefined, seen };
  const middle = (seen + outside) >> 1;
  const most = Math.min(Math.abs(middle - outer), Math.abs((hump ?? pulse.top.at) - middle));
  const place = fitted(pulse, level, middle, most) ?? joined(pulse, level, way, seen, outside);
  return { place, seen };
}

/** The brightest sample before a stretch grows dark for the first time; undefined where it does not. */
function humpIn(signal: Signal, start: number, end: number, way: 1 | -1, dark: number): number | undefined {
  const down = nextDark(signal, start, end, way, dark);
  if (down === end) return undefined;
  let top = start;
  for (let i = start; i !== down; i += way) if (lightAt(signal, i) > lightAt(signal, top)) top = i;
  return top;
}

/**
 * Instant in a cell at which the line between the samples passes the level: a straight one, or bent where samples are fine. The
 * level lies between two samples that are not alike.
 */
export function inCell(signal: Signal, level: number, cell: number): TracePoint {
  const start = timeAt(signal.samples, cell);
  const width = timeAt(signal.samples, cell + 1) - start;
  const left = lightAt(signal, cell);
  const bend = bendIn(signal, cell);
  const right = lightAt(signal, cell + 1);
  // left + slope·u + bend·u² = level: the root that goes the way of the cell, by the form that keeps its digits
  const slope = right - left - bend;
  const way = Math.sign(right - left);
  const root = way * Math.sqrt(Math.max(0, slope * slope - 4 * bend * (left - level)));
  const part = slope * way > 0 ? (2 * (level - left)) / (slope + root) : (root - slope) / (2 * bend);
  return { time: start + Math.min(1, Math.max(0, part)) * width, cell };
}

/** The middle one of the instants at which straight lines between the samples pass the level. */
function joined(
  { signal, peak, from, to }: Pulse,
  level: number,
  way: 1 | -1,
  seen: number,
  outside: number,
): TracePoint {
  const outer = way > 0 ? from : to;
  let first = (seen - outside) * way > 0 ? outside : seen;
  let last = first === outside ? seen : outside;
  while (first !== outer && lightAt(signal, first) >= level) first -= way;
  while (last !== peak && lightAt(signal, last) < level) last += way;
  const found: TracePoint[] = [];
  for (let i = first; i !== last; i += way)
    if (lightAt(signal, i) < level && lightAt(signal, i + way) >= level)
      found.push(inCell(signal, level, Math.min(i, i + way)));
  return at(found, found.length >> 1);
}

/** Samples on either side of one that all lie near the level, up to so many. */
function reachOf({ signal, noise }: Pulse, level: number, middle: number, most: number): number {
  const near = REACH * noise;
  let reach = 0;
  while (
    reach < most &&
    Math.abs(lightAt(signal, middle - reach - 1) - level) <= near &&
    Math.abs(lightAt(signal, middle + reach + 1) - level) <= near
  )
    reach++;
  return reach;
}

/** Instant at which the parabola through up to so many samples around `middle` passes the level; undefined where they are few. */
function fitted(pulse: Pulse, level: number, middle: number, most: number): TracePoint | undefined {
  const { signal } = pulse;
  const reach = reachOf(pulse, level, middle, most);
  if (reach < FEW) return undefined;
  const fit = fitPolynomial(signal, middle - reach, middle + reach, 2);
  const time = fit && passes(fit, level, timeAt(signal.samples, middle));
  return time === undefined ? undefined : { time, cell: cellOf(signal, time, middle) };
}

/** The sample at or before an instant of the recording, near a sample. */
function cellOf(signal: Signal, time: number, near: number): number {
  let i = near;
  while (timeAt(signal.samples, i) > time) i--;
  while (i + 2 < signal.samples.count && timeAt(signal.samples, i + 1) <= time) i++;
  return i;
}
