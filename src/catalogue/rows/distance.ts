import { DIAL_STEP, dialChange } from '../../exposure/distance/dialChange';
import { fallOff } from '../../exposure/distance/fallOff';
import { headPower } from '../../exposure/distance/headPower';
import { HEAD_SCALES } from '../../exposure/distance/headScale';
import { headSetting } from '../../exposure/distance/headSetting';
import { powerForDistance, powerForReading } from '../../exposure/distance/power';
import { distanceForReading, readingForPower } from '../../exposure/distance/reading';
import { ABOVE_ZERO } from '../../exposure/core/range';
import { Q } from '../quantities';
import { choice, define, maybe, one, withDefault } from '../types';
import { height, least, loss, most, pops, step, width } from './shared';

const above = { range: ABOVE_ZERO };
const TENTHS_AND_STOPS =
  'Heads are set in tenths and whole stops: give the step to have the answer rounded to a setting.';
const HOT_CENTRE =
  'A front with a hot centre falls off faster than an even one. Measure from the front, not from the tube.';

const fullPower = one('most', 'Energy of the head at full power', Q.energy, above);
const headScale = choice('scale', 'What the head shows', HEAD_SCALES);
const top = maybe(
  'top',
  'What it shows at full power, for the scale stops; none where it shows 0',
  Q.stopsAtFull,
);
const DISPLAYS =
  'A display rounds: give the step, and 487 Ws, 7.3 or −0.3 stand for the setting that lies within 0.05 stop of them. On the scale stops a whole number is one stop, and top says what full power shows.';

export const distanceRows = [
  define({
    id: 'POWERFORDISTANCE',
    family: 'distance',
    gives: 'Energy for the same reading with the light at another distance.',
    args: [
      one('power', 'Energy now', Q.energy, above),
      one('distance', 'Distance now, from the front of the light', Q.lightDistance, above),
      one('newDistance', 'Distance then', Q.lightDistance, above),
      withDefault('stops', 'Stops more, or less, than now', Q.stops, 0),
      step,
      least,
      most,
      width,
      height,
    ],
    result: Q.energy,
    answers: 'one',
    formula:
      'power · 2^(fall-off + stops), rounded to the step, counted down from most (from power where there is no most)',
    run: powerForDistance,
    sources: ['inverse-square', 'configuration-factors', 'common-practice'],
    examples: [
      { cells: [400, 1.5, 2.1], gives: 784 },
      { cells: [400, 1.5, 2.1, 0, 0.1, 25, 800], gives: 800 },
    ],
    notes: `${TENTHS_AND_STOPS} Beyond least or most it is #N/A and says by how much. ${HOT_CENTRE}`,
    words: ['move the light', 'inverse square', 'Ws', 'joules'],
  }),
  define({
    id: 'POWERFORREADING',
    family: 'distance',
    gives: 'Energy that brings a reading to a target, in one pop or several.',
    args: [
      one('power', 'Energy at which it was read', Q.energy, above),
      one('reading', 'Reading', Q.aperture, above),
      one('target', 'Reading wanted', Q.aperture, above),
      step,
      least,
      most,
      loss,
      pops('Equal pops that build the target together: the answer is the energy of each'),
    ],
    result: Q.energy,
    answers: 'one',
    formula:
      'power · (target / reading)² · 2^loss / pops, rounded to the step, counted down from most (from power where there is no most)',
    run: powerForReading,
    sources: ['adding-light', 'common-practice'],
    examples: [
      { cells: [100, 8, 11], gives: 200 },
      { cells: [100, 8, 22, null, null, null, 0, 4], gives: 200 },
    ],
    notes: `${TENTHS_AND_STOPS} Beyond least or most it is #N/A and says by how much.`,
    words: ['set power', 'Ws', 'joules', 'tenths'],
  }),
  define({
    id: 'HEADPOWER',
    family: 'distance',
    gives: 'Energy of what a head shows.',
    args: [
      one('setting', 'What the head shows; on a display of stops blank is 0', {
        by: 'scale',
        of: { energy: Q.energy, stops: Q.stops, fraction: Q.fullFraction, percent: Q.fullPercent },
      }),
      fullPower,
      headScale,
      top,
      step,
    ],
    result: Q.energy,
    answers: 'one',
    formula:
      'energy: setting; stops: most · 2^(setting − top); fraction, percent: most · setting. With a step the nearest most · 2^(−k · step), where it lies within 0.05 stop',
    run: headPower,
    sources: ['common-practice'],
    examples: [
      { cells: [487, 600, 'energy', null, 0.1], gives: 487.351437813741 },
      { cells: [7, 800, 'stops', 10], gives: 100 },
      { cells: ['1/4 -0.3', 600, 'fraction'], gives: 121.83785945343544 },
    ],
    notes: `${DISPLAYS} Above full power it is #N/A.`,
    words: ['display', 'dial', 'f-stops', 'Ws', 'joules'],
  }),
  define({
    id: 'HEADSETTING',
    family: 'distance',
    gives: 'What to set on a head for an energy, as text.',
    args: [one('power', 'Energy wanted', Q.energy, above), fullPower, headScale, top, step, least],
    result: Q.text,
    answers: 'one',
    formula:
      'the setting nearest to the energy, as the head shows it: 487 Ws; 7.3; the nearest fraction at or above with tenths off it; 41 %',
    run: headSetting,
    sources: ['common-practice'],
    examples: [
      { cells: [487.35, 600, 'energy', null, 0.1], gives: '487 Ws' },
      { cells: [92.34, 600, 'stops', 10, 0.1], gives: '7.3' },
      { cells: [121.84, 600, 'fraction', null, 0.1], gives: '1/4 −0.3' },
    ],
    notes: `HEADPOWER reads the text back as the same setting. Where a display has too few digits for that, the text has more. ${DISPLAYS} Beyond least or most it is #N/A and says by how much.`,
    words: ['display', 'dial', 'f-stops', 'set power', 'Ws', 'joules'],
  }),
  define({
    id: 'DIALCHANGE',
    family: 'distance',
    gives: 'What to turn a head by, in stops, as text.',
    args: [
      one('power', 'Energy now', Q.energy, above),
      one('newPower', 'Energy then', Q.energy, above),
      withDefault(
        'step',
        'Stops between two settings of the head: 0.1, 1/3 or 1',
        Q.stopsStep,
        DIAL_STEP,
        above,
      ),
    ],
    result: Q.text,
    answers: 'one',
    formula: 'log2(newPower / power), to the step; halves and thirds as fractions',
    run: dialChange,
    sources: ['common-practice'],
    examples: [
      { cells: [400, 162.5], gives: '−1.3' },
      { cells: [400, 125, '1/3'], gives: '−1 2/3' },
      { cells: [400, 400], gives: '0' },
    ],
    notes: 'Heads that show stops and heads that show Ws are turned by the same stops.',
    words: ['turn down', 'turn up', 'difference', 'tenths'],
  }),
  define({
    id: 'READINGFORPOWER',
    family: 'distance',
    gives: 'Reading after a change of power, place or number of pops.',
    args: [
      one('reading', 'Reading now', Q.aperture, above),
      one('power', 'Energy now', Q.energy, above),
      one('newPower', 'Energy then', Q.energy, above),
      maybe('distance', 'Distance now', Q.lightDistance, above),
      maybe('newDistance', 'Distance then', Q.lightDistance, above),
      loss,
      pops('Number of pops then'),
    ],
    result: Q.aperture,
    answers: 'one',
    formula: 'N · √(pops · newPower / power) · (distance / newDistance) · 2^(−loss / 2)',
    run: readingForPower,
    sources: ['adding-light', 'inverse-square'],
    examples: [
      { cells: [8, 100, 200], gives: 11.313708498984761 },
      { cells: [8, 100, 100, 1, 2], gives: 4 },
    ],
    words: ['predict', 'Ws', 'joules'],
  }),
  define({
    id: 'DISTANCEFORREADING',
    family: 'distance',
    gives: 'Where to stand a light so that it reads the target, its power untouched.',
    args: [
      one('distance', 'Distance now, from the front of the light', Q.lightDistance, above),
      one('reading', 'Reading now', Q.aperture, above),
      one('target', 'Reading wanted', Q.aperture, above),
      width,
    ],
    result: Q.distance,
    answers: 'one',
    formula: 'distance · reading / target; round front: √((distance² + r²) · (reading / target)² − r²)',
    run: distanceForReading,
    sources: ['inverse-square', 'configuration-factors'],
    examples: [{ cells: [1.5, 8, 16], gives: 0.75 }],
    notes: `Where even contact is too little light it is #N/A. ${HOT_CENTRE}`,
    words: ['move the light', 'inverse square', 'placement'],
  }),
  define({
    id: 'FALLOFF',
    family: 'distance',
    gives: 'Stops lost from a near to a far distance.',
    args: [
      one('near', 'Near distance, from the front of the light', Q.lightDistance, above),
      one('far', 'Far distance, from the front of the light', Q.lightDistance, above),
      width,
      height,
    ],
    result: Q.stops,
    answers: 'one',
    formula:
      'no size: 2 · log2(far / near); width: round even front, light ∝ 1 / (d² + r²); width and height: rectangle, four corner configuration factors',
    run: fallOff,
    sources: ['inverse-square', 'configuration-factors'],
    examples: [
      { cells: [1, 2], gives: 2 },
      { cells: [0.8, 1.1], gives: 0.918863237275 },
      { cells: [0.8, 1.1, 1, 1.4], gives: 0.601214135896 },
    ],
    notes: HOT_CENTRE,
    words: ['inverse square', 'softbox', 'depth of light'],
  }),
];
