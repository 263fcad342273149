import { type Fail, isFail } from '../core/result';
import { NEVER_BY_CHANCE, SURE_OF } from './noiseChance';
import { inCell } from './crossing';
import { pulsesFrom } from './pulseExtent';
import type { Pulse } from './pulse';
import { timeAt } from './samples';
import { lightAt } from './signal';
import { durationOf, LOWEST_LEVEL, type Span, spanAt } from './spanAtLevel';
import { rippleIn } from './ripple';
import { medianOf, medianRead } from './meanOverTime';
import { wholeLight } from './tail';
import { HALF } from './traceTime';
import { type Unsure, unsureFrom } from './unsureLevels';

/** With fewer samples inside t0.5 a crossing that lies anywhere in its cell makes more than a twentieth of the duration. */
const FEW = 20;
/** What a highest sample lies above those beside it by less than moves a duration by less than a tenth. */
const ODD = 0.05;
/** A highest sample is odd where it stands out by so many times what the light changes by between the samples nearby, this many on either side. */
const FASTER = 3;
const NEARBY = 4;
/** Decay times after it sinks into the noise for which a tail is recorded so that a small loss to a shutter is known to a twentieth. */
const TELLS_TAIL = 4;
/** A rounded top stays within a thousandth of its height for a few hundredths of t0.5: what is flat for longer is cut off. */
const FLAT = 0.1;
/** Above this noise its hysteresis reaches over a twenty-fifth of the height, so that levels near the top have no room for it. */
const NOISY = 0.02;
/** What makes less than a hundredth of a duration, a height or a light is less than heads and meters repeat to. */
const DIPS = 0.01;
/** A base that is off by less moves the lowest level, a tenth, by less than a tenth of itself. */
const RESTS = 0.01;
/** A step of a recorder of ten bits: light that lies as near to the highest sample is the same light. */
const SAME = 1e-3;
/** What a recording ends at is read from the last of so many parts of it, so that little of a fall that goes on is in it. */
const PARTS = 64;
/** More samples at the end than these average no better than the words about them need. */
const MOST_AT_END = 20;
/** A few equal times are a recorder's jitter; where more than this share are equal, the times have lost digits. */
const ROUNDED = 0.05;
/** A recorder that drops one sample leaves a step of two, and jitter none of so many: that is a seam of two recordings. */
const JUMP = 3;
/** Fewer samples, as typed by hand at the corners of a shape, have no usual step. */
const SHOWS_STEP = 40;
/** Seconds: the longest flashes of studio heads last some hundredths of one, milliseconds read as seconds a thousand times so long. */
const LONG = 0.05;

/** The numbers of each doubt about a recording: shares of the height unless they say otherwise, and seconds. */
export interface DoubtNumbers {
  readonly 'starts on the flash': { readonly light: number };
  readonly 'unsure base': object;
  readonly drift: { readonly rise: number };
  readonly 'few samples': { readonly inside: number };
  /** Row of the highest sample, counted from 1, and what it lies above those beside it. */
  readonly 'odd sample': { readonly row: number; readonly above: number };
  /** Share of the duration at 0.5. */
  readonly 'flat top': { readonly share: number };
  readonly 'several flashes': { readonly count: number; readonly highest: number };
  readonly 'tail cut off': { readonly light: number };
  readonly 'rests elsewhere': { readonly light: number };
  readonly 'no lowest level': { readonly refusal: Fail };
  /** Light below which noise hides the tail, the share of all light that is carried on, and the seconds that are missing after it. */
  readonly 'tail in noise': { readonly light: number; readonly share: number; readonly missing: number };
  readonly dips: { readonly level: number; readonly lit: number; readonly duration: number };
  readonly noise: { readonly noise: number };
  /** The level from which on durations are unsure, and by what share of it the one at 0.9 is. */
  readonly 'high levels': Unsure;
  readonly 'equal times': { readonly rows: number };
  /** Seconds before a row, counted from 1, and between most of them. */
  readonly 'jump in the times': { readonly row: number; readonly gap: number; readonly usual: number };
  readonly lamp: { readonly hertz: number; readonly swing: number };
  readonly long: { readonly duration: number };
}
export type DoubtName = keyof DoubtNumbers;
/** What is doubtful about a recording, with its numbers. */
export type Doubt<K extends DoubtName = DoubtName> = {
  readonly [P in K]: { readonly doubt: P } & DoubtNumbers[P];
}[K];

type Found = Doubt | false;

const startDoubt = ({ signal, from, instant }: Pulse): Found => {
  const light = lightAt(signal, from);
  return !instant && light >= LOWEST_LEVEL && { doubt: 'starts on the flash', light };
};

const baseDoubt = ({ base }: Pulse): Found => !base.sure && { doubt: 'unsure base' };

function driftDoubt({ signal }: Pulse): Found {
  const { samples, slope, scale } = signal;
  const rise = slope * scale * (timeAt(samples, samples.count - 1) - timeAt(samples, 0));
  return Math.abs(rise) >= DIPS && { doubt: 'drift', rise };
}

function samplesDoubt({ rise, fall }: Span): Found {
  const inside = fall.cell - rise.cell;
  return inside < FEW && { doubt: 'few samples', inside };
}

/**
 * A highest sample that stands alone on a flash that is lit before and after it: a disturbance, from which all levels are then
 * counted. Where a fit through the samples about it found the height, or the light changes as fast nearby, it does no harm.
 */
function oddDoubt({ signal, noise, peak, foot }: Pulse): Found {
  const { count } = signal.samples;
  const light = (i: number): number => lightAt(signal, Math.min(Math.max(i, 0), count - 1));
  const beside = Math.max(light(peak - 1), light(peak + 1));
  const above = 1 - beside;
  if (count < SHOWS_STEP || beside <= foot.low || above <= Math.max(ODD, NEVER_BY_CHANCE * noise))
    return false;
  let fastest = 0;
  for (let k = 2; k <= NEARBY; k++)
    for (const way of [1, -1])
      fastest = Math.max(fastest, Math.abs(light(peak + k * way) - light(peak + (k - 1) * way)));
  return above > FASTER * fastest && { doubt: 'odd sample', row: peak + 1, above };
}

/** Longest time on end for which the light stays with the highest sample. */
function longestFlat({ signal, peak }: Pulse, { rise, fall }: Span): number {
  const least = lightAt(signal, peak) - SAME;
  let longest = 0;
  let start = NaN;
  for (let i = rise.cell; i <= fall.cell; i++) {
    const time = timeAt(signal.samples, i);
    if (lightAt(signal, i) < least) start = NaN;
    else if (Number.isNaN(start)) start = time;
    else longest = Math.max(longest, time - start);
  }
  return longest;
}

/** The time over which the fitted top stays within the noise. */
function flatFit({ signal, top, noise }: Pulse): number {
  return top.falls * 2 < noise ? timeAt(signal.samples, top.to) - timeAt(signal.samples, top.from) : 0;
}

function topDoubt(pulse: Pulse, half: Span): Found {
  const share = Math.max(longestFlat(pulse, half), flatFit(pulse)) / durationOf(half);
  return share > FLAT && { doubt: 'flat top', share };
}

function othersDoubt({ signal, earlier, later, foot, width, peak }: Pulse): Found {
  const count = 1 + pulsesFrom(signal, earlier, -1, foot, width) + pulsesFrom(signal, later, 1, foot, width);
  return count > 1 && { doubt: 'several flashes', count, highest: timeAt(signal.samples, peak) };
}

function endDoubt({ signal, to, later, foot, base, noise }: Pulse): Found {
  const { count } = signal.samples;
  if (later !== undefined) return false;
  const light = medianOf(
    signal,
    count - Math.max(1, Math.min(MOST_AT_END, Math.floor(count / PARTS))),
    count,
  );
  if (to === count - 1 && light > foot.low) return { doubt: 'tail cut off', light };
  if (to === count - 1 || !base.sure || Math.abs(light) <= Math.max(RESTS, noise)) return false;
  return { doubt: 'rests elsewhere', light };
}

function lowestDoubt(pulse: Pulse): Found {
  const refusal = spanAt(pulse, LOWEST_LEVEL);
  return isFail(refusal) && { doubt: 'no lowest level', refusal };
}

function hiddenDoubt(pulse: Pulse): Found {
  const whole = wholeLight(pulse);
  if (isFail(whole)) return false;
  const share = whole.carried / whole.total;
  const last = timeAt(pulse.signal.samples, pulse.signal.samples.count - 1);
  const missing = Math.max(0, whole.end.time + TELLS_TAIL * whole.decay - last);
  return share > DIPS && { doubt: 'tail in noise', light: whole.carried / whole.decay, share, missing };
}

/** Time within a span during which the light lies below the level, where it sinks clear of the noise. */
function dipsIn({ signal, noise }: Pulse, { rise, fall }: Span, level: number): number {
  const clear = level - SURE_OF * noise - SAME;
  let [dips, start, lowest] = [0, rise.time, level];
  for (let i = rise.cell; i <= fall.cell; i++) {
    const light = lightAt(signal, i);
    const next = lightAt(signal, i + 1);
    lowest = Math.min(lowest, next);
    if (light >= level && next < level) [start, lowest] = [inCell(signal, level, i).time, next];
    else if (light < level && next >= level && lowest < clear) dips += inCell(signal, level, i).time - start;
  }
  return dips;
}

function ringingDoubt(pulse: Pulse, level: number): Found {
  const span = spanAt(pulse, level);
  if (isFail(span)) return false;
  const duration = durationOf(span);
  const dips = dipsIn(pulse, span, level);
  return dips > DIPS * duration && { doubt: 'dips', level, lit: duration - dips, duration };
}

const noiseDoubt = ({ noise }: Pulse): Found => noise > NOISY && { doubt: 'noise', noise };

function highDoubt(pulse: Pulse): Found {
  const unsure = unsureFrom(pulse);
  return unsure !== undefined && { doubt: 'high levels', ...unsure };
}

/** Times that do not rise, or jump where they do. */
function timesDoubt({ signal: { samples } }: Pulse): Found {
  if (samples.times === undefined) return false;
  let rows = 0;
  let [gap, row] = [0, 0];
  for (let i = 1; i < samples.count; i++) {
    const step = timeAt(samples, i) - timeAt(samples, i - 1);
    if (step === 0) rows++;
    if (step > gap) [gap, row] = [step, i + 1];
  }
  if (rows > ROUNDED * samples.count) return { doubt: 'equal times', rows };
  const usual = medianRead(1, samples.count, (i) => timeAt(samples, i) - timeAt(samples, i - 1));
  return samples.count >= SHOWS_STEP && gap > JUMP * usual && { doubt: 'jump in the times', row, gap, usual };
}

function lampDoubt(pulse: Pulse): Found {
  const ripple = rippleIn(pulse);
  return ripple !== undefined && ripple.swing > RESTS && { doubt: 'lamp', ...ripple };
}

function longDoubt(half: Span): Found {
  const duration = durationOf(half);
  return duration > LONG && { doubt: 'long', duration };
}

/** What is doubtful about a pulse and its recording. */
export function doubtsOf(pulse: Pulse): readonly Doubt[] {
  const half = spanAt(pulse, HALF);
  const found: readonly Found[] = [
    startDoubt(pulse),
    baseDoubt(pulse),
    driftDoubt(pulse),
    !isFail(half) && samplesDoubt(half),
    oddDoubt(pulse),
    !isFail(half) && topDoubt(pulse, half),
    othersDoubt(pulse),
    endDoubt(pulse) || lowestDoubt(pulse),
    hiddenDoubt(pulse),
    ringingDoubt(pulse, HALF),
    ringingDoubt(pulse, LOWEST_LEVEL),
    noiseDoubt(pulse) || highDoubt(pulse),
    timesDoubt(pulse),
    lampDoubt(pulse),
    !isFail(half) && longDoubt(half),
  ];
  return found.filter((doubt) => doubt !== false);
}
