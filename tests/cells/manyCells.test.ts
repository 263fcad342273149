import { describe, expect, test } from 'vitest';
import { Q } from '../../src/catalogue/quantities';
import {
  type AnyRow,
  type Arg,
  define,
  gappedList,
  grid,
  list,
  one,
  series,
  type TableAnswer,
} from '../../src/catalogue/types';
import { answerText } from '../../src/catalogue/words';
import { call } from '../../src/cells/call';
import { cellError } from '../../src/formula/errors';
import { isReadToDecimals } from '../../src/cells/lists';
import { fail } from '../../src/exposure/core/result';
import { MADE } from './made';

const refusal = (words: RegExp): unknown => ({ error: '#VALUE!', message: expect.stringMatching(words) });

const duo: TableAnswer = {
  table: [
    { name: 'reading', quantity: Q.aperture },
    { name: 'miss', quantity: Q.stops },
  ],
  each: 'one a head',
};

describe('a series', () => {
  const longest = define({
    ...MADE,
    id: 'LONGEST',
    args: [series('times', 'Times', Q.wait), series('values', 'Values', Q.signal)],
    answers: 'one',
    run: (times, values) => times.length * 1000 + values.length + (values[1] ?? 0),
  }) as AnyRow;
  const column = (...cells: unknown[]): unknown[][] => cells.map((cell) => [cell]);

  test('is read as typed, a blank cell as 0, and series do not pair up', () => {
    expect(call(longest, [0.001, column(1, 11, null, '')])).toBe(1015);
    expect(call(longest, ['1/1000 s', [[1, '0.5', 2]]])).toBe(1003.5);
    expect(call(longest, [column(0, 20_000, 30_000), column(1, 2, 3)])).toBe(3005);
  });
  test('is read as typed where its quantity knows marks, and where an empty cell is missing elsewhere', () => {
    const typed = define({
      ...MADE,
      id: 'TYPED',
      args: [series('values', 'Values', Q.aperture)],
      answers: 'one',
      run: (values) => (values[0] as number) + 100 * (values[1] as number),
    }) as AnyRow;
    expect(call(typed, [column('11', 11)])).toBe(1111);
    expect(call(typed, [column(2, null)])).toBe(2);
    expect(call(typed, [column('2', '')])).toBe(2);
  });
  test('is read as typed where only some of its cells are plain numbers', () =>
    // 20000 would be a date where it is a time by itself
    expect(call(longest, [column(0, '1/2', 20_000), column(1, 2)])).toBe(3004));
  test('of no cells is one blank cell', () => expect(call(longest, [1, []])).toBe(1001));
  test('names the place of a cell that cannot be read, and hands on an error cell', () => {
    for (const cell of [NaN, Infinity])
      expect(call(longest, [1, column(1, cell)])).toEqual(
        refusal(/^values \(number 2 of the column\) must be a finite number/),
      );
    expect(call(longest, [1, column(1, 2, 'odd')])).toEqual(
      refusal(/^values \(number 3 of the column\): "odd"/),
    );
    expect(call(longest, [1, column(1, true)])).toEqual(
      refusal(/^values \(number 2 of the column\) holds TRUE/),
    );
    expect(call(longest, [1, column(1, cellError('#DIV/0!'))])).toEqual({ error: '#DIV/0!' });
  });
  test('is one column or one row', () => {
    expect(call(longest, [1, [[1, 2], [3, 4]]])).toEqual(refusal(/^values must be one column, not 2 rows/)); // prettier-ignore
  });
});

test('a list of several arguments begins where it stands, and may follow a value', () => {
  const after = define({
    ...MADE,
    id: 'AFTER',
    args: [one('times', 'Times', Q.stops), { ...list('stops', 'Stops', Q.stops), takes: 'rest' }],
    answers: 'one',
    run: (times: number, stops: readonly number[]) => times * stops.reduce((sum, each) => sum + each, 0),
  }) as AnyRow;
  expect(call(after, [10, 1, [[2], [3]], 4])).toBe(100);
});

test('a list is read to decimals for a bare number beside the marks alone', () => {
  const readings: Arg = { ...list('readings', 'Readings', Q.aperture), exactTogether: true };
  expect(isReadToDecimals([8, 8.1], readings, Q.aperture)).toBe(true);
  for (const cells of [[8, 11], ['8.1'], [null], [0], [-8.1]])
    expect(isReadToDecimals(cells, readings, Q.aperture)).toBe(false);
  expect(isReadToDecimals([8.1], readings, Q.energy)).toBe(false);
  expect(isReadToDecimals([8.1], list('readings', 'Readings', Q.aperture), Q.aperture)).toBe(false);
});

describe('rows beside a list', () => {
  const rows = define({
    ...MADE,
    id: 'ROWS',
    args: [grid('pattern', 'Pattern', Q.lit), list('readings', 'Readings', Q.aperture)],
    answers: duo,
    run: (pattern, readings) =>
      pattern.map((row, i) => [
        row.reduce((sum, x) => sum + x, 0),
        readings[i] === 4 ? fail('no-answer', 'Too dark.') : (readings[i] as number),
      ]),
  }) as AnyRow;

  test('give rows, each cell an answer or a refusal of its own', () => {
    expect(call(rows, [[[1, 0], ['50%', 1]], [[8], [4]]])).toEqual([
      [1, 8],
      [1.5, { error: '#N/A', message: 'Too dark.' }],
    ]); // prettier-ignore
  });
  test('are left out where the list is blank, and blank cells of them are 0', () => {
    expect(call(rows, [[[1, null], [1, 1], ['', 1]], [[8], [null], [16]]])).toEqual([[1, 8], [1, 16]]); // prettier-ignore
  });
  test('must be as many as the list has members', () => {
    expect(call(rows, [[[1, 0]], [[8], [16]]])).toEqual(
      refusal(/^pattern must have as many rows as the first list: 1 beside 2\.$/),
    );
  });
  test('say which cell cannot be read', () => {
    expect(call(rows, [[[1, 'odd'], [1, 1]], [[8], [16]]])).toEqual(refusal(/^pattern \(row 1, column 2\): "odd"/)); // prettier-ignore
  });
  test('are told as a table', () => {
    expect(answerText(rows)).toBe('Answer, rows: one a head, with reading (f-number), miss (stops).');
  });
});

describe('a list with gaps', () => {
  const gaps = define({
    ...MADE,
    id: 'GAPS',
    args: [
      gappedList('readings', 'Readings', Q.aperture),
      gappedList('powers', 'Powers', Q.energy),
      { ...gappedList('least', 'Least', Q.energy) },
    ],
    answers: duo,
    run: (readings, powers, least) =>
      readings.map((reading, i) => [reading ?? 'off', `${powers[i] ?? 'off'} ${least[i] ?? 'off'}`]),
  }) as AnyRow;

  test('keeps a blank member in its place; one cell counts for all', () => {
    expect(call(gaps, [[[null], [8], [0]], [[100], [200], ['']], 50])).toEqual([
      ['off', '100 50'],
      [8, '200 50'],
      ['off', 'off 50'],
    ]); // prettier-ignore
  });
  test('is refused where it is blank throughout, or as long as no other', () => {
    expect(call(gaps, [[[null], [0]], [[1], [2]], 5])).toEqual(
      refusal(/^readings is blank: give at least one/),
    );
    expect(call(gaps, [[[8], [8]], [[1], [2], [3]], 5])).toEqual(refusal(/^powers must have as many cells/));
  });
});

describe('an answer of rows', () => {
  const wide = define({
    ...MADE,
    id: 'WIDE',
    args: [series('values', 'Values', Q.signal), one('x', 'x', Q.signal)],
    answers: duo,
    run: (values: ArrayLike<number>, x: number) => [[values.length, x]],
  }) as AnyRow;
  test('does not spread', () => {
    expect(call(wide, [1, [[1], [2]]])).toEqual(
      refusal(/^x takes one cell here, not a range: the answer is rows already\.$/),
    );
  });
});
