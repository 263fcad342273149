import { expect, test } from 'vitest';
import { looksOutside } from '../../src/formula/looksOutside';
import { TYPED } from './corpus';

test.each(TYPED['other files'])('%s looks outside', (formula) =>
  expect(looksOutside(formula)).toBe(formula !== '=Book.xlsx!Lights[Reading]'),
);
test.each(['="a|[1]Sheet1!A1', "='a|b", '=[1Sheet1!A1'])('%s, which cannot be read, may', (formula) =>
  expect(looksOutside(formula)).toBe(true),
);
test.each(
  Object.entries(TYPED)
    .filter(([group]) => group !== 'other files')
    .flatMap(([, formulas]) => formulas.filter((formula) => formula !== "='Set [x'!A1")),
)('%s does not', (formula) => expect(looksOutside(formula)).toBe(false));
test.each(['=T[', '="[x', "='[x"])('%s, which cannot be read, speaks of no place', (formula) =>
  expect(looksOutside(formula)).toBe(false),
);
