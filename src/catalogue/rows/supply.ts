import { EFFICIENCY, mainsCurrent, POWER_FACTOR, SHARE_OF_ONE } from '../../exposure/supply/mainsCurrent';
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
];
