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
  ['=SWEPT.STOPDIFF(8,11)', 'There is no SWEPT.STOPDIFF here. Did you mean SWEEP.STOPDIFF(…)?'],
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

const OTHERS = ['POWER', 'ROUND', 'VLOOKUP', 'HLOOKUP'];

it.each([
  ['=POWER(2,3)+SWEEP.STOPDIF(8,11)', 'There is no SWEEP.STOPDIF here. Did you mean SWEEP.STOPDIFF(…)?'],
  ['=VLOKUP(1,A1:B2,2)', 'There is no VLOKUP here. Did you mean VLOOKUP(…) or HLOOKUP(…)?'],
  [
    '=ROUND(QQQQQQ(1),1)',
    'There is no QQQQQQ here. Our functions begin with SWEEP and a dot; the pane lists them.',
  ],
  [
    '=SWEEP.QQQQQQ(1)',
    'There is no SWEEP.QQQQQQ here. Our functions begin with SWEEP and a dot; the pane lists them.',
  ],
  [
    '=POWER(2,F11)',
    'This formula, or a cell that it reads, has a name that is not known here. Our functions begin with SWEEP and a dot; the pane lists them.',
  ],
])('says of %s only what is not known beside other functions', (formula, sentence) => {
  expect(sayMeant(formula, OTHERS)).toBe(sentence);
});

it('lists no long row of names for a beginning that many have', () => {
  // the seven of the catalogue that begin with POPS
  expect(sayMeant('=pops(1)')).toBe(
    'There is no POPS here. 7 of our functions begin like that, SWEEP.POPSFORTARGET(…) for one; the pane lists them.',
  );
});
