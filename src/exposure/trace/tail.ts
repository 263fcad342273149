import { fail, isFail, type Result } from '../core/result';
import { WITHIN_CHANCE } from './noiseChance';
import { crossingOf } from './crossing';
import { lightBetween, type TracePoint, tracePointAt, tracePointBefore } from './lightAtTime';
import type { Pulse } from './pulse';
import { LEAST_LEVEL, LOWEST_LEVEL, type Shares, type Span, spanAt } from './spanAtLevel';

/** How a pulse goes on where noise hides it: as an exponential. */
export interface Tail {
  /** Where the pulse sinks below three times the noise. */
  readonly end: TracePoint;
  /** Its light there, in heights. */
  readonly level: number;
  /** Seconds in which the light falls to 1/e. */
  readonly decay: number;
}

/** All light of a pulse, in heights × seconds. */
export interface WholeLight {
  readonly rise: TracePoint;
  /** Where its tail begins; its last sample where none is carried on. */
  readonly end: TracePoint;
  /** Light after the end, and the seconds in which it falls to 1/e. */
  readonly carried: number;
  readonly decay: number;
  readonly total: number;
}

/**
 * From so much of the height down, the light of a flash falls by its slowest decay time alone; and a factor of 30 % over three
 * times the usual noise of 1 % is a stretch that tells that time.
 */
const DECAYS_FROM = 0.3;

/**
 * The tail that noise hides, from where the pulse sinks below three times the noise. Undefined where there is no noise, or the
 * pulse is not recorded down to there.
 *
 * Its decay time is that of the stretch before, from 30 % of the height, or from a factor e above its end where that is more:
 * for an exponential, the light between two instants over what it falls by between them.
 */
export function tailOf(pulse: Pulse): Tail | undefined {
  const level = WITHIN_CHANCE * pulse.noise;
  const from = Math.max(DECAYS_FROM, Math.E * level);
  if (level === 0 || from >= 1) return undefined;
  const start = crossingOf(pulse, from, -1, pulse.to).place;
  const end = crossingOf(pulse, level, -1, pulse.to).place;
  if (start === undefined || end === undefined) return undefined;
  return { end, level, decay: lightBetween(pulse.signal, start, end) / (from - level) };
}

/** All light of the pulse; `no-answer` where the recording ends before enough of it. */
export function wholeLight(pulse: Pulse): Result<WholeLight> {
  const enough = spanAt(pulse, Math.max(LOWEST_LEVEL, LEAST_LEVEL * pulse.noise));
  if (isFail(enough)) return enough;
  const rise = tracePointAt(pulse.signal, pulse.from);
  const { end, level, decay } = tailOf(pulse) ?? {
    end: tracePointAt(pulse.signal, pulse.to),
    level: 0,
    decay: 0,
  };
  const carried = level * decay;
  const total = lightBetween(pulse.signal, rise, end) + carried;
  if (total > 0) return { rise, end, carried, decay, total };
  return fail('no-answer', 'The trace shows no light above its base on the whole.');
}

/** The whole pulse with its shares, to begin with: what is carried on comes after it. */
export function wholeWithShares({ rise, end, carried, total }: WholeLight): Span & Shares {
  const after = carried / total;
  return { rise, fall: end, total, before: 0, inside: 1 - after, after };
}

/** Light that is still to come at an instant. */
export function lightAfter({ signal }: Pulse, { end, carried, decay }: WholeLight, time: number): number {
  if (time >= end.time) return carried === 0 ? 0 : carried * Math.exp((end.time - time) / decay);
  return lightBetween(signal, tracePointBefore(signal, time), end) + carried;
}
