import type { Base } from '../../../src/exposure/trace/base';
import type { Pulse } from '../../../src/exposure/trace/pulse';
import { readSamples } from '../../../src/exposure/trace/samples';
import { brightestAt, type Signal } from '../../../src/exposure/trace/signal';
import { value } from '../support';

/** Values as a signal, each half a second after the one before unless times are given, just as they are unless told otherwise. */
export const signalOf = (
  values: ArrayLike<number>,
  { times = [0.5], ...rest }: Partial<Signal> & { readonly times?: ArrayLike<number> } = {},
): Signal => ({
  samples: value(readSamples(times, values)),
  sign: 1,
  base: 0,
  slope: 0,
  origin: 0,
  scale: 1,
  ...rest,
});

/** Values at so many times from a first to a last, which a function of the time gives. */
export function signalFrom(
  light: (t: number) => number,
  {
    from = 0,
    to = 1,
    count = 1001,
    ...rest
  }: Partial<Signal> & { from?: number; to?: number; count?: number } = {},
): Signal {
  const times = Float64Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
  return signalOf(times.map(light), { times, ...rest });
}

/** A base of which nothing is doubtful. */
export const DARK: Base = { level: 0, slope: 0, origin: 0, noise: 0, error: 0, sure: true };

/** A pulse as it is read where nothing is doubtful, with what is told otherwise: all of the signal is its light. */
export function pulseOf(signal: Signal, told: Partial<Pulse> = {}): Pulse {
  const peak = brightestAt(signal);
  return {
    signal,
    base: DARK,
    noise: 0,
    peak,
    top: { height: 1, doubt: 0, at: peak, from: peak, to: peak, falls: 0 },
    foot: { low: 0.02, high: 0.02 },
    width: 0,
    from: 0,
    to: signal.samples.count - 1,
    instant: false,
    earlier: undefined,
    later: undefined,
    ...told,
  };
}
