import { kelvinShift, miredShift } from '../../exposure/colour/mired';
import { DAYS_A_WEEK, hireCost, WEEK_DAYS } from '../../exposure/hire/hireCost';
import { EFFICIENCY, mainsCurrent, POWER_FACTOR, SHARE_OF_ONE } from '../../exposure/supply/mainsCurrent';
import { ABOVE_ZERO, NOT_NEGATIVE } from '../../exposure/core/range';
import { Q } from '../quantities';
import { define, one, withDefault } from '../types';

const above = { range: ABOVE_ZERO };

export const colour = [
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
      one('mireds', 'Shift of the gel, positive for a warming one', Q.mired),
    ],
    result: Q.kelvin,
    answers: 'one',
    formula: '10⁶ / (10⁶ / kelvin + mireds)',
    run: kelvinShift,
    sources: ['mired', 'filter-series'],
    examples: [{ cells: [5000, 50], gives: 4000 }],
    words: ['gel', 'CTO', 'CTB', 'colour temperature'],
  }),
  define({
    id: 'MAINSCURRENT',
    family: 'colour',
    gives: 'Average current that a head draws while it recycles.',
    args: [
      one('energy', 'Energy of a flash', Q.energy, above),
      one('recycle', 'Recycle time', Q.duration, above),
      one('volts', 'Mains voltage', Q.volts, above),
      withDefault('modelling', 'Power of the modelling lamp', Q.watts, 0, { range: NOT_NEGATIVE }),
      withDefault(
        'efficiency',
        'Efficiency of charging, an assumption unless the maker states it',
        Q.share,
        EFFICIENCY,
        { range: SHARE_OF_ONE },
      ),
      withDefault(
        'powerFactor',
        'Power factor of the supply, an assumption unless the maker states it',
        Q.share,
        POWER_FACTOR,
        { range: SHARE_OF_ONE },
      ),
    ],
    result: Q.amperes,
    answers: 'one',
    formula: '(energy / (recycle · efficiency) + modelling) / (volts · powerFactor)',
    run: mainsCurrent,
    sources: ['breaker-forum', 'flash-capacitor', 'charging-assumptions'],
    examples: [{ cells: [1200, 1.5, 230, 0, 1, 1], gives: 3.4782608695652173 }],
    notes: `Efficiency ${EFFICIENCY} and power factor ${POWER_FACTOR} stand in for what is not known of a charger.`,
    caution:
      'The inrush is higher than the average. Go by the plate of the maker and by local codes, and leave mains wiring to a licensed electrician. Heads keep a lethal charge after they are switched off; modelling lamps are hot.',
    words: ['amps', 'breaker', 'circuit', 'electricity'],
  }),
  define({
    id: 'HIRECOST',
    family: 'colour',
    gives: 'Cost of hire with a capped week.',
    args: [
      one('dayRate', 'Rate for a day', Q.money, { range: NOT_NEGATIVE }),
      one('days', 'Days of hire', Q.days, above),
      withDefault('daysPerWeek', 'Day rates that seven days cost at most', Q.days, WEEK_DAYS, {
        range: DAYS_A_WEEK,
      }),
    ],
    result: Q.money,
    answers: 'one',
    formula: 'dayRate · (whole weeks · daysPerWeek + the smaller of the remaining days and daysPerWeek)',
    run: hireCost,
    sources: ['common-practice'],
    examples: [
      { cells: [80, 2], gives: 160 },
      { cells: [80, 10], gives: 480 },
    ],
    notes: 'A week for three days is common practice; ask the hire house.',
    words: ['rental', 'rent', 'quote', 'budget'],
  }),
];
