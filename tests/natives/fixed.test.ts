import { beforeAll, describe, expect, test } from 'vitest';
import { agree, type Answer, shown } from './answers';
import fixed from './fixed.json';
import { mendedHere } from './here';

/**
 * Formulas that the generator drew, with the answers of LibreOffice 7.4 or of the documentation: none is the engine's own.
 * `npm run natives -- 400 --seed 19 --write tests/natives/fixed.json` wrote them.
 */
const FIXED = fixed as readonly {
  readonly formula: string;
  readonly expected: Answer;
  readonly by: string;
}[];

describe('three hundred plain formulas', () => {
  let given: Answer[];
  beforeAll(async () => {
    given = await mendedHere(FIXED.map(({ formula }) => formula));
  });

  test('they are so many, each once', () => {
    expect(new Set(FIXED.map(({ formula }) => formula)).size).toBe(300);
  });
  test.each(FIXED.map(({ formula, expected, by }, i) => [formula, by, expected, i] as const))(
    '%s, by %s',
    (_, __, expected, i) => {
      const ours = given[i] ?? null;
      expect(agree(ours, expected) ? shown(expected) : shown(ours)).toBe(shown(expected));
    },
  );
});
