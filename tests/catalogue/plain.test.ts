import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import { PLAIN_FUNCTIONS } from '../../src/catalogue/plain';
import { PLAIN_ARGUMENTS } from '../../src/catalogue/plain/arguments';
import { MENDED } from '../../src/engine/mends';
import { LACKING } from '../../src/engine/mends/lackingFunctions';
import { ENGINE_FUNCTIONS, NATIVE_FAMILIES } from '../../src/engine/natives';
import { answers, type TestCell } from '../engine/book';

const NAMES = PLAIN_FUNCTIONS.map(({ name }) => name);

/** What the comment of the rows says of the cells: words in A2:A9, numbers in B2:C9, dates in D2:D9. */
const CELLS: TestCell[][] = [
  ['Kit', 'Power', 'Count', 'Day'],
  ['lamp', 6.5, 1, 46000],
  ['stand', 12, 2, 46030],
  ['lamp', 3, 2, 46045],
  ['cable', 8, 4, 46050],
  ['clamp', 1.5, 5, 46051],
  ['flag', 9, 6, 46052],
  ['stand', 20, 7, 46060],
  ['gel', 4, 9, 46070],
];

/** What the engine calculates a function with: the last of its name. */
type Executor = new (name: string) => { readonly minParams: number; readonly maxParams: number };
const executors = new Map(
  [...Object.values(NATIVE_FAMILIES).flat(), ...MENDED].map(
    ([executor, name]) => [String(name), executor as Executor] as const,
  ),
);
// It may have no name for a value, and then is of no use.
executors.delete('LAMBDA');

describe('the help of plain functions', () => {
  test('is there for the hundred of a studio, each once', () => {
    expect(NAMES.length).toBeGreaterThanOrEqual(100);
    expect(new Set(NAMES).size).toBe(NAMES.length);
  });

  test('speaks of functions that the engine has, and of none of ours', () => {
    expect(NAMES.filter((name) => !ENGINE_FUNCTIONS.includes(name))).toEqual([]);
    expect(NAMES.filter((name) => LACKING.includes(name))).toEqual([]);
    expect(NAMES.filter((name) => CATALOGUE.some(({ id }) => id === name))).toEqual([]);
  });

  test('is one short line of words each, and no key of a dictionary', () => {
    for (const { name, gives, args } of PLAIN_FUNCTIONS) {
      expect(gives, name).toMatch(/^\S[^\n]{5,80}\.$/);
      for (const line of [gives, ...args.map(({ about }) => about)]) {
        expect(line, name).toMatch(/^\S[^\n]*[^.]\.$/);
        expect(line, name).not.toMatch(/functionList|undefined|\w\.[a-z]/);
      }
    }
  });

  test('names each argument once, in words that all rows share and all use', () => {
    for (const { name, args } of PLAIN_FUNCTIONS) {
      const named = args.map((arg) => arg.name);
      expect(new Set(named).size, name).toBe(named.length);
      const firstOptional = args.findIndex(({ optional }) => optional);
      if (firstOptional >= 0)
        expect(
          args.slice(firstOptional).every(({ optional }) => optional),
          name,
        ).toBe(true);
    }
    const used = new Set(PLAIN_FUNCTIONS.flatMap(({ args }) => args.map((arg) => arg.name)));
    expect([...used].sort()).toEqual(Object.keys(PLAIN_ARGUMENTS).sort());
  });

  test('asks for as many arguments as the engine does', () => {
    const wrong = PLAIN_FUNCTIONS.flatMap(({ name, args }) => {
      const Executor = executors.get(name);
      if (!Executor) return [];
      const { minParams, maxParams } = new Executor(name);
      const required = args.filter(({ optional }) => !optional).length;
      const isRight =
        (minParams < 0 || minParams === required) &&
        (maxParams < 0 ||
          (args.some(({ repeats }) => repeats) ? maxParams > args.length : maxParams >= args.length));
      return isRight
        ? []
        : [`${name}: ${required} of ${args.length}, the engine takes ${minParams} to ${maxParams}`];
    });
    expect(wrong).toEqual([]);
  });

  test('gives examples that calculate', async () => {
    // A LAMBDA by itself is no value of a cell: its example is called.
    const formulas = PLAIN_FUNCTIONS.map(({ name, args }) => {
      const formula = `=${name}(${args.map(({ example }) => example).join(',')})`;
      return name === 'LAMBDA' ? `${formula}(2)` : formula;
    });
    const { book, answer } = await answers(formulas, CELLS);
    const refused = formulas.filter((formula, i) => {
      const cells = (answer(i) as unknown[][]).flat();
      return (
        !formula.startsWith('=NA(') && (cells.length === 0 || cells.some((cell) => typeof cell === 'object'))
      );
    });
    book.dispose();
    expect(refused).toEqual([]);
  });
});
