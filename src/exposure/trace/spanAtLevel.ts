import { spoken } from '../core/numbers';
import { type Fail, fail, type Result } from '../core/result';
import { crossingOf } from './crossing';
import { lightBetween, type TracePoint, tracePointAt } from './lightAtTime';
import type { Pulse } from './pulse';
import { lightAt } from './signal';

/** Two instants, one on either side of the peak. */
export interface Span {
  readonly rise: TracePoint;
  readonly fall: TracePoint;
}

/** Light before, inside and after a span, as shares of all light of the pulse (heights × seconds) that add up to 1. */
export interface Shares {
  readonly total: number;
  readonly before: number;
  readonly inside: number;
  readonly after: number;
}

/** The lowest level that the trade asks for: a recording that ends above it has lost light that counts. */
export const LOWEST_LEVEL = 0.1;
/** Lowest level that stands out of the noise, in standard deviations: its hysteresis of two still lies above the base. */
export const LEAST_LEVEL = 2.5;

export const durationOf = ({ rise, fall }: Span): number => fall.time - rise.time;

const lostInNoise = (pulse: Pulse, level: number): Fail =>
  fail(
    'no-answer',
    `${spoken(level)} of the height is lost in the noise of the trace: ask for ${spoken(Math.ceil(100 * LEAST_LEVEL * pulse.noise) / 100)} or more, or record a cleaner trace.`,
  );

const neverFalls = (pulse: Pulse, level: number): Fail =>
  fail(
    'no-answer',
    `The trace never falls through ${spoken(level)} of its height: the recording ends too early${
      pulse.signal.samples.times === undefined ? ' (zeros at the end count as blank cells)' : ''
    }.`,
  );

const BETWEEN_SAMPLES =
  'That level lies above the highest sample, as the top of the trace falls between two: ask for a lower one, or record with a shorter sample interval.';

/**
 * From the first rise to the last fall of a pulse through a level.
 *
 * @param cursor - samples from which to look, moved inward to where a higher level is looked for next.
 * @returns `no-answer` where the recording ends above the level, the level is lost in the noise, or lies above the highest
 * sample. A recording that starts above the level counts from its first sample.
 */
export function spanAt(
  pulse: Pulse,
  level: number,
  cursor = { rise: pulse.from, fall: pulse.to },
): Result<Span> {
  if (level < LEAST_LEVEL * pulse.noise) return lostInNoise(pulse, level);
  if (level > lightAt(pulse.signal, pulse.peak)) return fail('no-answer', BETWEEN_SAMPLES);
  const rise = crossingOf(pulse, level, 1, cursor.rise);
  const fall = crossingOf(pulse, level, -1, cursor.fall);
  cursor.rise = rise.seen;
  cursor.fall = fall.seen;
  if (fall.place === undefined) return neverFalls(pulse, level);
  return { rise: rise.place ?? tracePointAt(pulse.signal, pulse.from), fall: fall.place };
}

/** Shares of a span that lies within another one, whose own shares are known. */
export function sharesWithin({ signal }: Pulse, outer: Span & Shares, inner: Span): Span & Shares {
  const { total } = outer;
  const before = outer.before + lightBetween(signal, outer.rise, inner.rise) / total;
  const after = outer.after + lightBetween(signal, inner.fall, outer.fall) / total;
  return { ...inner, total, before, inside: 1 - before - after, after };
}
