import { describe, expect, it } from 'vitest';
import { readSamples, timeAt } from '../../../src/exposure/trace/samples';
import { refusal, value } from '../support';

const read = (times: readonly number[], values: readonly number[]) => value(readSamples(times, values));
const says = (times: readonly number[], values: readonly number[]) => {
  const { fail, message } = refusal(readSamples(times, values));
  return [fail, message];
};
const tooLarge = ['domain', 'The numbers of the trace are too large to be measured.'];
const notFinite = (column: string, row: number) => [
  'domain',
  `${column} must be numbers: row ${row} is not a finite number.`,
];

describe('a recording that is read', () => {
  it('is kept as it came, with its extremes and its mean', () => {
    const times = [1, 2, 4];
    const values = [3, -5, 8];
    const samples = read(times, values);
    expect(samples).toMatchObject({ step: 0, count: 3, lowest: -5, highest: 8 });
    expect(samples.mean).toBeCloseTo(2, 12);
    expect(samples.times).toBe(times);
    expect(samples.values).toBe(values);
  });

  it('has its extremes and its mean over all of many samples', () => {
    const values = Array.from({ length: 2001 }, (_, i) => (i === 700 ? -9 : i === 1900 ? 13 : 1 + (i % 2)));
    const samples = read([1], values);
    expect(samples).toMatchObject({ count: 2001, lowest: -9, highest: 13 });
    // 1001 ones and 1000 twos, of which two ones are other numbers
    expect(samples.mean).toBeCloseTo((999 + 2000 - 9 + 13) / 2001, 12);
  });

  it('has the times that are given, or those of a steady step from 0 on', () => {
    const listed = read([1, 2, 4], [0, 1, 0.5]);
    expect([0, 1, 2].map((i) => timeAt(listed, i))).toEqual([1, 2, 4]);
    const steady = read([0.25], [0, 1, 0.5]);
    expect(steady).toMatchObject({ times: undefined, step: 0.25 });
    expect([0, 1, 2].map((i) => timeAt(steady, i))).toEqual([0, 0.25, 0.5]);
  });

  it('ends with the last row that is not blank', () => {
    expect(read([0, 1, 2, 3, 0, 0], [0, 1, 2, 1, 0, 0]).count).toBe(4);
    expect(read([0, 1, 2, 3, 4, 5], [0, 1, 2, 1, 0, 0]).count).toBe(6);
    expect(read([-2, -1, 0, 0], [0, 1, 2, 3]).count).toBe(4);
    expect(read([0.5], [0, 1, 2, 1, 0, 0]).count).toBe(4);
  });

  it('may end with blank rows after times below 0', () => {
    expect(read([-3, -2, -1, 0], [0, 1, 2, 0])).toMatchObject({ count: 3, lowest: 0, highest: 2 });
  });

  it('may be of three samples, with equal neighbours among the times', () => {
    expect(read([0, 0, 1], [0, 1, 0.5]).count).toBe(3);
    expect(read([0, 1, 1], [0, 1, 0.5]).count).toBe(3);
  });

  it('may have values of 1e300, and no larger, on either side of 0', () => {
    expect(read([1], [0, 1e300, 1]).highest).toBe(1e300);
    expect(read([1], [0, -1e300, 1]).lowest).toBe(-1e300);
    expect(says([1], [0, 1.0001e300, 1])).toEqual(tooLarge);
    expect(says([1], [0, -1.0001e300, 1])).toEqual(tooLarge);
  });
});

describe('a recording that cannot be read', () => {
  it.each([
    [
      'has no times',
      [],
      [0, 1, 0],
      ['unreadable', 'times is blank: give the times, or one sample interval.'],
    ],
    ['has no values', [0, 1, 2], [], ['unreadable', 'values is blank: give the recorded values.']],
    [
      'has a time too many',
      [0, 1, 2, 3],
      [0, 1, 2],
      ['unreadable', 'times and values must be as long as each other: 4 times for 3 values.'],
    ],
    [
      'has a step of 0',
      [0],
      [0, 1, 0],
      ['domain', 'times (one cell is the sample interval) must be above 0, not 0.'],
    ],
    [
      'is blank but for two rows',
      [0, 1, 0, 0],
      [0, 1, 0, 0],
      ['unreadable', 'The trace has too few samples: 2 that are not blank, where it takes 3 or more.'],
    ],
    [
      'is of zeros alone',
      [1],
      [0, 0, 0],
      ['unreadable', 'The trace has too few samples: 0 that are not blank, where it takes 3 or more.'],
    ],
    [
      'has times that fall',
      [0, 2, 1, 3],
      [0, 1, 2, 1],
      [
        'domain',
        'times must not fall: row 3 is earlier than row 2. Sort the rows by time, or leave out the blank ones.',
      ],
    ],
    [
      'has one time alone',
      [2, 2, 2],
      [0, 1, 2],
      ['domain', 'times must rise: the first and the last row of the trace have the same time.'],
    ],
    ['begins with a time that is no number', [NaN, 1, 2], [0, 1, 2], notFinite('times', 1)],
    ['begins before all time', [-Infinity, 1, 2], [0, 1, 2], notFinite('times', 1)],
    ['ends after all time', [0, 1, Infinity], [0, 1, 2], notFinite('times', 3)],
    ['begins with a value that is no number', [0, 1, 2], [NaN, 1, 2], notFinite('values', 1)],
    ['has a value without end', [1], [0, 1, Infinity], notFinite('values', 3)],
    ['has values whose sum is too large', [1], [1e308, 1e308, 1e308], tooLarge],
    ['is too long', [-1e308, 0, 1e308], [0, 1, 2], tooLarge],
  ])('is one that %s', (_, times, values, refused) => {
    expect(says(times as number[], values as number[])).toEqual(refused);
  });
});
