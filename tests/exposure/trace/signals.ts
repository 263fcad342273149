import { readSamples } from '../../../src/exposure/trace/samples';
import type { Signal } from '../../../src/exposure/trace/signal';
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
