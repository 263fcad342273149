import { CREEP_LIMIT, creepTime } from '../../exposure/pops/creepTime';
import { popsForTarget, popsMiss, popsReading, TOLERANCE } from '../../exposure/pops/pops';
import { popsBuild } from '../../exposure/pops/popsBuild';
import { DIAL_STEP } from '../../exposure/distance/dialChange';
import { POPS_TIME_BASES, popsTime } from '../../exposure/pops/popsTime';
import { ABOVE_ZERO, NOT_NEGATIVE, POPS, POPS_OR_NONE } from '../../exposure/core/range';
import { isFail, type Result } from '../../exposure/core/result';
import { MOST_POPS, PLANNED_POPS, popsPlan, popsPlanTime } from '../../exposure/pops/plan/popsPlan';
import { headNote, planNote } from '../planRemarks';
import { Q } from '../quantities';
import {
  choice,
  define,
  flags,
  gappedList,
  list,
  listWithDefault,
  maybe,
  maybeList,
  one,
  pairList,
  type AnswerRows,
  withDefault,
} from '../types';
import { draw, focal, loss, pupilOfBellows } from './shared';

const above = { range: ABOVE_ZERO };
const popCount = one('pops', 'Number of pops', Q.pops, { range: POPS });
const reading = one('reading', 'Reading of one pop', Q.aperture, above);
const target = one('target', 'Lens setting to reach', Q.aperture, above);
const DARK =
  'Between pops the shutter stays open: darken the room, switch modelling light off, and let nothing move.';
const FLASHES =
  'Repeated flashes can harm photosensitive people: warn everybody present. Keep to the number of flashes in a row that the maker allows, or the head overheats.';
const DOUBLING = 'Each doubling of the pops adds one stop.';

/** A row a head, and a last row for all together. */
function planned(...job: Parameters<typeof popsPlan>): Result<AnswerRows> {
  const plan = popsPlan(...job);
  if (isFail(plan)) return plan;
  const heads = plan.heads.map(({ power = '', pops, reading: reads = '', miss = '', remarks }) => [
    power,
    pops,
    reads,
    miss,
    headNote(remarks),
  ]);
  return [...heads, ['', plan.pops, plan.reading || '', plan.worst ?? '', planNote(plan.remarks)]];
}

const planArguments = [
  gappedList('readings', 'Reading of one pop of each head; blank where it is off', Q.aperture, above),
  gappedList('powers', 'Power at which each was read', Q.energy, above),
  gappedList(
    'targets',
    'What each must read alone in the end; blank where it is off (see LIGHTTARGETS)',
    Q.aperture,
    above,
  ),
  gappedList('least', 'Least energy of each head', Q.energy, above),
  gappedList('most', 'Most energy of each head', Q.energy, above),
  pairList(
    'recycleFull',
    'Recycle time of each head at full power; in a second column, if known, at least power',
    Q.duration,
    above,
  ),
  loss,
  listWithDefault(
    'step',
    'Stops between two settings: of each head, or one for all',
    Q.stopsStep,
    DIAL_STEP,
    above,
  ),
  withDefault('mostPops', 'Most pops', Q.pops, MOST_POPS, { range: PLANNED_POPS }),
  withDefault('pause', 'Least time from a pop to the next', Q.wait, 0, { range: NOT_NEGATIVE }),
  maybe(
    'tolerance',
    'Stops that each head may end from its target; left out, half of its step',
    Q.tolerance,
    { range: NOT_NEGATIVE },
  ),
  maybeList('allowed', 'Pops in a row that the maker allows: of each head, or one for all', Q.pops, {
    range: POPS,
  }),
  flags('switchable', 'Whether each head may be switched off before the last pop: yes or no'),
] as const;

export const popsRows = [
  define({
    id: 'POPSFORTARGET',
    family: 'pops',
    gives: 'Fewest pops that reach an aperture.',
    args: [
      reading,
      target,
      loss,
      focal,
      draw,
      pupilOfBellows,
      withDefault(
        'tolerance',
        'Stops that may be missing, half of what a meter shows unless given; none for not any',
        Q.tolerance,
        TOLERANCE,
        { range: NOT_NEGATIVE },
      ),
    ],
    result: Q.pops,
    answers: 'one',
    formula: 'smallest whole n with log2 n ≥ 2 · log2(target / reading) + loss + bellows loss − tolerance',
    run: popsForTarget,
    sources: ['adding-light', 'navy-photography', 'common-practice'],
    examples: [
      { cells: [16, 32], gives: 4 },
      { cells: [16, 45, 1], gives: 16 },
      { cells: [16, 45, 1, null, null, null, 0.1], gives: 15 },
    ],
    notes: DOUBLING,
    caution: `${DARK} ${FLASHES}`,
    words: ['multiple pops', 'multi-pop', 'bellows', 'small aperture', 'how many'],
  }),
  define({
    id: 'POPSREADING',
    family: 'pops',
    gives: 'Reading at the film after a number of pops.',
    args: [reading, popCount, loss, focal, draw, pupilOfBellows],
    result: Q.aperture,
    answers: 'one',
    formula: 'N · √n · 2^(−(loss + bellows loss) / 2)',
    run: popsReading,
    sources: ['adding-light'],
    examples: [{ cells: [16, 4], gives: 32 }],
    notes: DOUBLING,
    caution: FLASHES,
    words: ['multiple pops', 'build up'],
  }),
  define({
    id: 'POPSMISS',
    family: 'pops',
    gives: 'Stops by which a number of pops misses the target: over (+) or under (−).',
    args: [reading, target, popCount, loss, focal, draw, pupilOfBellows],
    result: Q.stops,
    answers: 'one',
    formula: 'log2 n − (2 · log2(target / reading) + loss + bellows loss)',
    run: popsMiss,
    sources: ['adding-light'],
    examples: [{ cells: [16, 45, 8], gives: 0 }],
    words: ['error', 'over', 'under', 'multiple pops'],
  }),
  define({
    id: 'POPSTIME',
    family: 'pops',
    gives: 'Seconds that a number of pops takes.',
    args: [
      popCount,
      one('recycle', 'From a pop to ready', Q.duration, above),
      withDefault('pause', 'Wait after ready', Q.wait, 0, { range: NOT_NEGATIVE }),
      choice(
        'basis',
        'ready: until the next frame can start; open: while the shutter stands open',
        POPS_TIME_BASES,
      ),
    ],
    result: Q.duration,
    answers: 'one',
    formula: 'ready: n · (recycle + pause); open: (n − 1) · (recycle + pause)',
    run: popsTime,
    sources: ['common-practice'],
    examples: [
      { cells: [16, 2, 0.5], gives: 40 },
      { cells: [16, 2, 0.5, 'open'], gives: 37.5 },
    ],
    caution: FLASHES,
    words: ['recycle', 'duration', 'how long'],
  }),
  define({
    id: 'POPSBUILD',
    family: 'pops',
    gives: 'Reading of heads with their own numbers of pops, and of the ambient light that creeps in.',
    args: [
      list('readings', 'Reading of one pop of each head', Q.aperture, above),
      list(
        'pops',
        'Number of pops of each head, or one number for all; a head with 0 or blank does not fire',
        Q.pops,
        {
          range: POPS_OR_NONE,
          blankMember: 0,
        },
      ),
      maybe('ambient', 'Reading of the ambient light alone', Q.aperture, above),
      maybe('ambientTime', 'Shutter time at which the ambient was read', Q.shutterTime, above),
      maybe('openTime', 'Time the shutter stands open', Q.duration, above),
      loss,
    ],
    result: Q.aperture,
    answers: 'one',
    formula: '√(n₁·N₁² + n₂·N₂² + … + ambient² · openTime / ambientTime) · 2^(−loss / 2)',
    run: popsBuild,
    sources: ['adding-light'],
    examples: [
      {
        cells: [
          [16, 11],
          [2, 4],
        ],
        gives: 32,
      },
      {
        cells: [
          [16, 11],
          [4, 0],
        ],
        gives: 32,
      },
      { cells: [[32], [1], 4, '1/60', 2], gives: 55.42562584220407 },
    ],
    notes:
      'With the powers of a plan, POPSBUILD(READINGFORPOWER(readings, powers, newPowers), pops, , , , loss) is what POPSPLAN gives for all heads together.',
    caution: `${DARK} ${FLASHES}`,
    words: ['ambient', 'several heads', 'build up'],
  }),
  define({
    id: 'CREEPTIME',
    family: 'pops',
    gives: 'Longest time the shutter may stand open before ambient light shows.',
    args: [
      one('flash', 'Reading of all the flash', Q.aperture, above),
      one('ambient', 'Reading of the ambient light alone', Q.aperture, above),
      one('ambientTime', 'Shutter time at which the ambient was read', Q.shutterTime, above),
      withDefault('limit', 'Stops that ambient may add', Q.stopsStep, CREEP_LIMIT, above),
    ],
    result: Q.duration,
    answers: 'one',
    formula: 'ambientTime · (flash / ambient)² · (2^limit − 1)',
    run: creepTime,
    sources: ['adding-light'],
    examples: [{ cells: [32, 4, '1/60', 0.1], gives: 0.07177346253629313 }],
    caution:
      'A shutter shorter than the flash loses light; a speed above the camera’s sync speed is theoretical with a focal-plane shutter.',
    words: ['ambient', 'bulb', 'darkened room'],
  }),
  define({
    id: 'POPSPLAN',
    family: 'pops',
    gives: 'Power and pops of each head, so that each ends at its target in the fewest pops.',
    args: planArguments,
    result: Q.energy,
    answers: {
      table: [
        { name: 'power', quantity: Q.energy },
        { name: 'pops', quantity: Q.pops },
        { name: 'reading', quantity: Q.aperture },
        { name: 'miss', quantity: Q.stops },
        { name: 'remark', quantity: Q.text },
      ],
      each: 'one a head, and a last one for all: pops, reading, worst miss and a remark',
    },
    formula:
      'of all plans within the tolerance: fewest heads to switch off, fewest pops, smallest miss, shortest time',
    run: planned,
    sources: ['adding-light', 'every-plan'],
    examples: [
      {
        cells: [
          ['f/11', 8],
          [600, 400],
          [32, 16],
          [9.4, 50],
          [600, 400],
          [1.2, 0.9],
        ],
        gives: [
          [600, 8, 32, 0, ''],
          [200, 8, 16, 0, ''],
          ['', 8, 35.77708763999664, 0, ''],
        ],
      },
      {
        cells: [['f/8', 'f/8'], 400, ['f/16', 'f/8'], 400, 400, 1],
        gives: [
          [400, 4, 16, 0, ''],
          [400, 1, 8, 0, 'switch off after one pop'],
          ['', 4, 17.88854381999832, 0, 'switch off head 2 after one pop'],
        ],
      },
    ],
    notes:
      'A head fires on every pop, or where its least power is too much for that, on the first pops only: switch it off after those, or say no in switchable. Where no plan brings all heads near enough, the one that misses least is shown, and its remarks say by how much and which way. More pops in a row than allowed are kept and said: let the heads cool in between. The rows go by INDEX(POPSPLAN(…), row, column); POPSPLANTIME has the seconds.',
    caution: `${DARK} ${FLASHES}`,
    words: ['plan', 'multiple pops', 'balance', 'several heads', 'solve'],
  }),
  define({
    id: 'POPSPLANTIME',
    family: 'pops',
    gives: 'Seconds that the plan of POPSPLAN takes.',
    args: [
      ...planArguments,
      choice(
        'basis',
        'ready: until the next frame can start; open: from the first pop to the last, while the shutter stands open',
        POPS_TIME_BASES,
      ),
    ],
    result: Q.duration,
    answers: 'one',
    formula:
      'sum over the pops of the longest of the pause and the recycle times of the heads that fire on it',
    run: popsPlanTime,
    sources: ['adding-light', 'every-plan'],
    examples: [
      { cells: [['f/8', 'f/8'], 400, ['f/16', 'f/8'], 400, 400, [1, 3]], gives: 6 },
      {
        cells: [['f/8'], [400], ['f/16'], [400], [400], [1], 0, 0.1, 99, 2, null, null, null, 'open'],
        gives: 6,
      },
    ],
    notes:
      'The same arguments as POPSPLAN, and the basis. A head turned down recycles faster: in proportion to its energy, or between the two columns of recycleFull. The pause runs along with the recycling.',
    caution: FLASHES,
    words: ['plan', 'recycle', 'how long', 'several heads'],
  }),
];
