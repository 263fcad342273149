import { SLACK } from '../core/numbers';
import { fail, isFail, type Result } from '../core/result';
import { type Base, baseGiven, baseOf } from './base';
import { highestOfNoise } from './noiseChance';
import { type Foot, footOf, lightEnd, sideOf, valley, widthOf } from './pulseExtent';
import { instantRise } from './instantRise';
import { bendNoise } from './noise';
import { topOf, type Top } from './peak';
import { polarityOf } from './polarity';
import { baseWithRest } from './baseWithRest';
import { readSamples, type Samples } from './samples';
import { above, brightestAt, type Signal } from './signal';

/** The highest pulse of a recording. */
export interface Pulse {
  /** The recording above its base, in heights of the pulse. */
  readonly signal: Signal;
  readonly base: Base;
  /** Standard deviation of a sample, in heights. */
  readonly noise: number;
  readonly peak: number;
  readonly top: Top;
  readonly foot: Foot;
  /** Width at the foot in seconds, before gaps are bridged. */
  readonly width: number;
  /** First and last sample of its light. */
  readonly from: number;
  readonly to: number;
  /** The flash rises from dark to its first sample at once. */
  readonly instant: boolean;
  /** First sample of the pulse before it, and of the one after it. */
  readonly earlier: number | undefined;
  readonly later: number | undefined;
}

const NO_RISE = 'The trace never rises above its base: is the flash in the recording?';

/** The recording from 0 at its lowest to 1 at its highest, light upward. */
function upright(samples: Samples, base: number | undefined): { signal: Signal; peak: number } {
  const sign = polarityOf(samples, base);
  const lowest = sign > 0 ? samples.lowest : -samples.highest;
  const scale = 1 / (samples.highest - samples.lowest);
  const signal: Signal = { samples, sign, base: lowest, slope: 0, origin: 0, scale };
  return { signal, peak: brightestAt(signal) };
}

/** Samples after the peak that show the noise on the flash: so many tell it to a twentieth. */
const ON_FLASH = 500;
/** The noise on the flash is taken where it is so many times that at the base: two measures of one noise never differ so much. */
const MORE = 1.5;
/** A flash stands out where it is so many times what noise alone would come to in as many samples; noise that is not quite Gaussian does not. */
const CLEAR = 1.5;

/** Noise of the recording: that of the base, or that on the flash where a recorder which cuts off at 0 hides the other. */
function noiseOf(signal: Signal, peak: number, atBase: number): number {
  if (peak + ON_FLASH > signal.samples.count) return atBase;
  const onFlash = bendNoise(signal, peak, peak + ON_FLASH);
  return onFlash > MORE * atBase ? onFlash : atBase;
}

/**
 * Reads a recording into its highest pulse.
 *
 * @param base - what the recording shows without light, in the unit of the values; measured where it is left out.
 * @returns the pulse; refusals of `readSamples`, and `no-answer` where nothing rises above the base and its noise.
 */
export function readPulse(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  base: number | undefined,
): Result<Pulse> {
  const samples = readSamples(times, values);
  if (isFail(samples)) return samples;
  if (!Number.isFinite(1 / (samples.highest - samples.lowest))) return fail('no-answer', NO_RISE);
  const whole = upright(samples, base);
  const dark =
    base === undefined
      ? baseOf(whole.signal, whole.peak)
      : baseGiven(
          whole.signal,
          whole.peak,
          (whole.signal.sign * base - whole.signal.base) * whole.signal.scale,
        );
  const noise = noiseOf(whole.signal, whole.peak, dark.noise);
  const flat = above(whole.signal, dark, 1);
  const peak = dark.slope === 0 ? whole.peak : brightestAt(flat);
  const top = topOf(flat, peak, noise);
  if (!(top.height > Math.max(CLEAR * highestOfNoise(samples.count) * noise, SLACK)))
    return fail('no-answer', NO_RISE);
  const pulse = pulseAbove(whole.signal, dark, peak, top, noise);
  const rested = baseWithRest(pulse);
  if (rested.level === dark.level) return pulse;
  const height = top.height - (rested.level - dark.level);
  return pulseAbove(whole.signal, rested, peak, { ...top, height }, noise);
}

/** @param noise - standard deviation of a sample, in units of the signal. */
const pulseAbove = (signal: Signal, base: Base, peak: number, top: Top, noise: number): Pulse =>
  pulseAt(above(signal, base, top.height), peak, top, base, noise / top.height);

function pulseAt(signal: Signal, peak: number, top: Top, base: Base, noise: number): Pulse {
  const last = signal.samples.count - 1;
  const foot = footOf(noise, last + 1);
  const width = widthOf(signal, peak, foot);
  const left = sideOf(signal, peak, -1, foot, width);
  const right = sideOf(signal, peak, 1, foot, width);
  const span = right.edge - left.edge;
  const error = base.error / top.height;
  const instant = instantRise(signal, left.edge, right.edge, noise);
  const before = left.next === undefined ? 0 : valley(signal, left.edge, left.next);
  const after = right.next === undefined ? last : valley(signal, right.edge, right.next);
  return {
    signal,
    base,
    noise,
    peak,
    top,
    foot,
    width,
    from: instant ?? lightEnd(signal, left.edge, before, span, noise, error),
    instant: instant !== undefined,
    to: lightEnd(signal, right.edge, after, span, noise, error),
    earlier: left.next,
    later: right.next,
  };
}
