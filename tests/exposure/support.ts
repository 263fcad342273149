import { describe, expect, it } from 'vitest';
import { type Fail, isFail } from '../../src/exposure/core/result';

/** The answer, where there must be one. */
export function value<T>(result: T | Fail): T {
  if (isFail(result)) throw new Error(`refused: ${result.message}`);
  return result;
}

/** The refusal, where there must be one. */
export function refusal(result: unknown): Fail {
  if (!isFail(result)) throw new Error(`not refused: ${JSON.stringify(result)}`);
  return result;
}

/** What an argument may be: numbers on the wrong side, numbers just inside, and the words of the refusal. */
interface Rule {
  readonly wrong: readonly number[];
  readonly right: readonly number[];
  readonly says: string;
}
const NOT_FINITE = [NaN, Infinity, -Infinity];
const RULES = {
  'above 0': { wrong: [0, -1e-9, -8, ...NOT_FINITE], right: [1e-6, 1e6], says: 'must be above 0' },
  'from 0': { wrong: [-1e-9, -8, ...NOT_FINITE], right: [0, 1e6], says: 'must be from 0 up' },
  any: { wrong: NOT_FINITE, right: [-3, 0, 3], says: 'must be a number' },
  whole: {
    wrong: [0, -1, 0.5, 1.5, 2.0001, ...NOT_FINITE],
    right: [1, 2, 99],
    says: 'must be a whole number from 1 up',
  },
  level: {
    wrong: [0, 1, -0.1, 1.5, ...NOT_FINITE],
    right: [0.001, 0.999],
    says: 'must be above 0 and below 1',
  },
  share: { wrong: [0, -0.5, 1.0001, ...NOT_FINITE], right: [0.001, 1], says: 'must be above 0 and up to 1' },
  exponent: { wrong: [0.999, 3.001, -1, 0, ...NOT_FINITE], right: [1, 3], says: 'must be from 1 up to 3' },
  overlap: { wrong: [-0.001, 1, 2, ...NOT_FINITE], right: [0, 0.999], says: 'must be from 0 below 1' },
  tilt: { wrong: [0, -5, 90.001, ...NOT_FINITE], right: [0.001, 90], says: 'must be above 0 and up to 90' },
  week: { wrong: [0, -3, 7.001, ...NOT_FINITE], right: [0.5, 7], says: 'must be above 0 and up to 7' },
} satisfies Record<string, Rule>;

/** An argument that is in order, and what it may be. A list is tried with a wrong member at its end. */
type Tried = readonly [good: number | string | readonly number[] | undefined, rule?: keyof typeof RULES];

/**
 * States for each argument that the function refuses what lies outside its range, naming the argument, and takes what lies
 * just inside.
 */
export function itKeepsItsRanges(
  run: (...args: never[]) => unknown,
  args: Readonly<Record<string, Tried>>,
): void {
  const names = Object.keys(args);
  const good = names.map((name) => args[name]?.[0]);
  const call = (index: number, given: unknown): unknown =>
    (run as (...all: unknown[]) => unknown)(...good.map((g, i) => (i === index ? given : g)));
  const asGiven = (index: number, x: number): unknown => {
    const list = good[index];
    return Array.isArray(list) ? [...(list as number[]).slice(0, -1), x] : x;
  };
  describe('ranges', () => {
    for (const [index, name] of names.entries()) {
      const rule: Rule | undefined = args[name]?.[1] && RULES[args[name][1]];
      if (rule === undefined) continue;
      it(`refuses ${rule.wrong.join(', ')} as ${name}`, () => {
        for (const x of rule.wrong) {
          const { fail, message } = refusal(call(index, asGiven(index, x)));
          expect(fail).toBe('domain');
          expect(message).toContain(name);
          expect(message).toContain(Number.isFinite(x) ? `${rule.says}, not` : 'finite');
        }
      });
      it(`takes ${rule.right.join(', ')} as ${name}`, () => {
        for (const x of rule.right) {
          const came = call(index, asGiven(index, x));
          if (isFail(came)) expect(came.message).not.toContain(rule.says);
        }
      });
      if (Array.isArray(good[index]))
        it(`refuses an empty list of ${name}`, () => {
          const { fail, message } = refusal(call(index, []));
          expect(fail).toBe('unreadable');
          expect(message).toContain(name);
        });
    }
  });
}

/** What an answer may be off by, as a share of it. */
const RELATIVE = 1e-12;

/** Expects a number within a relative error. */
export function expectNear(came: number, wanted: number, relative = RELATIVE): void {
  expect(Math.abs(came - wanted), `${came} for ${wanted}`).toBeLessThanOrEqual(relative * Math.abs(wanted));
}
