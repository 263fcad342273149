import { DAYS_A_WEEK, hireCost, WEEK_DAYS } from '../../exposure/hire/hireCost';
import { ABOVE_ZERO, NOT_NEGATIVE } from '../../exposure/core/range';
import { Q } from '../quantities';
import { define, one, withDefault } from '../types';

const above = { range: ABOVE_ZERO };

export const hireRows = [
  define({
    id: 'HIRECOST',
    family: 'hire',
    gives: 'Cost of hire with a capped week.',
    args: [
      one('dayRate', 'Rate for a day; none where it costs nothing', Q.money, { range: NOT_NEGATIVE }),
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
