import {
  EFFICIENCY,
  LAMP_POWER_FACTOR,
  mainsCurrent,
  POWER_FACTOR,
  SHARE_OF_ONE,
} from '../../exposure/supply/mainsCurrent';
import { ABOVE_ZERO, NOT_NEGATIVE } from '../../exposure/core/range';
import { Q } from '../quantities';
import { define, one, withDefault } from '../types';

const above = { range: ABOVE_ZERO };

export const supplyRows = [
  define({
    id: 'MAINSCURRENT',
    family: 'supply',
    gives: 'Average current that a head draws while it recycles.',
    args: [
      one('energy', 'Energy of a flash; none for the modelling lamp alone', Q.energyOrNone, {
        range: NOT_NEGATIVE,
      }),
      one(
        'recycle',
        'Recycle time at that setting; may be blank for the lamp alone',
        { given: 'energy', yes: Q.duration, no: Q.wait },
        { range: NOT_NEGATIVE },
      ),
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
        'Power factor of the charger, an assumption unless the maker states it',
        Q.share,
        POWER_FACTOR,
        { range: SHARE_OF_ONE },
      ),
      withDefault(
        'lampPowerFactor',
        'Power factor of the modelling lamp: 1 for halogen, less for LED and dimmers',
        Q.share,
        LAMP_POWER_FACTOR,
        { range: SHARE_OF_ONE },
      ),
    ],
    result: Q.amperes,
    answers: 'one',
    formula:
      'energy / (recycle · efficiency · volts · powerFactor) + modelling / (volts · lampPowerFactor); energy none: the lamp alone',
    run: mainsCurrent,
    sources: ['breaker-forum', 'flash-capacitor', 'charging-assumptions'],
    examples: [
      { cells: [1200, 1.5, 230, 0, 1, 1], gives: 3.4782608695652173 },
      { cells: ['none', null, 230, 250], gives: 25 / 23 },
    ],
    notes: `Efficiency ${EFFICIENCY} and power factor ${POWER_FACTOR} are assumptions: they stand in for what is not known of a charger. The two currents are added as numbers, which is an upper bound. Take energy and recycle time at one setting.`,
    caution:
      'The inrush is higher than the average. Go by the plate of the maker and by local codes, and leave mains wiring to a licensed electrician. Heads keep a lethal charge after they are switched off; modelling lamps are hot.',
    words: ['amps', 'breaker', 'circuit', 'electricity', 'modelling lamp', 'halogen', 'LED'],
  }),
];
