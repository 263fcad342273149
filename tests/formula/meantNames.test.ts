import { expect, it } from 'vitest';
import { sayMeant } from '../../src/formula/meantNames';

it.each([
  ['=STOPDIFF(8,11)', 'There is no STOPDIFF here. Did you mean SWEEP.STOPDIFF(…)?'],
  ['=popsfort', 'There is no POPSFORT here. Did you mean SWEEP.POPSFORTARGET(…)?'],
  ['=1+stopdiff(8,11)', 'There is no STOPDIFF here. Did you mean SWEEP.STOPDIFF(…)?'],
  ['=SWEEP.POPSFORT(8,11)', 'There is no SWEEP.POPSFORT here. Did you mean SWEEP.POPSFORTARGET(…)?'],
  ['=SWEEP.STOPDIFF', 'SWEEP.STOPDIFF needs its arguments in brackets. Did you mean SWEEP.STOPDIFF(…)?'],
  ['=SWEEPSTOPDIFF(8,11)', 'There is no SWEEPSTOPDIFF here. Did you mean SWEEP.STOPDIFF(…)?'],
  ['=sweep_stopdiff(8,11)', 'There is no SWEEP_STOPDIFF here. Did you mean SWEEP.STOPDIFF(…)?'],
  ['=SWEEP.STPODIFF(8,11)', 'There is no SWEEP.STPODIFF here. Did you mean SWEEP.STOPDIFF(…)?'],
])('says which function %s may mean', (formula, sentence) => {
  expect(sayMeant(formula)).toBe(sentence);
});

it.each(['=SWEEP.STOPDIFF(8,11)', '=NOSUCHTHING(1)', '=st', '=A1', '="STOPDIFF(8,11)"', '=Data!STOPDIFFER'])(
  'guesses nothing of %s, and says what our names are like',
  (formula) => {
    expect(sayMeant(formula)).toBe(
      'This formula, or a cell that it reads, has a name that is not known here. Our functions begin with SWEEP and a dot; the pane lists them.',
    );
  },
);
