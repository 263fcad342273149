import { beforeAll, describe, expect, test } from 'vitest';
import { asRows, type Case, mendedAnswers, rounded } from './judge';
import natives from './natives.json';

/**
 * A hundred and fifty plain formulas with known answers: documented behaviour of spreadsheets, worked out by hand or by another
 * office suite; none was taken from the engine.
 */
const CASES = natives as unknown as readonly Case[];

/** What the engine cannot read: a minus before a name, a text or a list, a list behind an operator, %% and a union. */
const NOT_READ: readonly string[] = [
  '=-"5"',
  '=LET(t,5,-t^2)',
  '=LET(x,5,IF(x>3,-x,x))',
  '=MAP({1,2},LAMBDA(x,-x))',
  '=10-{1,2}',
  '="a"&{1,2}',
  '=SUM(--{"1","2"})',
  '=200%%',
  '=SUM((H1:H2,H4))',
  '=OR(A1={5,7})',
];

describe('plain formulas with known answers', () => {
  let given: unknown[][][];
  beforeAll(async () => {
    given = await mendedAnswers(CASES);
  });

  test.each(CASES.map((each, i) => [each.formula, i] as const))('%s', (formula, i) => {
    const wanted = rounded(asRows((CASES[i] as Case).expected));
    if (NOT_READ.includes(formula)) expect(given[i]).not.toEqual(wanted);
    else expect(given[i]).toEqual(wanted);
  });
});
