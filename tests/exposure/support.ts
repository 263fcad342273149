import { describe, expect, it } from 'vitest';
import { rowOf } from '../../src/catalogue';
import type { AnyRow, Arg } from '../../src/catalogue/types';
import { type Answer, call } from '../../src/cells/call';
import { type Fail, isFail } from '../../src/exposure/core/result';
import { type CellError, isCellError } from '../../src/formula/errors';

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

/** What a function answers to cells, as every host asks it. */
export const answerOf = (id: string, ...cells: unknown[]): Answer => call(rowOf(id) as AnyRow, cells);

/** What an argument may be: numbers on the wrong side, numbers just inside, and the words of the refusal. */
interface Rule {
  readonly wrong: readonly number[];
  readonly right: readonly number[];
  readonly says: string;
}
const RULES = {
  'above 0': { wrong: [0, -1e-9, -8], right: [1e-6, 1e6], says: 'must be above 0' },
  'from 0': { wrong: [-1e-9, -8], right: [0, 1e6], says: 'must be from 0 up' },
  any: { wrong: [], right: [-3, 0, 3], says: '' },
  whole: { wrong: [0, -1, 0.5, 1.5, 2.0001], right: [1, 2, 99], says: 'must be a whole number from 1 up' },
  'pops of a plan': {
    wrong: [0, -1, 0.5, 1000],
    right: [1, 999],
    says: 'must be a whole number from 1 up to 999',
  },
  'whole or none': {
    wrong: [-1, 0.5, 1.5, 2.0001],
    right: [0, 1, 99],
    says: 'must be a whole number from 0 up',
  },
  level: { wrong: [0, 1, -0.1, 1.5], right: [0.001, 0.999], says: 'must be above 0 and below 1' },
  share: { wrong: [0, -0.5, 1.0001], right: [0.001, 1], says: 'must be above 0 and up to 1' },
  pupil: { wrong: [0.0999, 10.001, 0.05], right: [0.1, 10], says: 'must be from 0.1 up to 10' },
  exponent: { wrong: [0.999, 3.001, -1, 0], right: [1, 3], says: 'must be from 1 up to 3' },
  overlap: { wrong: [-0.001, 1, 2], right: [0, 0.999], says: 'must be from 0 below 1' },
  tenths: { wrong: [-1, -0.001, 2.5, 10], right: [0, 1, 9], says: 'must be a whole number from 0 up to 9' },
  heads: { wrong: [0, 25, 2.5, -1], right: [1, 24], says: 'must be a whole number from 1 up to 24' },
  tilt: { wrong: [0, -5, 90.001], right: [0.001, 90], says: 'must be above 0 and up to 90' },
  week: { wrong: [0, -3, 7.001], right: [0.5, 7], says: 'must be above 0 and up to 7' },
} satisfies Record<string, Rule>;
/** How a refusal begins that is about the range of one argument. */
const OF_A_RANGE = /must be (above|below|from|up to|a whole)/;

type Good = number | string | undefined | readonly number[] | readonly (readonly number[])[];
/** An argument that is in order, and what it may be. A list or grid is tried with a wrong member at its end. */
type Tried = readonly [good: Good, rule?: keyof typeof RULES];

/** A list as a column of cells. */
const asCells = (good: Good): unknown =>
  Array.isArray(good) && !Array.isArray(good[0]) ? good.map((member: unknown) => [member]) : good;

/** The same cells with another number as the last of them. */
function withLast(good: Good, x: number): unknown {
  if (!Array.isArray(good)) return x;
  const rows = asCells(good) as number[][];
  return [...rows.slice(0, -1), [...(rows.at(-1) as number[]).slice(0, -1), x]];
}

/** Whether a cell of 0 is an empty one to the argument: it then has no range to keep. */
function takesZeroForBlank(id: string, index: number): boolean {
  const { kind, takes } = (rowOf(id) as AnyRow).args[index] as Arg;
  return takes !== 'grid' && takes !== 'series' && !('blank' in kind && kind.blank === 'zero');
}

/**
 * States for each argument that a call of the function is refused what lies outside its range, naming the argument, and
 * takes what lies just inside. The numbers and words stand here, apart from the catalogue's.
 *
 * @param args - all arguments up to the last that is tried, by name and in order.
 */
export function itKeepsItsRanges(id: string, args: Readonly<Record<string, Tried>>): void {
  const names = Object.keys(args);
  const good = names.map((name) => (args[name] as Tried)[0]);
  const withCell = (index: number, cell: unknown): Answer =>
    answerOf(id, ...good.map((g, i) => (i === index ? cell : asCells(g))));
  const firstList = good.findIndex((g) => Array.isArray(g) && !Array.isArray(g[0]));
  describe('ranges', () => {
    it('names the arguments as the catalogue does', () =>
      expect(names).toEqual((rowOf(id) as AnyRow).args.slice(0, names.length).map((arg: Arg) => arg.name)));
    for (const [index, name] of names.entries()) {
      const rule: Rule | undefined = args[name]?.[1] && RULES[args[name][1]];
      if (rule === undefined) continue;
      const wrong = rule.wrong.filter((x) => x !== 0 || !takesZeroForBlank(id, index));
      if (wrong.length > 0)
        it(`refuses ${wrong.join(', ')} as ${name}`, () => {
          for (const x of wrong) {
            const came = withCell(index, withLast(good[index], x));
            expect(came).toMatchObject({
              error: '#NUM!',
              message: expect.stringContaining(`${rule.says}, not`),
            });
            expect((came as CellError).message).toContain(name);
          }
        });
      it(`takes ${rule.right.join(', ')} as ${name}`, () => {
        for (const x of rule.right) {
          const came = withCell(index, withLast(good[index], x));
          expect(isCellError(came) ? came.message : '').not.toMatch(OF_A_RANGE);
        }
      });
      if (index === firstList && takesZeroForBlank(id, index))
        it(`refuses an empty list of ${name}`, () =>
          expect(withCell(index, null)).toMatchObject({
            error: '#VALUE!',
            message: expect.stringContaining(`${name} is blank`),
          }));
    }
  });
}

/** What an answer may be off by, as a share of it. */
const RELATIVE = 1e-12;

/** Expects a number within a relative error. */
export function expectNear(came: number, wanted: number, relative = RELATIVE): void {
  expect(Math.abs(came - wanted), `${came} for ${wanted}`).toBeLessThanOrEqual(relative * Math.abs(wanted));
}
