import type { Base } from './base';
import { WITHIN_CHANCE } from './noiseChance';
import { tracePointBefore } from './lightAtTime';
import type { Pulse } from './pulse';
import { timeAt } from './samples';
import { meanLight } from './signal';
import { type Tail, tailOf } from './tail';

/** So many decay times after a tail begins, what is left of it is less than half the noise: little, and known well enough. */
const RESTS_AFTER = 2;

/** Mean light of a tail between two instants, as it is carried on. */
function meanOfTail({ end, level, decay }: Tail, from: number, to: number): number {
  const left = (time: number): number => Math.exp((end.time - time) / decay);
  return (level * decay * (left(from) - left(to))) / (to - from);
}

/**
 * The base of a recording, with what it comes back to after the flash.
 *
 * Forty samples tell a base to a sixth of the noise, which adds up over a tail: where the samples after it rest at the same
 * base within chance, the mean of both is taken. Where they rest elsewhere, the samples before the flash stand.
 */
export function baseWithRest(pulse: Pulse): Base {
  const { signal, base, noise, top, later } = pulse;
  const { samples } = signal;
  const tail =
    base.error > 0 && base.slope === 0 && base.sure && later === undefined ? tailOf(pulse) : undefined;
  if (tail === undefined) return base;
  const first = tracePointBefore(signal, tail.end.time + RESTS_AFTER * tail.decay).cell + 1;
  const count = samples.count - first;
  if (count < 2) return base;
  const [from, to] = [timeAt(samples, first), timeAt(samples, samples.count - 1)];
  const rest = meanLight(signal, first, samples.count) - (to > from ? meanOfTail(tail, from, to) : 0);
  const error = base.error / top.height;
  if (Math.abs(rest) > WITHIN_CHANCE * Math.hypot(noise / Math.sqrt(count), error)) return base;
  const before = (noise / error) ** 2;
  const level = base.level + (rest * top.height * count) / (before + count);
  return { ...base, level, error: base.error / Math.sqrt(1 + count / before) };
}
