import { describe, expect, test } from 'vitest';
import { CATALOGUE, rowOf } from '../../src/catalogue';
import { Q } from '../../src/catalogue/quantities';
import {
  type AnyRow,
  type Arg,
  define,
  gappedList,
  grid,
  list,
  maybeList,
  one,
  pool,
  quantitiesOf,
  series,
  type TableAnswer,
} from '../../src/catalogue/types';
import { answerText } from '../../src/catalogue/words';
import { readArgument } from '../../src/cells/argument';
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

const column = (...cells: unknown[]): unknown[][] => cells.map((cell) => [cell]);

describe('a series', () => {
  const longest = define({
    ...MADE,
    id: 'LONGEST',
    args: [series('times', 'Times', Q.wait), series('values', 'Values', Q.signal)],
    answers: 'one',
    run: (times, values) => times.length * 1000 + values.length + (values[1] ?? 0),
  }) as AnyRow;

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

describe('a pool', () => {
  const energies = (name: string, optional?: true): Arg<readonly number[]> =>
    pool(name, 'Energies', Q.energy, optional && { optional });
  const pooled = define({
    ...MADE,
    id: 'POOLED',
    args: [energies('first'), energies('second', true), energies('third', true)],
    answers: 'one',
    run: (...pools) => pools.map((members) => members.join('+')).join(' | '),
  }) as AnyRow;

  test('is as long as it likes, whatever stands beside it, and leaves out its blanks', () => {
    expect(call(pooled, [[[1], [null], [2]], 3, [[4, '', '5 Ws', 0]]])).toBe('1+2 | 3 | 4+5');
    expect(call(pooled, [null, 3])).toBe(' | 3 | ');
  });
  test('is without members where nothing, or "none", is given', () => {
    expect(call(pooled, [7])).toBe('7 |  | ');
    expect(call(pooled, [7, 'none', [[null], ['']]])).toBe('7 |  | ');
  });
  test('hands on an error cell and names what cannot be read', () => {
    expect(call(pooled, [1, [[2], [cellError('#DIV/0!')]]])).toEqual({ error: '#DIV/0!' });
    expect(call(pooled, [1, 2, 'odd'])).toEqual(refusal(/^third: "odd"/));
  });
  test('is no list that goes on: too many are told', () =>
    expect(call(pooled, [1, 2, 3, 4])).toEqual(refusal(/^POOLED takes 1 to 3 values, not 4\.$/)));
});

describe('a list that may be left out', () => {
  const beside = define({
    ...MADE,
    id: 'BESIDE',
    args: [list('readings', 'Readings', Q.aperture), maybeList('powers', 'Powers', Q.energy)],
    answers: 'one',
    run: (readings, powers) =>
      `${readings.length}: ${powers === undefined ? 'none' : powers.map((p) => p ?? '-').join()}`,
  }) as AnyRow;

  test('is not there where one blank cell is all there is', () => {
    for (const blank of [undefined, null, '', 0, [[null]], 'none'])
      expect(call(beside, [column(8, 11), blank])).toBe('2: none');
  });
  test('is there with gaps where it is a range, though all of that is blank', () => {
    expect(call(beside, [column(8, 11), column(1, null)])).toBe('2: 1,-');
    expect(call(beside, [column(8, 11), column(null, '')])).toBe('2: -,-');
  });
  test('counts for all where it is one value, and pairs up by position', () => {
    expect(call(beside, [column(8, 11), 3])).toBe('2: 3,3');
    expect(call(beside, [column(8, null, 11), column(1, 2, 3)])).toBe('2: 1,3');
    expect(call(beside, [column(8, 11), column(1, 2, 3)])).toEqual(refusal(/as many cells/));
  });
});

test('an empty text is a gap of its own only where the catalogue says so; an empty cell is 0 there all the same', () => {
  const gapped = (more?: { emptyText: 'gap' }): AnyRow =>
    define({
      ...MADE,
      id: 'GAPPED',
      args: [gappedList('stops', 'Stops', Q.stops, more)],
      answers: 'list',
      run: (stops) => stops,
    }) as AnyRow;
  const cells = [[-1], [null], [0], [''], [' ']];
  expect(call(gapped({ emptyText: 'gap' }), [cells])).toEqual([[-1], [0], [0], [''], ['']]);
  expect(call(gapped(), [cells])).toEqual([[-1], [0], [0], [0], [0]]);
  expect(call(gapped({ emptyText: 'gap' }), [[[''], ['']]])).toEqual(refusal(/^stops is blank/));
});

test('a list is read to decimals for a bare number beside the marks alone', () => {
  const readings: Arg = { ...list('readings', 'Readings', Q.aperture), exactTogether: true };
  for (const cells of [[8, 8.1], ['8', '8.1'], ['8,1', 8], [' 8.1 ']])
    expect(isReadToDecimals(cells, readings, Q.aperture)).toBe(true);
  for (const cells of [[8, 11], ['8', '5,6'], ['f/8.1'], ['8.1 exact'], ['odd'], [null], [0], [-8.1]])
    expect(isReadToDecimals(cells, readings, Q.aperture)).toBe(false);
  expect(isReadToDecimals([8.1], readings, Q.energy)).toBe(false);
  expect(isReadToDecimals([8.1], list('readings', 'Readings', Q.aperture), Q.aperture)).toBe(false);
});

test('readings that are repeated are read to decimals together, in cells of numbers and of texts', () => {
  // 2 · log2(11.2 / 11); as a mark f/11 would be 11.31
  const spread = 2 * Math.log2(11.2 / 11);
  const row = (id: string): AnyRow => rowOf(id) as AnyRow;
  for (const cells of [column(11, 11.2), column('11', '11.2'), column('11', 11.2)]) {
    expect(call(row('LIGHTSPREAD'), [cells])).toBeCloseTo(spread, 11);
    expect(call(row('LIGHTMEAN'), [cells])).toBeCloseTo(Math.sqrt(11 * 11.2), 11);
    // two readings lie half their distance from the mean: s = d / √2
    expect(call(row('LIGHTREPEAT'), [cells])).toBeCloseTo(spread / Math.SQRT2, 11);
  }
  expect(call(row('LIGHTSPREAD'), [column('f/11', 11.2)])).toBeCloseTo(2 * Math.log2(2 ** 3.5 / 11.2), 11);
});

/** Where no value may be 0 an empty cell is the default, in whichever way a host passes it. */
test.each(
  CATALOGUE.flatMap((row) => (row.args as readonly Arg[]).map((arg) => ({ id: row.id, arg }))).filter(
    ({ arg }) => arg.optional && typeof arg.fallback === 'number' && arg.fallback !== 0,
  ),
)('$id $arg.name: 0, blank and left out are the default alike', ({ arg }) => {
  for (const quantity of quantitiesOf(arg.kind))
    for (const cell of [0, null, undefined, '', ' '])
      expect(readArgument(cell, arg, quantity)).toBe(arg.fallback);
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
      gappedList('least', 'Least', Q.energy),
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
