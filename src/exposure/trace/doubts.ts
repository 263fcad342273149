import { spoken } from '../core/numbers';
import { isFail } from '../core/result';
import { SURE_OF } from './chance';
import { inCell } from './crossing';
import { pulsesFrom } from './extent';
import type { Pulse } from './pulse';
import { timeAt } from './samples';
import { lightAt } from './signal';
import { durationOf, LOWEST_LEVEL, type Span, spanAt } from './span';
import { medianOf } from './stretch';

/** Fewer samples inside t0.5 show no shape. */
const FEW = 20;
/** A top that is flat over more than this share of t0.5 is not that of a flash. */
const FLAT = 0.1;
/** Noise above this share of the height is worth a word. */
const NOISY = 0.02;
/** Dips that take less than this share of a duration are not worth a word. */
const DIPS = 0.01;
/** A recording that comes to rest within this share of the height has kept its base. */
const RESTS = 0.01;
/** Light within this share of the height of the highest sample is the same light. */
const SAME = 1e-3;
/** What a recording ends at is read from the last of so many parts of it, so that little of a fall that goes on is in it. */
const PARTS = 64;
/** More samples at the end than these average no better than the words about them need. */
const MOST_AT_END = 20;
/** A few equal times are a recorder's jitter; where more than this share are equal, the times have lost digits. */
const ROUNDED = 0.05;

const percent = (share: number): string => `${spoken(100 * share, 2)} %`;

/** A time in the unit that it is said in: "850 µs", "1.2 ms", "3 s". */
function spokenTime(seconds: number): string {
  if (Math.abs(seconds) < 1e-3) return `${spoken(1e6 * seconds, 3)} µs`;
  return Math.abs(seconds) < 1 ? `${spoken(1e3 * seconds, 3)} ms` : `${spoken(seconds, 3)} s`;
}

type Doubt = string | false;

const startDoubt = ({ signal, from, instant }: Pulse): Doubt => {
  const light = lightAt(signal, from);
  return (
    !instant &&
    light >= LOWEST_LEVEL &&
    `The recording starts at ${percent(light)} of the height: levels below that count from its first sample.`
  );
};

const baseDoubt = ({ base }: Pulse): Doubt =>
  !base.sure &&
  'Fewer than 40 samples lie before the flash, so the base is unsure: record more before it, or give the base.';

function driftDoubt({ signal }: Pulse): Doubt {
  const { samples, slope, scale } = signal;
  const drift = slope * scale * (timeAt(samples, samples.count - 1) - timeAt(samples, 0));
  if (Math.abs(drift) < DIPS) return false;
  return `The base ${drift > 0 ? 'rises' : 'falls'} by ${percent(Math.abs(drift))} of the height along a straight line, which is taken off.`;
}

function samplesDoubt({ rise, fall }: Span): Doubt {
  const inside = fall.cell - rise.cell;
  return (
    inside < FEW &&
    `Only ${inside} ${inside === 1 ? 'sample lies' : 'samples lie'} inside the duration at 0.5: record with a shorter sample interval.`
  );
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

function topDoubt(pulse: Pulse, half: Span): Doubt {
  const flat = Math.max(longestFlat(pulse, half), flatFit(pulse)) / durationOf(half);
  return (
    flat > FLAT &&
    `The top is flat over ${percent(flat)} of the duration at 0.5: the recording is clipped, or it is a square pulse.`
  );
}

function othersDoubt({ signal, earlier, later, foot, width, peak }: Pulse): Doubt {
  const count = 1 + pulsesFrom(signal, earlier, -1, foot, width) + pulsesFrom(signal, later, 1, foot, width);
  return (
    count > 1 &&
    `The recording shows ${count} flashes: the highest is measured, which peaks at ${spokenTime(timeAt(signal.samples, peak))}.`
  );
}

function tailDoubt({ signal, to, later, foot, base, noise }: Pulse): Doubt {
  const { count } = signal.samples;
  if (later !== undefined) return false;
  const rest = medianOf(signal, count - Math.max(1, Math.min(MOST_AT_END, Math.floor(count / PARTS))), count);
  if (to === count - 1 && rest > foot.low)
    return `The recording ends at ${percent(rest)} of the height: the light that follows is missing.`;
  if (to === count - 1 || !base.sure || Math.abs(rest) <= Math.max(RESTS, noise)) return false;
  return `After the flash the recording rests ${percent(Math.abs(rest))} of the height ${rest > 0 ? 'above' : 'below'} the base before it: low levels and shares are unsure.`;
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

function ringingDoubt(pulse: Pulse, level: number): Doubt {
  const span = spanAt(pulse, level);
  if (isFail(span)) return false;
  const duration = durationOf(span);
  const dips = dipsIn(pulse, span, level);
  return (
    dips > DIPS * duration &&
    `The light dips below ${spoken(level)} of the height on the way: it lies above it for ${spokenTime(duration - dips)} of a duration of ${spokenTime(duration)}.`
  );
}

const noiseDoubt = ({ noise }: Pulse): Doubt =>
  noise > NOISY && `Noise is ${percent(noise)} of the height: durations at high levels are unsure.`;

function timesDoubt({ signal: { samples } }: Pulse): Doubt {
  if (samples.times === undefined) return false;
  let alike = 0;
  for (let i = 1; i < samples.count; i++) if (timeAt(samples, i) === timeAt(samples, i - 1)) alike++;
  return (
    alike > ROUNDED * samples.count &&
    `${alike} rows have the same time as the row before: the times do not rise there, are they rounded?`
  );
}

/** What is doubtful about a pulse and its recording, a sentence each. */
export function doubtsOf(pulse: Pulse): readonly string[] {
  const half = spanAt(pulse, 0.5);
  const lowest = spanAt(pulse, LOWEST_LEVEL);
  const found: readonly Doubt[] = [
    startDoubt(pulse),
    baseDoubt(pulse),
    driftDoubt(pulse),
    !isFail(half) && samplesDoubt(half),
    !isFail(half) && topDoubt(pulse, half),
    othersDoubt(pulse),
    tailDoubt(pulse) || (isFail(lowest) && lowest.message),
    ringingDoubt(pulse, 0.5),
    ringingDoubt(pulse, LOWEST_LEVEL),
    noiseDoubt(pulse),
    timesDoubt(pulse),
  ];
  return found.filter((doubt) => doubt !== false);
}
