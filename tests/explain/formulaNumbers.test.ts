import { describe, expect, test } from 'vitest';
import { Q, type Quantity } from '../../src/catalogue/quantities';
import {
  type AnyRow,
  type Arg,
  choice,
  flag,
  list,
  maybe,
  one,
  withDefault,
} from '../../src/catalogue/types';
import { type Came, formulaWithNumbers, whereLines } from '../../src/explain/formulaNumbers';
import { MADE } from '../cells/made';

const a = one('a', 'First', Q.energy);
const b = one('b', 'Second', Q.lensLength);
const focal = one('focal', 'Focal length', Q.lensLength, { sign: 'f' });
const word = choice('scale', 'Scale', ['wide', 'near']);

const rowOf = (formula: string, ...args: readonly Arg[]): AnyRow => ({
  ...MADE,
  args,
  answers: 'one',
  formula,
  run: () => 1,
});
const came = (
  arg: Arg,
  value: Came['value'],
  quantity: Quantity | undefined = arg.kind as Quantity,
): Came => ({
  arg,
  quantity,
  value,
});
const numbers = (formula: string, ...all: readonly Came[]): string | undefined =>
  formulaWithNumbers(rowOf(formula, ...all.map(({ arg }) => arg)), all);
const where = (formula: string, ...all: readonly Came[]) =>
  whereLines(rowOf(formula, ...all.map(({ arg }) => arg)), all);

describe('a formula with numbers', () => {
  test('has them in the place of the names', () => {
    expect(numbers('a / b', came(a, 400), came(b, 50))).toBe('400 Ws / 50 mm');
    expect(numbers('a · log2(a) + 1', came(a, 0.5))).toBe('0.5 Ws · log2(0.5 Ws) + 1');
  });
  test('has brackets around what is negative, tiny, or a unit that is raised', () => {
    expect(numbers('a + a²', came(a, 3))).toBe('3 Ws + (3 Ws)²');
    expect(numbers('a + a^2', came(a, 3))).toBe('3 Ws + (3 Ws)^2');
    expect(numbers('a', came(a, 0))).toBe('0 Ws');
    expect(numbers('a', came(a, -2))).toBe('(−2 Ws)');
    expect(numbers('a', came(a, 1e-9))).toBe('(1e−9 Ws)');
    expect(numbers('a²', came({ ...a, kind: Q.ratio }, 3))).toBe('3²');
  });
  test('has no unit where none is known', () =>
    expect(formulaWithNumbers(rowOf('a', a), [{ arg: a, quantity: undefined, value: 3 }])).toBe('3'));
  test('is none where words are left, or a value is no number', () => {
    expect(numbers('a and more', came(a, 400))).toBeUndefined();
    expect(numbers('a', came(a, undefined))).toBeUndefined();
    expect(numbers('a', came({ ...a, takes: 'list' }, [1, 2]))).toBeUndefined();
  });
  test('is none where it does not say all that was given', () => {
    const c = maybe('c', 'Third', Q.energy);
    expect(numbers('a', came(a, 1), came(c, 2))).toBeUndefined();
    expect(numbers('a', came(a, 1), came(c, undefined))).toBe('1 Ws');
    const d = withDefault('d', 'Fourth', Q.energy, 5);
    expect(numbers('a', came(a, 1), came(d, 6))).toBeUndefined();
    expect(numbers('a', came(a, 1), came(d, 5))).toBe('1 Ws');
    expect(numbers('a', came(a, 1), came(word, 'near', undefined))).toBe('1 Ws');
    expect(numbers('a', came(a, 1), came(flag('f', 'Flag'), true, undefined))).toBe('1 Ws');
  });
  test('is none where nothing of what was given stands in it', () =>
    expect(numbers('1 + 2', came(maybe('c', 'Third', Q.energy), undefined))).toBeUndefined());
  test('is the part that the words chosen belong to', () => {
    const parts = 'wide: a; near: 2 · a';
    expect(numbers(parts, came(a, 3), came(word, 'wide', undefined))).toBe('3 Ws');
    expect(numbers(parts, came(a, 3), came(word, 'near', undefined))).toBe('2 · 3 Ws');
    expect(numbers(parts, came(a, 3), came(word, 'far', undefined))).toBeUndefined();
    const other = choice('basis', 'Basis', ['sum', 'each']);
    expect(numbers(parts, came(a, 3), came(other, 'sum', undefined), came(word, 'near', undefined))).toBe(
      '2 · 3 Ws',
    );
    expect(numbers('a + 1; near: 2 · a', came(a, 3), came(word, 'near', undefined))).toBe('2 · 3 Ws');
  });
});

describe('what signs stand for', () => {
  test('is told for those that occur and have a value', () => {
    expect(where('f + a', came(focal, 50), came(a, 400), came(b, 7))).toEqual([
      { name: 'f (focal)', value: '50 mm' },
      { name: 'a', value: '400 Ws' },
    ]);
    expect(where('f', came(focal, undefined))).toEqual([]);
    expect(whereLines(rowOf('a', a), [{ arg: a, quantity: undefined, value: 3 }])).toEqual([]);
  });
  test('is told of a list whether its name occurs or not, by its first members', () => {
    const all = list('energies', 'Energies', Q.energy);
    const told = (...members: number[]) => where('in words', came(all, members))[0]?.value;
    expect(where('in words', came(all, [1, 2]))).toEqual([{ name: 'energies', value: '1 Ws; 2 Ws' }]);
    expect(told(1, 2, 3)).toBe('1 Ws; 2 Ws; 3 Ws');
    expect(told(1, 2, 3, 4, 5)).toBe('1 Ws; 2 Ws; 3 Ws and 2 more');
  });
  test('is told of a word as it is', () =>
    expect(where('a', came(a, 'wide'))).toEqual([{ name: 'a', value: 'wide' }]));
});
