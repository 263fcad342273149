import { expect, test } from 'vitest';
import { sayUnknownFunctions } from '../../src/engine/unknownFunctions';

const said = (formulas: readonly string[], names: readonly { name: string; formula: string }[] = []) =>
  sayUnknownFunctions({ sheets: [{ cells: [...formulas.map((formula) => ({ formula })), {}] }], names });

test('functions that a file has and this grid has not are told, each once', () => {
  expect(said(['=SUM(A1)+GETPIVOTDATA("x",A1)', '=foo(1)', '=IMAGE("x")', '=FOO(2)'])).toEqual([
    'This grid has no function GETPIVOTDATA, FOO, IMAGE: their formulas stay, and their cells show #NAME? in the place of the last figures.',
  ]);
  expect(said(['=1'], [{ name: 'Net', formula: '=LAMBDA(x,NOSUCH(x))' }])[0]).toContain(
    'no function NOSUCH:',
  );
});

test('a long list of them is cut', () => {
  const sentence = said(Array.from({ length: 11 }, (_, i) => `=NOSUCH.${'ABCDEFGHIJK'[i]}(1)`))[0];
  expect(sentence).toContain('NOSUCH.H and 3 more:');
  expect(sentence).not.toContain('NOSUCH.I');
});

test('those that are calculated are not: ours, plain ones, LET, LAMBDA and names for them', () => {
  expect(
    said(
      ['=SWEEP.STOPDIFF(8,11)', '=LET(f,LAMBDA(x,x*2),f(2))', '=Net(2)', '=XLOOKUP(1,A:A,B:B)', '=(1+2)*3'],
      [{ name: 'Net', formula: '=LAMBDA(x,x/1.2)' }],
    ),
  ).toEqual([]);
});
