import { expect, test } from 'vitest';
import { formulaRefusal } from '../../../src/hosts/command/sentences';

const unknown = (formula: string): string => formulaRefusal(formula, { error: '#NAME?' }).message;

test.each([
  ["='Set (2)'!A1+SUMM(1)", 'There is no function SUMM. Did you mean SUM?'],
  ['=T[Power (W)]+SUMM(1)', 'There is no function SUMM. Did you mean SUM?'],
  ['="POWER"&SUMM (1)', 'There is no function SUMM. Did you mean SUM?'],
  ['=SÜMM(1)', 'There is no function SÜMM.'],
])('%s names a function that there is not', (formula, message) => expect(unknown(formula)).toBe(message));

test.each(["='Set (2)'!A1", '=T[Power (W)]', '=LET(half,LAMBDA(x,x/2),half(8))', '=Rate'])(
  '%s names no unknown function',
  (formula) => expect(unknown(formula)).toBe('A name in the formula is not known here.'),
);
