import { expect, test } from 'vitest';
import { shifter } from '../../src/formula/shift';
import { ALL_TYPED, HOSTILE } from './corpus';

test.each([
  ['A1+$B$2+C$3+$D4', 2, 1, 'B3+$B$2+D$3+$D6'],
  ['SUM(A:B)+SUM($A:B)+SUM(1:2)', 1, 1, 'SUM(B:C)+SUM($A:C)+SUM(2:3)'],
  ['"A1"&\'A1 B2\'!A1&Table1[A1]', 1, 0, '"A1"&\'A1 B2\'!A2&Table1[A1]'],
  ['LOG10(A1)+ABC1.x+Q1!A1', 1, 0, 'LOG10(A2)+ABC1.x+Q1!A2'],
  ["T['[A1]+A1", 1, 0, "T['[A1]+A2"],
  ['A1:Plan!B3', 1, 1, 'B2:Plan!C4'],
  ['Jan:Dec!A1:$B2', 1, 1, 'Jan:Dec!B2:$B3'],
  ['SUM(A1#,B2:C3)', 1, 1, 'SUM(B2#,C3:D4)'],
  ['A$1:A3', 1, 0, 'A$1:A4'],
  ['A1', -1, 0, '#REF!'],
  ['A1:B2', -1, 0, '#REF!:B1'],
  ['Plan!A:B', 0, -1, 'Plan!#REF!'],
  ['1:$2', -1, 0, '#REF!'],
  ['XFD1', 0, 1, '#REF!'],
  ['A1048576', 1, 0, '#REF!'],
  ['XFE1', 0, -1, 'XFE1'],
])('%s, %i down and %i right, is %s', (formula, down, right, wanted) =>
  expect(shifter(formula)(down, right)).toBe(wanted),
);

test.each([...ALL_TYPED, ...HOSTILE])('%s stays where it is, and comes back from further in', (formula) => {
  expect(shifter(formula)(0, 0)).toBe(formula);
  const there = shifter(formula)(1, 1);
  // what has left the sheet does not come back
  if (!there.replaceAll('#REF!', '').includes('#REF!') && !/XFD1048576|#REF!/i.test(there + formula))
    expect(shifter(there)(-1, -1).toUpperCase()).toBe(formula.toUpperCase());
});
