import { flashLevel } from '../../exposure/duration/flashLevel';
import { EXPONENT, reciprocityTime } from '../../exposure/duration/reciprocity';
import { CLIP_LOSS, flashClip, flashShare, shutterForFlash } from '../../exposure/duration/shutter';
import { ABOVE_ZERO, LEVEL, NOT_NEGATIVE } from '../../exposure/core/range';
import { Q } from '../quantities';
import { define, one, withDefault } from '../types';

const above = { range: ABOVE_ZERO };
const flash = one('duration', 'Flash duration', Q.flashDuration, above);
const level = one('level', 'Level of the duration: 0.5 for t0.5, 0.1 for t0.1', Q.pulseLevel, {
  range: LEVEL,
});
const open = one('open', 'Shutter time: how long the shutter is fully open', Q.shutterTime, above);
const delay = withDefault('delay', 'From open to the flash', Q.wait, 0, { range: NOT_NEGATIVE });
const EXPONENTIAL =
  'Holds for a pulse that decays exponentially from its peak. A real pulse rises first: its t0.1 is nearer to 2.6 times its t0.5 than to the 3.32 times of a decay alone (2 times where it rises as slowly as it falls, up to 3 by what makers print). Heads that cut the pulse electronically end sooner still: measure a trace where it matters.';
const SYNC =
  'A shutter shorter than the flash loses light; a speed above the camera’s sync speed is theoretical with a focal-plane shutter.';

export const durationRows = [
  define({
    id: 'FLASHLEVEL',
    family: 'duration',
    gives: 'A flash duration at another level, for a pulse that decays exponentially.',
    args: [
      one('duration', 'Flash duration', Q.flashDuration, above),
      one('from', 'Level at which it was measured: 0.5 for t0.5', Q.pulseLevel, { range: LEVEL }),
      one('to', 'Level wanted: 0.1 for t0.1', Q.pulseLevel, { range: LEVEL }),
    ],
    result: Q.duration,
    answers: 'one',
    formula: 'duration · ln(1 / to) / ln(1 / from)',
    run: flashLevel,
    sources: ['exponential-decay', 'flash-duration-article', 'flash-manual', 'common-practice'],
    examples: [{ cells: ['1 ms', 0.5, 0.1], gives: 0.0033219280948873623 }],
    notes: EXPONENTIAL,
    words: ['t0.5', 't0.1', 't.5', 't.1', 'convert'],
  }),
  define({
    id: 'FLASHSHARE',
    family: 'duration',
    gives: 'Share of the flash that falls while the shutter is open.',
    args: [flash, level, open, delay],
    result: Q.share,
    answers: 'one',
    formula: '1 − e^(−(open − delay) / τ), τ = duration / ln(1 / level)',
    run: flashShare,
    sources: ['exponential-decay'],
    examples: [
      { cells: ['1/250 exact', 0.1, '1/250 exact'], gives: 0.9 },
      { cells: ['1/250 exact', 0.5, '1/250 exact'], gives: 0.5 },
    ],
    notes: `${EXPONENTIAL} Half the light of such a flash is still to come at t0.5.`,
    caution: SYNC,
    words: ['sync', 'tail', 'cut'],
  }),
  define({
    id: 'FLASHCLIP',
    family: 'duration',
    gives: 'Stops lost to a shutter that closes before the flash is over.',
    args: [flash, level, open, delay],
    result: Q.stops,
    answers: 'one',
    formula: '−log2 of the share of the flash that falls while the shutter is open',
    run: flashClip,
    sources: ['exponential-decay'],
    examples: [{ cells: ['1/250 exact', 0.5, '1/250 exact'], gives: 1 }],
    notes: EXPONENTIAL,
    caution: SYNC,
    words: ['sync', 'tail', 'cut'],
  }),
  define({
    id: 'SHUTTERFORFLASH',
    family: 'duration',
    gives: 'Shortest opening that passes the flash but for a small loss.',
    args: [flash, level, withDefault('loss', 'Stops that may be lost', Q.stopsStep, CLIP_LOSS, above), delay],
    result: Q.duration,
    answers: 'one',
    formula: 'delay − τ · ln(1 − 2^(−loss)), τ = duration / ln(1 / level)',
    run: shutterForFlash,
    sources: ['exponential-decay'],
    examples: [{ cells: ['1 ms', 0.5, 1], gives: 0.001 }],
    notes: EXPONENTIAL,
    caution: SYNC,
    words: ['sync', 'slowest shutter', 'tail'],
  }),
  define({
    id: 'RECIPROCITYTIME',
    family: 'duration',
    gives: 'Exposure time for film that lags in long exposures.',
    args: [
      one('time', 'Metered time', Q.duration, above),
      one('exponent', "Exponent P from the film's data sheet", Q.exponent, { range: EXPONENT }),
      withDefault(
        'threshold',
        'Time up to which the film follows the meter; none where the curve starts at once',
        Q.duration,
        1,
        { range: NOT_NEGATIVE },
      ),
    ],
    result: Q.duration,
    answers: 'one',
    formula: 'threshold · (time / threshold)^P; the time itself up to the threshold',
    run: reciprocityTime,
    sources: ['reciprocity-exponents'],
    examples: [{ cells: [10, 1.31], gives: 20.417379446695296 }],
    notes:
      'For continuous light on film. Many short pops on film can lag as well (the intermittency effect): make a test.',
    words: ['film', 'reciprocity failure', 'long exposure', 'Schwarzschild'],
  }),
];
