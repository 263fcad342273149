import { highestOfNoise, WITHIN_CHANCE } from './noiseChance';
import { timeAt } from './samples';
import { lightAt, meanLight, nextBright, nextDark, type Signal } from './signal';

/** A pulse ends where it stays below this share of its height for longer than its own width there. */
const FOOT = 0.02;
/** A valley is looked for in so many pieces: fine beside any valley that parts two pulses, and each averages its noise. */
const PIECES = 64;
/** The width of a pulse is cut into so many stretches, so that one that dips by chance does not end its light. */
const QUARTERS = 4;
/** A tail falls by more than a tenth in a quarter of the width of its pulse; what falls less has come to rest. */
const FALLS = 0.9;

/** Levels that tell a pulse from what is around it. */
export interface Foot {
  /** 2 % of the height, or three times the noise. */
  readonly low: number;
  /** What noise alone does not reach in so many samples: one standard deviation more than its highest is likely to be. */
  readonly high: number;
}

export function footOf(noise: number, count: number): Foot {
  const low = Math.max(FOOT, WITHIN_CHANCE * noise);
  return { low, high: Math.max(low, (highestOfNoise(count) + 1) * noise) };
}

/** One side of a pulse: its last sample going outward, and the first sample of the next pulse, if there is one. */
export interface PulseSide {
  readonly edge: number;
  readonly next: number | undefined;
}

/** Width of the pulse at its foot, before anything is bridged, in seconds. */
export function widthOf(signal: Signal, peak: number, foot: Foot): number {
  const left = nextDark(signal, peak, 0, -1, foot.low);
  const right = nextDark(signal, peak, signal.samples.count - 1, 1, foot.low);
  return timeAt(signal.samples, right) - timeAt(signal.samples, left);
}

/** Goes outward from a sample of the pulse, over gaps that are no longer than the pulse is wide. */
export function sideOf(signal: Signal, start: number, way: 1 | -1, foot: Foot, width: number): PulseSide {
  const { samples } = signal;
  const end = way > 0 ? samples.count : -1;
  let edge = start;
  for (;;) {
    const i = nextDark(signal, edge, end, way, foot.low);
    edge = i - way;
    const next = nextBright(signal, i, end, way, foot.high);
    if (next === end) return { edge, next: undefined };
    const dark = timeAt(samples, next - way) - timeAt(samples, i);
    if (Math.abs(dark) > width) return { edge, next };
    edge = next;
  }
}

/** How many pulses follow, going outward from the first sample of the next one. */
export function pulsesFrom(
  signal: Signal,
  next: number | undefined,
  way: 1 | -1,
  foot: Foot,
  width: number,
): number {
  let count = 0;
  for (let at = next; at !== undefined; at = sideOf(signal, at, way, foot, width).next) count++;
  return count;
}

/** Mean light of so many samples, going one way from the first of them. */
const meanFrom = (signal: Signal, start: number, way: 1 | -1, length: number): number =>
  way > 0 ? meanLight(signal, start, start + length) : meanLight(signal, start - length + 1, start + 1);

/** The sample in the valley between a pulse and the next one: the middle of the darkest of up to 64 pieces. */
export function valley(signal: Signal, edge: number, next: number): number {
  const way = next > edge ? 1 : -1;
  const length = Math.max(1, Math.floor(Math.abs(next - edge) / PIECES));
  let darkest = Infinity;
  let at = edge;
  for (let i = edge; (next - i) * way > length; i += length * way) {
    const mean = meanFrom(signal, i, way, length);
    if (mean < darkest) {
      darkest = mean;
      at = i + (length >> 1) * way;
    }
  }
  return at;
}

/** The first sample beyond the edge that has come down to the base, or the last of so many where none has. */
function downFrom(signal: Signal, edge: number, way: 1 | -1, most: number): number {
  for (let k = 1; k < most; k++) if (lightAt(signal, edge + k * way) <= 0) return edge + k * way;
  return edge + most * way;
}

/**
 * Last sample that belongs to the light of the pulse, going outward from its edge as far as `limit`.
 *
 * What lies below the foot is light as long as it falls: it ends where, for about the width of the pulse, the means of
 * stretches of a quarter of that width no longer fall (each more than nine tenths of the one before), cannot be told from
 * the base, or lie below it.
 */
export function lightEnd(
  signal: Signal,
  edge: number,
  limit: number,
  span: number,
  noise: number,
  baseError: number,
): number {
  const way = limit > edge ? 1 : -1;
  const size = Math.max(1, Math.floor(span / QUARTERS));
  const least = downFrom(signal, edge, way, Math.min(size, Math.abs(limit - edge)));
  const farther = (at: number): number => ((at - least) * way > 0 ? at : least);
  let still = 0;
  let before = Infinity;
  for (let at = edge; (limit - at) * way > 0; at += size * way) {
    const length = Math.min(size, Math.abs(limit - at));
    const mean = meanFrom(signal, at + way, way, length);
    const doubt = WITHIN_CHANCE * (noise / Math.sqrt(length) + baseError);
    still = mean <= doubt || mean > FALLS * before ? still + 1 : 0;
    if (still === QUARTERS) return farther(at - (QUARTERS - 1) * size * way);
    before = mean;
  }
  return limit;
}
