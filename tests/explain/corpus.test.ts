import { expect, test } from 'vitest';
import { NAMESPACE, rowOf } from '../../src/catalogue';
import { explain } from '../../src/explain/explain';
import { calls } from '../../src/formula/calls';
import { lex } from '../../src/formula/lex';
import { readFormula } from '../../src/formula/tree';
import { ALL_TYPED, HOSTILE } from '../formula/corpus';

const ONE_CELL = [[8]];
const steps = (formula: string): string[] => explain(formula, () => ONE_CELL).steps.map(({ row }) => row.id);

/** Our functions that a formula calls, the inner ones first, as the reader of calls finds them. */
const called = (formula: string): string[] =>
  calls(lex(formula)).flatMap(({ name }) => rowOf(name.replace(`${NAMESPACE}.`, ''))?.id ?? []);

test.each(ALL_TYPED)('%s is explained call by call', (formula) => {
  expect(readFormula(formula)).not.toBeUndefined();
  expect(steps(formula)).toEqual(called(formula));
});

test('what nobody types is explained by nothing, or as far as it can be read', () => {
  for (const formula of HOSTILE) expect(steps(formula).every((id) => rowOf(id) !== undefined)).toBe(true);
});

test('a sum of thousands is explained, however little room the page has left for calls within calls', () => {
  const sum = `=${'1+'.repeat(15_000)}SWEEP.STOPDIFF(8,11)`;
  expect(steps(sum)).toEqual(['STOPDIFF']);
  expect(steps(`=SWEEP.STOPDIFF(8,11)${'%'.repeat(15_000)}`)).toEqual(['STOPDIFF']);
});
