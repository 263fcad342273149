import { beforeAll, describe, expect, test } from 'vitest';
import { asRows, type Case, mendedAnswers, rounded } from './judge';
import natives from './natives.json';

/**
 * A hundred and fifty plain formulas with known answers: documented behaviour of spreadsheets, worked out by hand or by another
 * office suite; none was taken from the engine.
 */
const CASES = natives as unknown as readonly Case[];

describe('plain formulas with known answers', () => {
  let given: unknown[][][];
  beforeAll(async () => {
    given = await mendedAnswers(CASES);
  });

  test.each(CASES.map((each, i) => [each.formula, i] as const))('%s', (_, i) => {
    expect(given[i]).toEqual(rounded(asRows((CASES[i] as Case).expected)));
  });
});
