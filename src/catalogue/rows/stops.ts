import { asGiven } from '../../exposure/stops/asGiven';
import { DIRECTIONS, DIVISIONS } from '../../exposure/stops/marks';
import { SCALES } from '../../exposure/stops/scales';
import { stopDiff } from '../../exposure/stops/stopDiff';
import { stopMark } from '../../exposure/stops/stopMark';
import { stopShift } from '../../exposure/stops/stopShift';
import { stopText, TEXT_DIVISIONS } from '../../exposure/stops/stopText';
import { TENTHS, withTenths } from '../../exposure/stops/withTenths';
import { ABOVE_ZERO } from '../../exposure/core/range';
import { Q } from '../quantities';
import { choice, define, flag, maybe, one } from '../types';

const MARKED_SCALES = ['aperture', 'time', 'iso'] as const;
const ON_SCALE = {
  by: 'scale',
  of: { aperture: Q.aperture, time: Q.shutterTime, iso: Q.iso, energy: Q.energy, factor: Q.factor },
};
const ON_MARKED_SCALE = { by: 'scale', of: { aperture: Q.aperture, time: Q.shutterTime, iso: Q.iso } };
const above = { range: ABOVE_ZERO };
const scale = choice('scale', 'What the numbers are', SCALES);
const markedScale = choice('scale', 'What the number is', MARKED_SCALES);

export const stopsRows = [
  define({
    id: 'STOPDIFF',
    family: 'stops',
    gives: 'Stops from one value up to another.',
    args: [
      one('from', 'Value to count from', ON_SCALE, above),
      one('to', 'Value to count to', ON_SCALE, above),
      scale,
    ],
    result: Q.stops,
    answers: 'one',
    formula: 'apertures: 2 · log2(to / from); times, speeds, energies and factors: log2(to / from)',
    run: stopDiff,
    sources: ['f-number-scale', 'apex'],
    examples: [
      { cells: [8, 16], gives: 2 },
      { cells: [8, 11], gives: 1 },
      { cells: ['1/125', '1/60', 'time'], gives: 1 },
      { cells: [300, 1200, 'energy'], gives: 2 },
    ],
    notes: 'A marked value counts as the exact value behind the mark: f/11 is 11.3137, 1/60 s is 1/64 s.',
    words: ['difference', 'exposure steps'],
  }),
  define({
    id: 'STOPSHIFT',
    family: 'stops',
    gives: 'The value that lies a number of stops above another.',
    args: [
      one('value', 'Value to start from', ON_SCALE, above),
      one('stops', 'Stops up; negative stops go down; blank is none', Q.stops),
      scale,
    ],
    result: Q.onScale,
    answers: 'one',
    formula: 'apertures: value · 2^(stops / 2); times, speeds, energies and factors: value · 2^stops',
    run: stopShift,
    sources: ['f-number-scale', 'third-stops'],
    examples: [
      { cells: [11, 0.5], gives: 13.454342644059432 },
      { cells: ['1/125', -1, 'time'], gives: 1 / 256 },
    ],
    notes: 'The answer is exact, not a mark: STOPMARK gives the nearest mark.',
    words: ['open up', 'close down'],
  }),
  define({
    id: 'STOPMARK',
    family: 'stops',
    gives: 'The mark nearest to a value, as marked on a ring or a display.',
    args: [
      one('value', 'Value to find the mark for', ON_MARKED_SCALE, above),
      markedScale,
      choice('division', 'Marks to choose from', DIVISIONS),
      choice(
        'direction',
        'The nearest mark, or the next one up (a larger number, more seconds) or down',
        DIRECTIONS,
      ),
    ],
    result: Q.onScale,
    answers: 'one',
    formula:
      'the mark whose exact value is nearest in stops, a tie to the higher; up: the lowest mark not below; down: the highest not above',
    run: stopMark,
    sources: ['f-number-scale'],
    examples: [
      { cells: [11.99], gives: 13 },
      { cells: ['1/100 exact', 'time', 'full'], gives: 1 / 125 },
      { cells: ['1/125 exact', 'time', 'third', 'up'], gives: 1 / 100 },
    ],
    notes:
      '11.99 is nearer to f/13 (12.70) in stops, though 11 is nearer in number. A value that is a mark stays, up and down.',
    words: ['round', 'round up', 'round down', 'aperture ring', 'nearest'],
  }),
  define({
    id: 'STOPTEXT',
    family: 'stops',
    gives: 'A value as text to read aloud: f/11 +0.3.',
    args: [
      one('value', 'Value to say', ON_MARKED_SCALE, above),
      markedScale,
      choice('division', 'Tenths above a full stop, or the nearest mark', TEXT_DIVISIONS),
    ],
    result: Q.text,
    answers: 'one',
    formula: 'tenth: the full stop at or below, and tenths above it; third, half, full: the nearest mark',
    run: stopText,
    sources: ['f-number-scale', 'tenth-stops'],
    examples: [
      { cells: [12.553], gives: 'f/11 +0.3' },
      { cells: [8], gives: 'f/8' },
      { cells: ['1/125', 'time', 'third'], gives: '1/125 s' },
    ],
    notes: 'Every text it writes can be typed into another cell and is read back as the same value.',
    words: ['tenths', 'read out', 'label'],
  }),
  define({
    id: 'FNUMBER',
    family: 'stops',
    gives: 'The exact f-number behind a text or a meter reading, for formulas of your own.',
    args: [
      one(
        'text',
        'Aperture as written or read',
        { given: 'tenths', yes: Q.apertureFigure, no: Q.anyAperture },
        above,
      ),
      maybe('tenths', 'The small figure beside it on a meter', Q.tenths, { range: TENTHS }),
    ],
    result: Q.aperture,
    answers: 'one',
    formula: 'exact aperture · 2^(tenths / 20)',
    run: withTenths,
    sources: ['f-number-scale', 'tenth-stops'],
    examples: [
      { cells: [11, 3], gives: 12.55334556634801 },
      { cells: ['f/8 2/3'], gives: 10.079368399158986 },
    ],
    notes:
      'A meter that shows 11 and a small 3 means f/11 and three tenths, 12.55: write FNUMBER(11, 3), f/11+0.3 or 11³; not both ways at once. The number 11.3 is f/11.30.',
    words: ['tenths', 'meter reading', 'convert'],
  }),
  define({
    id: 'SECONDS',
    family: 'stops',
    gives: 'A time in seconds, for formulas of your own.',
    args: [
      one('text', 'Time as written', { by: 'marked', of: { true: Q.shutterTime, false: Q.duration } }, above),
      flag('marked', 'TRUE takes a shutter mark for the exact time behind it: 1/60 is 1/64 s'),
    ],
    result: Q.duration,
    answers: 'one',
    formula: 'the time as typed; marked: the exact time behind the mark',
    run: (text: number, _marked: boolean) => asGiven(text),
    sources: ['apex'],
    examples: [
      { cells: ['4 ms'], gives: 0.004 },
      { cells: ['1/60', true], gives: 1 / 64 },
    ],
    words: ['shutter', 'convert'],
  }),
  define({
    id: 'METRES',
    family: 'stops',
    gives: 'A length in metres, for formulas of your own.',
    args: [one('text', 'Length as written', Q.distance, above)],
    result: Q.distance,
    answers: 'one',
    formula: 'the length, its unit turned into metres',
    run: asGiven,
    sources: ['common-practice'],
    examples: [
      { cells: ['80 cm'], gives: 0.8 },
      { cells: [`5' 6"`], gives: 1.6764 },
    ],
    words: ['feet', 'inches', 'convert', 'distance'],
  }),
];
