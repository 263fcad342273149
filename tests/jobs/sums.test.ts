import { describe, expect, test } from 'vitest';
import { isContains, isRefused, JOBS, rowsOf } from './job';
import { errorOf, numbersIn, sumOf } from './sums';

const STEPS = [...JOBS].flatMap(([name, { steps }]) =>
  steps.map((step, i) => ({ ...step, place: `${name}, ${i + 1}. ${step.asks}` })),
);
const SUMS = STEPS.flatMap(({ working }) => working.flatMap((line) => sumOf(line) ?? []));

describe('the sums of the jobs', () => {
  test('stand under every step, with where their rule comes from', () => {
    const bare = STEPS.filter(({ working, source }) => !working.every((line) => line.trim()) || !source);
    expect(bare).toEqual([]);
    expect(STEPS.filter(({ working }) => working.length === 0)).toEqual([]);
  });

  test('come out as written, as far as the figures shown can tell', () => {
    expect(SUMS.length).toBeGreaterThanOrEqual(418);
    expect(SUMS.filter((sum) => !(errorOf(sum).off <= errorOf(sum).may)).map(({ line }) => line)).toEqual([]);
  });

  test('would not come out with another result', () => {
    const shifted = SUMS.map((sum) => ({
      ...sum,
      result: String(Number(sum.result.replace('−', '-')) * 1.001 || 0.001).replace('-', '−'),
    }));
    expect(shifted.filter((sum) => errorOf(sum).off <= errorOf(sum).may).map(({ line }) => line)).toEqual([]);
  });

  test('have every number that is expected', () => {
    const missing = STEPS.flatMap(({ expect: wanted, working, place }) => {
      if (isRefused(wanted) || isContains(wanted)) return [];
      const found = new Set(numbersIn(working.join('\n')));
      const numbers = rowsOf(wanted)
        .flat()
        .filter((value) => typeof value === 'number');
      return numbers.filter((value) => !found.has(value)).map((value) => `${value} in ${place}`);
    });
    expect(missing).toEqual([]);
  });
});

describe('a sum', () => {
  const off = (line: string): number => errorOf(sumOf(line) as never).off;

  test('is worked as on a calculator', () => {
    expect(off('Powers first: 2 × 3^2 − 2^−1 = 17.5')).toBe(0);
    expect(off('Of what is left: 12/2/3 = 2')).toBe(0);
    expect(off('A minus before a power: 10 − 2^2 = 6')).toBe(0);
    expect(off('Roots: √(16) × 2 = 8 m')).toBe(0);
    expect(off('Whole: ⌈2.1⌉ + ⌊2.9⌋ = 5')).toBe(0);
    expect(off('Money: round to cents (2.004) = 2')).toBe(0);
    expect(off('Wrong: 1 + 1 = 3')).toBe(1);
  });

  test('is made of numbers alone', () => {
    expect(sumOf('Left: 4(2/d − y) + y = 5d')).toBeUndefined();
    expect(sumOf('Nothing is worked here.')).toBeUndefined();
  });

  test('that breaks off is an error', () => {
    expect(() => off('Open: (1 + 2 = 3')).toThrow(') is missing');
    expect(() => off('Two at once: 1 2 = 3')).toThrow('no sum');
  });
});
