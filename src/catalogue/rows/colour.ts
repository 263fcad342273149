import { kelvinShift, miredShift } from '../../exposure/colour/mired';
import { ABOVE_ZERO } from '../../exposure/core/range';
import { Q } from '../quantities';
import { define, one } from '../types';

const above = { range: ABOVE_ZERO };

export const colourRows = [
  define({
    id: 'MIREDSHIFT',
    family: 'colour',
    gives: 'Mired shift from one colour temperature to another.',
    args: [
      one('from', 'Colour temperature of the source', Q.kelvin, above),
      one('to', 'Colour temperature wanted', Q.kelvin, above),
    ],
    result: Q.mired,
    answers: 'one',
    formula: '10⁶ / to − 10⁶ / from',
    run: miredShift,
    sources: ['mired', 'mired-german', 'mired-manual', 'mired-glossary', 'filter-series'],
    examples: [{ cells: [5500, 3200], gives: 130.6818181818182 }],
    notes: 'A positive shift warms. Shifts of gels add up; kelvins do not.',
    words: ['gel', 'CTO', 'CTB', 'colour temperature', 'white balance'],
  }),
  define({
    id: 'KELVINSHIFT',
    family: 'colour',
    gives: 'Colour temperature after a mired shift.',
    args: [
      one('kelvin', 'Colour temperature of the source', Q.kelvin, above),
      one('mireds', 'Shift of the gel, positive for a warming one; blank is no gel', Q.mired),
    ],
    result: Q.kelvin,
    answers: 'one',
    formula: '10⁶ / (10⁶ / kelvin + mireds)',
    run: kelvinShift,
    sources: ['mired', 'filter-series'],
    examples: [{ cells: [5000, 50], gives: 4000 }],
    words: ['gel', 'CTO', 'CTB', 'colour temperature'],
  }),
];
