import { BLOCK } from './blocks';
import { type Samples, timeAt } from './samples';

/** A recording seen as light: turned upright, its base taken off, in units of `1 / scale`. Nothing is copied. */
export interface Signal {
  readonly samples: Samples;
  /** −1 where the recorded values fall with more light. */
  readonly sign: 1 | -1;
  readonly base: number;
  /** What the base rises by in a second, counted from `origin`; 0 where it does not drift. */
  readonly slope: number;
  readonly origin: number;
  readonly scale: number;
}

/** The light at a sample. */
export function lightAt(signal: Signal, i: number): number {
  const light = signal.sign * (signal.samples.values[i] as number) - signal.base;
  if (signal.slope === 0) return light * signal.scale;
  return (light - signal.slope * (timeAt(signal.samples, i) - signal.origin)) * signal.scale;
}

/** The same signal above another base, in other units; all in units of the signal. */
export function above(
  signal: Signal,
  base: { readonly level: number; readonly slope: number; readonly origin: number },
  height: number,
): Signal {
  return {
    ...signal,
    base: signal.base + base.level / signal.scale,
    slope: base.slope / signal.scale,
    origin: base.origin,
    scale: signal.scale / height,
  };
}

/** No sample of a block is brighter than this. */
export function blockTop(signal: Signal, block: number): number {
  const { samples, sign, base, slope, origin, scale } = signal;
  const { lows, highs } = samples.blocks;
  const top = sign > 0 ? (highs[block] as number) : -(lows[block] as number);
  if (slope === 0) return (top - base) * scale;
  const first = slope * (timeAt(samples, block * BLOCK) - origin);
  const last = slope * (timeAt(samples, Math.min(samples.count, (block + 1) * BLOCK) - 1) - origin);
  return (top - base - Math.min(first, last)) * scale;
}

/** No sample of a block is darker than this. */
function blockBottom(signal: Signal, block: number): number {
  const { samples, sign, base, slope, origin, scale } = signal;
  const { lows, highs } = samples.blocks;
  const bottom = sign > 0 ? (lows[block] as number) : -(highs[block] as number);
  if (slope === 0) return (bottom - base) * scale;
  const first = slope * (timeAt(samples, block * BLOCK) - origin);
  const last = slope * (timeAt(samples, Math.min(samples.count, (block + 1) * BLOCK) - 1) - origin);
  return (bottom - base - Math.max(first, last)) * scale;
}

/** Sum of the light of a block, where the base does not drift. */
function blockSum({ samples, sign, base, scale }: Signal, block: number): number {
  return (sign * (samples.blocks.sums[block] as number) - base * BLOCK) * scale;
}

/** Mean light of the samples from `from` up to and without `to`. */
export function meanLight(signal: Signal, from: number, to: number): number {
  let sum = 0;
  let i = from;
  while (i < to) {
    if (i % BLOCK === 0 && i + BLOCK <= to && signal.slope === 0) {
      sum += blockSum(signal, i / BLOCK);
      i += BLOCK;
    } else sum += lightAt(signal, i++);
  }
  return sum / (to - from);
}

/** First sample, going one way from `start` as far as `end`, that is at least so bright; `end` where none is. */
export function nextBright(signal: Signal, start: number, end: number, way: 1 | -1, light: number): number {
  const entry = way > 0 ? 0 : BLOCK - 1;
  let i = start;
  while (i !== end) {
    if (i % BLOCK === entry && Math.abs(end - i) >= BLOCK && blockTop(signal, (i - entry) / BLOCK) < light)
      i += way * BLOCK;
    else if (lightAt(signal, i) >= light) return i;
    else i += way;
  }
  return end;
}

/** First sample, going one way from `start` as far as `end`, that is darker; `end` where none is. */
export function nextDark(signal: Signal, start: number, end: number, way: 1 | -1, light: number): number {
  const entry = way > 0 ? 0 : BLOCK - 1;
  let i = start;
  while (i !== end) {
    if (
      i % BLOCK === entry &&
      Math.abs(end - i) >= BLOCK &&
      blockBottom(signal, (i - entry) / BLOCK) >= light
    )
      i += way * BLOCK;
    else if (lightAt(signal, i) < light) return i;
    else i += way;
  }
  return end;
}

/** Index of the brightest sample, the first of several. */
export function brightestAt(signal: Signal): number {
  const { count, blocks } = signal.samples;
  let at = 0;
  let top = -Infinity;
  for (let block = 0; block < blocks.sums.length; block++) {
    if (blockTop(signal, block) <= top) continue;
    for (let i = block * BLOCK; i < Math.min(count, (block + 1) * BLOCK); i++) {
      const light = lightAt(signal, i);
      if (light > top) {
        top = light;
        at = i;
      }
    }
  }
  return at;
}
