import { CLIP_LOSS } from '../../exposure/duration/shutter';
import { ABOVE_ZERO, LEVEL, NOT_NEGATIVE } from '../../exposure/core/range';
import { traceInside, traceTail } from '../../exposure/trace/traceShares';
import { traceClip, traceShutter } from '../../exposure/trace/traceShutter';
import { traceTable } from '../../exposure/trace/traceTable';
import { HALF, traceTime } from '../../exposure/trace/traceTime';
import { Q } from '../quantities';
import { traceNote } from '../traceNote';
import { define, type ExampleCell, maybe, one, series, withDefault } from '../types';

const times = series('times', 'Times of the samples, rising; or one cell, the sample interval', Q.wait);
const values = series('values', 'What the sensor recorded, in any unit, either way up', Q.signal);
const level = withDefault('level', 'Level as a fraction of the height: 0.5 for t0.5', Q.pulseLevel, HALF, {
  range: LEVEL,
});
const base = maybe(
  'base',
  'What the sensor shows without light, in the unit of the values; left out, it is found in the recording',
  Q.base,
);

const delay = withDefault('delay', 'From open to the flash', Q.wait, 0, { range: NOT_NEGATIVE });

/** A trapezoid: 1 ms up, 1 ms flat, 3 ms down. */
const TRAPEZOID: readonly ExampleCell[] = [
  [0, 0.001, 0.002, 0.003, 0.006, 0.007, 0.008],
  [0, 0, 1, 1, 0, 0, 0],
];
const RECORDING =
  'Paste time and value of each sample in two columns. Rows at the end that are blank or 0 in both are left off. Record from well before the flash until its tail is gone: 40 samples before the rise give a sure base. TRACENOTE says what is doubtful.';
const PULSE = 'The pulse with the highest peak counts; flashes before and after it are left out.';
const NEAR_THE_TOP =
  'Near the top of a slow fall a little noise is much time: with noise of 1 %, the duration at 0.9 of a flash that rises in 10 µs and falls in 1 ms is known to 3 %, and TRACENOTE says from which level on.';
const SAFETY =
  'A sensor near a flash head, and any wire to it, is kept clear of mains and capacitor: never open a head, as it holds a deadly charge long after it is unplugged. Keep to the maker’s instructions.';
const FIRST_RISE = 'The first rise is where the trace comes up through 2 % of its height.';
const HIDDEN =
  'Where noise hides the tail, the tail is carried on by the decay before it: TRACENOTE says how much that is.';
const SYNC =
  'Counts a shutter that is fully open from its first instant. A shutter faster than the camera’s sync speed cuts the picture, whatever this says.';
const words = ['photodiode', 'oscilloscope', 'recording', 'measured', 't0.5', 't0.1'];

export const traceRows = [
  define({
    id: 'TRACETIME',
    family: 'trace',
    gives: 'Duration of a flash at a level, from a recorded trace.',
    args: [times, values, level, base],
    result: Q.duration,
    answers: 'one',
    formula: 'last fall through the level − first rise through it; level · height above the base',
    run: traceTime,
    sources: ['pulse-shapes', 'flash-duration-article'],
    examples: [{ cells: TRAPEZOID, gives: 0.003, source: 'pulse-shapes' }],
    notes: `${RECORDING} ${PULSE} ${NEAR_THE_TOP}`,
    caution: SAFETY,
    words,
  }),
  define({
    id: 'TRACEINSIDE',
    family: 'trace',
    gives: 'Share of the light inside the duration at a level, from a recorded trace.',
    args: [times, values, level, base],
    result: Q.share,
    answers: 'one',
    formula: 'light from the first rise to the last fall through the level / all light of the pulse',
    run: traceInside,
    sources: ['pulse-shapes'],
    examples: [{ cells: TRAPEZOID, gives: 5 / 6, source: 'pulse-shapes' }],
    notes: `${RECORDING} ${PULSE} The rest of the light comes before and after: see TRACETABLE.`,
    caution: SAFETY,
    words,
  }),
  define({
    id: 'TRACETAIL',
    family: 'trace',
    gives: 'Share of the light after the duration at a level, from a recorded trace.',
    args: [times, values, level, base],
    result: Q.share,
    answers: 'one',
    formula: 'light after the last fall through the level / all light of the pulse',
    run: traceTail,
    sources: ['pulse-shapes'],
    examples: [{ cells: TRAPEZOID, gives: 0.125, source: 'pulse-shapes' }],
    notes: `${RECORDING} ${PULSE} What still comes after t0.5 blurs a fast subject. ${HIDDEN}`,
    caution: SAFETY,
    words: [...words, 'tail'],
  }),
  define({
    id: 'TRACETABLE',
    family: 'trace',
    gives: 'Durations and shares of the light at nine levels, from a recorded trace.',
    args: [times, values, base],
    result: Q.duration,
    answers: {
      table: [
        { name: 'duration', quantity: Q.duration },
        { name: 'share before', quantity: Q.share },
        { name: 'share inside', quantity: Q.share },
        { name: 'share after', quantity: Q.share },
      ],
      each: 'one for each of the levels 0.1, 0.2 … 0.9',
    },
    formula: 'as TRACETIME, TRACEINSIDE and TRACETAIL',
    run: traceTable,
    sources: ['pulse-shapes'],
    examples: [
      {
        cells: TRAPEZOID,
        gives: [1, 2, 3, 4, 5, 6, 7, 8, 9].map((tenths) => {
          const height = tenths / 10;
          const after = height ** 2 / 2;
          return [(1 + 4 * (1 - height)) / 1000, after / 3, 1 - (4 * after) / 3, after];
        }),
        source: 'pulse-shapes',
      },
    ],
    notes: `${RECORDING} ${PULSE} ${NEAR_THE_TOP}`,
    caution: SAFETY,
    words,
  }),
  define({
    id: 'TRACESHUTTER',
    family: 'trace',
    gives: 'Shortest opening that passes all but a little of a recorded flash.',
    args: [
      times,
      values,
      withDefault('loss', 'Stops that may be lost', Q.stopsStep, CLIP_LOSS, { range: ABOVE_ZERO }),
      delay,
      base,
    ],
    result: Q.duration,
    answers: 'one',
    formula: 'delay + time from the first rise until 2^(−loss) of the light has fallen',
    run: traceShutter,
    sources: ['pulse-shapes'],
    examples: [{ cells: [...TRAPEZOID, 1], gives: 0.0015 + 0.001 * 0.48, source: 'pulse-shapes' }],
    notes: `${RECORDING} ${PULSE} ${FIRST_RISE} ${HIDDEN}`,
    caution: SYNC,
    words: [...words, 'sync'],
  }),
  define({
    id: 'TRACECLIP',
    family: 'trace',
    gives: 'Stops lost of a recorded flash to a shutter that closes before it is over.',
    args: [
      times,
      values,
      one('open', 'Shutter time: how long the shutter is fully open', Q.shutterTime, { range: ABOVE_ZERO }),
      delay,
      base,
    ],
    result: Q.stops,
    answers: 'one',
    formula: '−log2 of the share of the light that falls up to open − delay after the first rise',
    run: traceClip,
    sources: ['pulse-shapes'],
    examples: [{ cells: [...TRAPEZOID, '1.98 ms'], gives: 1, source: 'pulse-shapes' }],
    notes: `${RECORDING} ${PULSE} ${FIRST_RISE} ${HIDDEN} Under noise of 1 % a loss of 0.1 stop is within 5 % in 95 of 100 recordings as long as 12 decay times of the flash, in 70 of 100 that end after 6.`,
    caution: SYNC,
    words: [...words, 'sync', 'cut', 'tail'],
  }),
  define({
    id: 'TRACENOTE',
    family: 'trace',
    gives: 'What is doubtful about a recorded trace, in words.',
    args: [times, values, base],
    result: Q.text,
    answers: 'one',
    formula:
      'too few samples, an odd one at the top, a flat top, several flashes, a tail cut off or hidden in noise, an unsure base, a drift, ringing, noise, times that do not rise or jump, the ripple of a lamp, times in milliseconds',
    run: traceNote,
    sources: ['trace-doubts'],
    examples: [
      {
        cells: TRAPEZOID,
        gives:
          'Fewer than 40 samples lie clearly before the flash, so the base is unsure: record more before it, or give the base. Only 2 samples lie inside the duration at 0.5: record with a shorter sample interval. The top is flat over 33 % of the duration at 0.5: the recording is clipped, or it is a square pulse.',
      },
    ],
    notes: RECORDING,
    words: [...words, 'warning', 'clipped', 'noise'],
  }),
];
