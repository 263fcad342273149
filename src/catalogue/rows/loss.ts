import { bellowsLoss, magnificationLoss } from '../../exposure/loss/bellowsLoss';
import { FILTER_KINDS, filterLoss } from '../../exposure/loss/filterLoss';
import { meterTarget } from '../../exposure/loss/meterTarget';
import { ABOVE_ZERO, NOT_NEGATIVE } from '../../exposure/core/range';
import { Q } from '../quantities';
import { choice, define, one } from '../types';
import { draw, focal, pops, pupil, pupilOfBellows } from './shared';

const above = { range: ABOVE_ZERO };

export const lossRows = [
  define({
    id: 'BELLOWSLOSS',
    family: 'loss',
    gives: 'Stops lost at a bellows draw.',
    args: [
      one('focal', 'Focal length', Q.focalLength, above),
      one(
        'draw',
        'From the rear principal point to the sensor; the lens board for near-symmetrical lenses',
        Q.lensLength,
        above,
      ),
      pupil,
    ],
    result: Q.stops,
    answers: 'one',
    formula: 'm = draw / focal − 1; 2 · log2(1 + m / pupil)',
    run: bellowsLoss,
    sources: ['army-closeup', 'pupil-magnification'],
    examples: [
      { cells: [150, 300], gives: 2 },
      { cells: ['6 in', '12 in'], gives: 2, source: 'army-closeup' },
    ],
    notes:
      'A camera that meters through the lens has counted this already. A draw shorter than the focal length is #NUM!.',
    words: ['bellows', 'extension', 'close-up', 'macro', 'bellows factor'],
  }),
  define({
    id: 'MAGNIFICATIONLOSS',
    family: 'loss',
    gives: 'Stops lost at a magnification.',
    args: [
      one('magnification', 'Image size over object size', Q.magnification, { range: NOT_NEGATIVE }),
      pupil,
    ],
    result: Q.stops,
    answers: 'one',
    formula: '2 · log2(1 + m / pupil)',
    run: magnificationLoss,
    sources: ['copying-chapter', 'pupil-magnification'],
    examples: [
      { cells: ['1:1'], gives: 2, source: 'copying-chapter' },
      { cells: ['infinity'], gives: 0 },
    ],
    notes: 'Life size costs two stops.',
    words: ['bellows', 'close-up', 'macro', 'life size'],
  }),
  define({
    id: 'FILTERLOSS',
    family: 'loss',
    gives: 'Stops that a filter takes.',
    args: [
      one(
        'value',
        'What the filter says: a factor, a density, a transmission or stops; a blank density, and blank stops, are none',
        {
          by: 'kind',
          of: {
            factor: Q.filterFactor,
            density: Q.filterDensity,
            transmission: Q.filterTransmission,
            stops: Q.lightLoss,
          },
        },
      ),
      choice('kind', 'What the value is', FILTER_KINDS),
    ],
    result: Q.stops,
    answers: 'one',
    formula: 'factor: log2(value); density: value / log10(2); transmission: −log2(value); stops: value',
    run: filterLoss,
    sources: ['filter-table', 'density-definition'],
    examples: [
      { cells: [8], gives: 3, source: 'filter-table' },
      { cells: [0.9, 'density'], gives: 2.989735285399, source: 'filter-table' },
      { cells: ['ND 0.9'], gives: 2.989735285399, source: 'filter-table' },
      { cells: ['50%', 'transmission'], gives: 1 },
      { cells: [2, 'stops'], gives: 2 },
    ],
    notes:
      'Texts say themselves what they are: ND with a point is a density (ND 0.9, ND 3.0), ND8 and the other whole numbers that filters are sold by are factors, 8x is a factor, 2 stops are stops. Any other whole number after ND is refused: ND3 may be ND 0.3, 3x or three stops (ND 0.9, 8x).',
    words: ['ND', 'neutral density', 'filter factor', 'polariser', 'gel'],
  }),
  define({
    id: 'METERTARGET',
    family: 'loss',
    gives: 'What the meter must read for a lens setting: with pops, what one pop must read.',
    args: [
      one('aperture', 'Lens setting', Q.aperture, above),
      one('loss', 'Stops lost to filters and the like; blank is none', Q.lightLoss),
      focal,
      draw,
      pupilOfBellows,
      pops('Equal pops that build the exposure: the answer is what one of them must read'),
    ],
    result: Q.aperture,
    answers: 'one',
    formula: 'N · 2^((loss + bellows loss) / 2) / √pops',
    run: meterTarget,
    sources: ['pupil-magnification', 'adding-light'],
    examples: [
      { cells: [22, 1], gives: 32 },
      { cells: [22, 0, 150, 300], gives: 45.254833995939045 },
      { cells: [32, 0, null, null, null, 4], gives: 16 },
    ],
    words: ['bellows', 'compensation', 'incident meter'],
  }),
];
