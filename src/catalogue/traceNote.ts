import { spoken } from '../exposure/core/numbers';
import { isFail, type Result } from '../exposure/core/result';
import type { Doubt, DoubtName } from '../exposure/trace/doubts';
import { traceDoubts } from '../exposure/trace/traceDoubts';
import { HALF } from '../exposure/trace/traceTime';

const NOTHING = 'Nothing doubtful was found in this recording';
/** What a recording gets in which nothing is doubtful. */
export const NOTHING_DOUBTFUL = `${NOTHING}.`;

const percent = (share: number): string => `${spoken(100 * share, 2)} %`;

/** A time in the unit that it is said in: "850 µs", "1.2 ms", "3 s". */
function spokenTime(seconds: number): string {
  if (Math.abs(seconds) < 1e-3) return `${spoken(1e6 * seconds, 3)} µs`;
  return Math.abs(seconds) < 1 ? `${spoken(1e3 * seconds, 3)} ms` : `${spoken(seconds, 3)} s`;
}

const leavesUnsure = ({ from, share }: Doubt<'high levels'>): string =>
  `leaves durations from ${spoken(from)} of the height up unsure, that at 0.9 by up to ${percent(share)}.`;

const SENTENCES: { readonly [K in DoubtName]: (found: Doubt<K>) => string } = {
  'starts on the flash': ({ light }) =>
    `The recording starts at ${percent(light)} of the height: levels below that count from its first sample.`,
  'unsure base': () =>
    'Fewer than 40 samples lie clearly before the flash, so the base is unsure: record more before it, or give the base.',
  drift: ({ rise }) =>
    `The base ${rise > 0 ? 'rises' : 'falls'} by ${percent(Math.abs(rise))} of the height along a straight line, which is taken off.`,
  'few samples': ({ inside }) =>
    `Only ${inside} ${inside === 1 ? 'sample lies' : 'samples lie'} inside the duration at 0.5: record with a shorter sample interval.`,
  'odd sample': ({ row, above }) =>
    `Row ${row}, the highest, stands ${percent(above)} of the height above the rows beside it, and all levels are counted from it: if it is a disturbance, take it out.`,
  'flat top': ({ share }) =>
    `The top is flat over ${percent(share)} of the duration at 0.5: the recording is clipped, or it is a square pulse.`,
  'several flashes': ({ count, highest }) =>
    `The recording shows ${count} flashes: the highest is measured, which peaks at ${spokenTime(highest)}.`,
  'tail cut off': ({ light }) =>
    `The recording ends at ${percent(light)} of the height: the light that follows is missing.`,
  'rests elsewhere': ({ light }) =>
    `After the flash the recording rests ${percent(Math.abs(light))} of the height ${light > 0 ? 'above' : 'below'} the base before it: low levels and shares are unsure.`,
  'no lowest level': ({ refusal }) => refusal.message,
  'tail in noise': ({ light, share, missing }) =>
    `The tail sinks into the noise at ${percent(light)} of the height: ${percent(share)} of the light comes after that, by the decay before it.${
      missing > 0 ? ` Small losses to a shutter are unsure: record ${spokenTime(missing)} longer.` : ''
    }`,
  dips: ({ level, lit, duration }) =>
    `The light dips below ${spoken(level)} of the height on the way: it lies above it for ${spokenTime(lit)} of a duration of ${spokenTime(duration)}.`,
  noise: ({ noise }) => `Noise is ${percent(noise)} of the height: durations at high levels are unsure.`,
  'high levels': (unsure) => `Noise ${leavesUnsure(unsure)}`,
  'equal times': ({ rows }) =>
    `${rows} rows have the same time as the row before: the times do not rise there, are they rounded?`,
  'jump in the times': ({ row, gap, usual }) =>
    `Row ${row} comes ${spokenTime(gap)} after the row before it, where most come after ${spokenTime(usual)}: are these two recordings in one?`,
  lamp: ({ hertz, swing }) =>
    `The light beside the flash swings by ${percent(swing)} of the height at ${hertz} Hz, as that of a lamp on the mains: switch it off.`,
  long: ({ duration }) =>
    `The duration at 0.5 is ${spokenTime(duration)}, longer than a flash is: are the times in milliseconds?`,
};

/** A doubt in a plain sentence that says what to do. */
export const doubtSentence = <K extends DoubtName>(found: Doubt<K>): string =>
  SENTENCES[found.doubt as K](found);

/** Doubts in their sentences; levels above a half alone are an aside, as heads are judged by t0.5 and t0.1, which are known. */
export function noteOf(doubts: readonly Doubt[]): string {
  const [first, second] = doubts;
  if (first === undefined) return NOTHING_DOUBTFUL;
  if (second === undefined && first.doubt === 'high levels' && first.from > HALF)
    return `${NOTHING}, but noise ${leavesUnsure(first)}`;
  return doubts.map((found) => doubtSentence(found)).join(' ');
}

/**
 * What is doubtful about a recording, in plain sentences.
 *
 * @returns the sentences, or a fixed one where nothing is doubtful. A recording that the other functions refuse for what is
 * in it has their reason as its note; only missing rows are refused (`unreadable`).
 */
export function traceNote(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  base?: number,
): Result<string> {
  const doubts = traceDoubts(times, values, base);
  if (isFail(doubts)) return doubts.fail === 'unreadable' ? doubts : doubts.message;
  return noteOf(doubts);
}
