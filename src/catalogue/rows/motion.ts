import { fallSpeed, fallTime } from '../../exposure/motion/fall';
import { FREEZE_LEVEL, freezeBlur, freezeTime } from '../../exposure/motion/freeze';
import { freezeDuration } from '../../exposure/motion/freezeDuration';
import { freezePower } from '../../exposure/motion/freezePower';
import { spinSpeed } from '../../exposure/motion/spinSpeed';
import { ABOVE_ZERO, LEVEL, NOT_NEGATIVE } from '../../exposure/core/range';
import { Q } from '../quantities';
import { define, list, one, withDefault } from '../types';
import { most, pixelPitch, smearMagnification, step } from './shared';

const above = { range: ABOVE_ZERO };
const speed = one('speed', 'Speed across the line of sight', Q.speed, above);
const ONE_POP =
  'Several pops do not freeze: each leaves its own image. A shutter shorter than the flash loses light, and a speed above the camera’s sync speed is theoretical with a focal-plane shutter.';
const LEVELS =
  'Durations are t0.1, the time above a tenth of the peak. A maker’s t0.5 (level 0.5) is turned into t0.1 for an exponential decay, which is pessimistic for heads that cut the pulse.';

export const motionRows = [
  define({
    id: 'FREEZEBLUR',
    family: 'motion',
    gives: 'Length of the smear that a moving subject leaves.',
    args: [
      speed,
      one('duration', 'Flash duration', Q.litTime, above),
      smearMagnification,
      pixelPitch,
      withDefault('level', 'Level of the duration: 0.1 for t0.1, 0.5 for t0.5', Q.pulseLevel, FREEZE_LEVEL, {
        range: LEVEL,
      }),
    ],
    result: Q.lensLength,
    answers: 'one',
    formula: 'speed · duration · magnification, in mm; divided by the pixel pitch, in pixels',
    run: freezeBlur,
    sources: ['kinematics', 'exponential-decay'],
    examples: [
      { cells: [2, 1 / 2000, 0.5, 3.76], gives: 132.97872340425533 },
      { cells: [2, '1/2000'], gives: 1 },
    ],
    notes: LEVELS,
    caution: ONE_POP,
    words: ['motion blur', 'splash', 'pour', 'sharp', 'pixels'],
  }),
  define({
    id: 'FREEZETIME',
    family: 'motion',
    gives: 'Longest flash duration that keeps the smear within a length.',
    args: [
      speed,
      one(
        'blur',
        'Allowed smear in mm, or in pixels where a pitch is given',
        { given: 'pixelPitch', yes: Q.pixels, no: Q.lensLength },
        above,
      ),
      smearMagnification,
      pixelPitch,
      withDefault(
        'level',
        'Level at which the duration is wanted: 0.1 for t0.1, 0.5 for t0.5',
        Q.pulseLevel,
        FREEZE_LEVEL,
        { range: LEVEL },
      ),
    ],
    result: Q.duration,
    answers: 'one',
    formula: 'blur / (speed · magnification); a blur in pixels times the pixel pitch first',
    run: freezeTime,
    sources: ['kinematics', 'exponential-decay'],
    examples: [{ cells: [0.2, 0.01, 1], gives: 0.00005 }],
    notes: LEVELS,
    caution: ONE_POP,
    words: ['motion blur', 'splash', 'pour', 'short enough'],
  }),
  define({
    id: 'FREEZEPOWER',
    family: 'motion',
    gives: 'Most energy at which a head is short enough.',
    args: [
      list('powers', "Energies in the head's table", Q.energy, above),
      list('durations', 'Duration at each of them', Q.flashDuration, above),
      one('limit', 'Longest duration allowed', Q.flashDuration, above),
      withDefault('level', 'Level of the durations in the table: 0.5 for t0.5', Q.pulseLevel, FREEZE_LEVEL, {
        range: LEVEL,
      }),
      withDefault('limitLevel', 'Level of the limit', Q.pulseLevel, FREEZE_LEVEL, { range: LEVEL }),
      step,
      most,
    ],
    result: Q.energy,
    answers: 'one',
    formula:
      'logarithmic interpolation between the rows of the table; the highest energy that keeps the limit, or with a step the highest setting most · 2^(−k · step) inside the table that does',
    run: freezePower,
    sources: ['duration-table', 'exponential-decay'],
    examples: [
      { cells: [[100, 400], ['1/4000', '1/1000'], '1/2000'], gives: 200 },
      { cells: [[100, 400], ['1/4000', '1/1000'], '1/3000', null, null, 1], gives: 100 },
    ],
    notes: `Some heads get shorter as they are turned down, others longer: do not round the answer by hand, give the step. Where no most is given, full power is the highest energy of the table. Nothing is guessed beyond the table, and where no setting is short enough it is #N/A. ${LEVELS}`,
    caution: ONE_POP,
    words: ['t0.1', 'short enough', 'turn down'],
  }),
  define({
    id: 'FREEZEDURATION',
    family: 'motion',
    gives: 'Duration of a head at an energy, from its own table.',
    args: [
      list('powers', "Energies in the head's table", Q.energy, above),
      list('durations', 'Duration at each of them', Q.flashDuration, above),
      one('power', 'Energy wanted', Q.energy, above),
    ],
    result: Q.duration,
    answers: 'one',
    formula: 'logarithmic interpolation between the rows of the table',
    run: freezeDuration,
    sources: ['duration-table'],
    examples: [{ cells: [[100, 400], ['1/4000', '1/1000'], 200], gives: 1 / 2000 }],
    notes: 'At the level of the table, t0.5 or t0.1. Nothing is guessed beyond the table (#N/A).',
    words: ['t0.1', 't0.5', 'how short'],
  }),
  define({
    id: 'FALLSPEED',
    family: 'motion',
    gives: 'Speed after a fall.',
    args: [
      one('drop', 'Height fallen through', Q.size, above),
      withDefault('startSpeed', 'Speed downwards at the start', Q.speed, 0, { range: NOT_NEGATIVE }),
    ],
    result: Q.speed,
    answers: 'one',
    formula: '√(startSpeed² + 2 · g · drop), g = 9.80665 m/s²',
    run: fallSpeed,
    sources: ['free-fall'],
    examples: [{ cells: [0.5], gives: 3.1315571206669692 }],
    notes: 'Air is left out: it slows small drops and splashes.',
    words: ['drop', 'pour', 'splash', 'gravity'],
  }),
  define({
    id: 'FALLTIME',
    family: 'motion',
    gives: 'Time of a fall: the delay to set on the trigger.',
    args: [
      one('drop', 'Height fallen through', Q.size, above),
      withDefault('startSpeed', 'Speed downwards at the start', Q.speed, 0, { range: NOT_NEGATIVE }),
    ],
    result: Q.duration,
    answers: 'one',
    formula: '(√(startSpeed² + 2 · g · drop) − startSpeed) / g, g = 9.80665 m/s²',
    run: fallTime,
    sources: ['free-fall'],
    examples: [{ cells: [0.5], gives: 0.3193299567810628 }],
    words: ['drop', 'trigger', 'delay', 'gravity'],
  }),
  define({
    id: 'SPINSPEED',
    family: 'motion',
    gives: 'Speed of the rim of something that turns.',
    args: [one('diameter', 'Diameter', Q.size, above), one('rpm', 'Turns a minute', Q.rpm, above)],
    result: Q.speed,
    answers: 'one',
    formula: 'π · diameter · rpm / 60',
    run: spinSpeed,
    sources: ['kinematics'],
    examples: [{ cells: [0.3, 60], gives: 0.9424777960769379 }],
    caution: 'Things that turn fast can come apart: guard them, and keep clear.',
    words: ['turntable', 'rotation', 'fan'],
  }),
];
