import { BLOCK } from './sampleBlocks';
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

const ofBlock = (all: Float64Array, block: number): number => all[block] as number;

/** No sample of a block is brighter than this (`side` 1), or darker (−1). */
function blockBound(signal: Signal, block: number, side: 1 | -1): number {
  const { samples, sign, base, slope, origin, scale } = signal;
  const { lows, highs } = samples.blocks;
  const bound = sign * ofBlock(sign === side ? highs : lows, block);
  if (slope === 0) return (bound - base) * scale;
  const first = slope * (timeAt(samples, block * BLOCK) - origin);
  const last = slope * (timeAt(samples, Math.min(samples.count, (block + 1) * BLOCK) - 1) - origin);
  return (bound - base - (side > 0 ? Math.min(first, last) : Math.max(first, last))) * scale;
}

/** Sum of the light of a block, where the base does not drift. */
function blockSum({ samples, sign, base, scale }: Signal, block: number): number {
  return (sign * ofBlock(samples.blocks.sums, block) - base * BLOCK) * scale;
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

/** First sample, going one way, on one side of a light: at least so bright (`side` 1), or darker (−1). */
function nextOn(
  side: 1 | -1,
  signal: Signal,
  start: number,
  end: number,
  way: 1 | -1,
  light: number,
): number {
  const bright = side > 0;
  const entry = way > 0 ? 0 : BLOCK - 1;
  let i = start;
  while (i !== end) {
    if (
      i % BLOCK === entry &&
      Math.abs(end - i) >= BLOCK &&
      blockBound(signal, (i - entry) / BLOCK, side) >= light !== bright
    )
      i += way * BLOCK;
    else if (lightAt(signal, i) >= light === bright) return i;
    else i += way;
  }
  return end;
}

/** First sample, going one way from `start` as far as `end`, that is at least so bright; `end` where none is. */
export const nextBright = (signal: Signal, start: number, end: number, way: 1 | -1, light: number): number =>
  nextOn(1, signal, start, end, way, light);

/** First sample, going one way from `start` as far as `end`, that is darker; `end` where none is. */
export const nextDark = (signal: Signal, start: number, end: number, way: 1 | -1, light: number): number =>
  nextOn(-1, signal, start, end, way, light);

/** Index of the brightest sample, the first of several. */
export function brightestAt(signal: Signal): number {
  const { count, blocks } = signal.samples;
  let at = 0;
  let top = -Infinity;
  for (let block = 0; block < blocks.sums.length; block++) {
    if (blockBound(signal, block, 1) <= top) continue;
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
