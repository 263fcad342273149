import { exposureValue } from '../../exposure/metering/exposureValue';
import { guideNumber, guideReading, POWER_SHARE } from '../../exposure/metering/guideNumber';
import { apertureForLuxSeconds, luxSeconds, RECEPTORS } from '../../exposure/metering/luxSeconds';
import { ABOVE_ZERO } from '../../exposure/core/range';
import { Q } from '../quantities';
import { define, one, withDefault } from '../types';

const above = { range: ABOVE_ZERO };
const iso = withDefault('iso', 'Speed set on the meter', Q.iso, 100, above);
const isoQuoted = withDefault('isoQuoted', 'Speed for which the guide number is quoted', Q.iso, 100, above);
const constant = withDefault(
  'constant',
  'Receptor of the meter: flat (250 lx·s), dome (340 lx·s), or the number from its maker',
  Q.receptor,
  RECEPTORS.flat,
  above,
);
const TWO_RECEPTORS =
  'Two conventions: a flat receptor (250, the default) for copies, a dome (340) for solid subjects.';

export const meteringRows = [
  define({
    id: 'EXPOSUREVALUE',
    family: 'metering',
    gives: 'Exposure value at ISO 100.',
    args: [
      one('aperture', 'Lens setting', Q.aperture, above),
      one('time', 'Shutter time', Q.shutterTime, above),
      withDefault('iso', 'Speed of film or sensor', Q.iso, 100, above),
    ],
    result: Q.ev,
    answers: 'one',
    formula: 'log2(N² / t) − log2(S / 100)',
    run: exposureValue,
    sources: ['ev-table', 'apex', 'exif-tests'],
    examples: [
      { cells: [16, '1/125'], gives: 15, source: 'apex' },
      { cells: [1, 1], gives: 0, source: 'ev-table' },
    ],
    words: ['EV', 'light value'],
  }),
  define({
    id: 'LUXSECONDS',
    family: 'metering',
    gives: 'Luminous exposure at the subject for a meter reading, in lux seconds.',
    args: [one('aperture', 'Meter reading', Q.aperture, above), iso, constant],
    result: Q.luxSeconds,
    answers: 'one',
    formula: 'C · N² / S',
    run: luxSeconds,
    sources: ['meter-calibration', 'ev-table'],
    examples: [
      { cells: [8], gives: 160, source: 'ev-table' },
      { cells: [16, 100, 'dome'], gives: 870.4 },
    ],
    notes: TWO_RECEPTORS,
    words: ['incident', 'calibration', 'lux'],
  }),
  define({
    id: 'APERTUREFORLUXSECONDS',
    family: 'metering',
    gives: 'Meter reading for a luminous exposure in lux seconds.',
    args: [one('luxseconds', 'Luminous exposure at the subject', Q.luxSeconds, above), iso, constant],
    result: Q.aperture,
    answers: 'one',
    formula: '√(H · S / C)',
    run: apertureForLuxSeconds,
    sources: ['meter-calibration', 'ev-table'],
    examples: [{ cells: [160], gives: 8, source: 'ev-table' }],
    notes: TWO_RECEPTORS,
    words: ['incident', 'calibration'],
  }),
  define({
    id: 'GUIDENUMBER',
    family: 'metering',
    gives: 'Guide number in metres, from a reading at a distance.',
    args: [
      one('reading', 'F-number read at that distance, as typed', Q.apertureAsTyped, above),
      one('distance', 'Flash to subject', Q.lightDistance, { ...above, sign: 'd' }),
      iso,
      isoQuoted,
    ],
    result: Q.guide,
    answers: 'one',
    formula: 'N · d · √(quoted speed / speed set)',
    run: guideNumber,
    sources: ['guide-numbers', 'navy-photography'],
    examples: [{ cells: [9, 5], gives: 45 }],
    notes: 'The reading counts as typed, as guide numbers are quoted that way.',
    words: ['GN', 'flash'],
  }),
  define({
    id: 'GUIDEREADING',
    family: 'metering',
    gives: 'Reading at a distance, from a guide number.',
    args: [
      one('guide', 'Guide number at full power', Q.guide, above),
      one('distance', 'Flash to subject', Q.lightDistance, { ...above, sign: 'd' }),
      withDefault('iso', 'Speed to be exposed', Q.iso, 100, above),
      isoQuoted,
      withDefault('powerShare', 'Share of full power', Q.share, 1, { range: POWER_SHARE }),
      withDefault('loss', 'Stops lost to modifiers and filters', Q.lightLoss, 0),
    ],
    result: Q.apertureAsTyped,
    answers: 'one',
    formula: '(G / d) · √(speed / quoted speed) · √share · 2^(−loss / 2)',
    run: guideReading,
    sources: ['guide-numbers', 'navy-photography'],
    examples: [
      { cells: ['80 ft', '20 ft'], gives: 4, source: 'guide-numbers' },
      { cells: [64, 1, 100, 100, '1/64'], gives: 8, source: 'guide-numbers' },
    ],
    notes:
      'A guide number holds for the reflector it is quoted with, and for distances well beyond the size of the light.',
    words: ['GN', 'flash', 'modifier'],
  }),
];
