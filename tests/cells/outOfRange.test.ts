import { describe, expect, test } from 'vitest';
import { rowOf } from '../../src/catalogue';
import { Q } from '../../src/catalogue/quantities';
import {
  type AnyRow,
  type Arg,
  choice,
  gappedList,
  grid,
  list,
  maybe,
  one,
  pool,
  withDefault,
} from '../../src/catalogue/types';
import { call } from '../../src/cells/call';
import { MADE } from './made';

const above = { range: { above: 0 } };
const a = one('a', 'The first', Q.stops, above);
const b = one('b', 'The second', Q.stops, above);

/** A function that checks nothing and gives 1. */
const trusting = (args: readonly Arg[], more: Partial<AnyRow> = {}): AnyRow =>
  ({ ...MADE, args, answers: 'one', run: () => 1, ...more }) as AnyRow;
const outside = (message: string): unknown => ({ error: '#NUM!', message });
const column = (...cells: unknown[]): unknown[][] => cells.map((cell) => [cell]);

describe('a function gets no value outside the range of its argument', () => {
  test('in one cell', () => {
    expect(call(trusting([a]), [2])).toBe(1);
    expect(call(trusting([a]), [-2])).toEqual(outside('a must be above 0, not -2.'));
    expect(call(trusting([a]), ['-2 stops'])).toEqual(outside('a must be above 0, not -2.'));
  });
  test('in a text too large for a number', () =>
    expect(call(trusting([one('a', 'The first', Q.energy)]), ['1e308 kJ'])).toEqual(
      outside('a must be a number, and finite.'),
    ));
  test('with the hint of the range', () => {
    const hinted = one('a', 'The first', Q.stops, { range: { most: 1, hint: 'In whole stops?' } });
    expect(call(trusting([hinted]), [3])).toEqual(outside('a must be up to 1, not 3. In whole stops?'));
  });
  test('in a range of cells, each in its own place', () => {
    expect(call(trusting([a]), [column(1, -2, 3, '-4')])).toEqual(
      column(1, outside('a must be above 0, not -2.'), 1, outside('a must be above 0, not -4.')),
    );
    expect(call(trusting([a, b]), [-1, column(1, 2)])).toEqual(
      column(outside('a must be above 0, not -1.'), outside('a must be above 0, not -1.')),
    );
  });
  test('side by side, in every column of its row', () => {
    const row = trusting([a], { answers: ['x', 'y'], run: () => [1, 2] });
    const refused = outside('a must be above 0, not -1.');
    expect(call(row, [column(3, -1)])).toEqual([
      [1, 2],
      [refused, refused],
    ]);
  });
  test('in a list, with its place, and without one where it is alone', () => {
    const row = trusting([list('x', 'The list', Q.stops, above)]);
    expect(call(row, [column(1, 2, 3)])).toBe(1);
    expect(call(row, [column(1, -2, 3)])).toEqual(
      outside('x (number 2 of the list) must be above 0, not -2.'),
    );
    expect(call(row, [-2])).toEqual(outside('x must be above 0, not -2.'));
  });
  test('in a pool, by its place among those that are not blank', () => {
    const row = trusting([pool('x', 'The pool', Q.energy, above), pool('y', 'More', Q.energy, above)]);
    expect(call(row, [1, column(1, null, -2)])).toEqual(
      outside('y (number 2 of the list) must be above 0, not -2.'),
    );
  });
  test('in a list beside one that spreads', () => {
    const row = trusting([a, list('x', 'The list', Q.stops, above)]);
    const refused = outside('x (number 1 of the list) must be above 0, not -5.');
    expect(call(row, [column(1, 2), column(-5, 3)])).toEqual(column(refused, refused));
  });
  test('in a list that another argument decides, for each row of that', () => {
    const decided = list('x', 'The list', { by: 'as', of: { s: Q.stops, p: Q.pops } }, above);
    const row = trusting([decided, choice('as', 'What it is', ['s', 'p'])]);
    const refused = outside('x (number 2 of the list) must be above 0, not -1.');
    expect(call(row, [column(1, -1), column('s', 'p')])).toEqual(column(refused, refused));
    expect(call(row, [column(1, 1), column('s', 'p')])).toEqual(column(1, 1));
  });
  test('in a list with gaps, which stay', () => {
    const row = trusting([gappedList('x', 'The list', Q.energy, above)]);
    expect(call(row, [column(5, null, 7)])).toBe(1);
    expect(call(row, [column(5, null, -7)])).toEqual(
      outside('x (number 3 of the list) must be above 0, not -7.'),
    );
  });
  test('in a grid, with its row and column', () => {
    const row = trusting([
      grid('g', 'The grid', Q.lit, { range: { least: 0 } }),
      list('x', 'The list', Q.stops),
    ]);
    expect(call(row, [[[1, 0], [1, 1]], column(1, 2)])).toBe(1); // prettier-ignore
    expect(call(row, [[[1, 0], [1, -1]], column(1, 2)])).toEqual(outside('g (row 2, column 2) must be from 0 up, not -1.')); // prettier-ignore
  });
  test('where none was written for it', () =>
    expect(call(trusting([withDefault('d', 'With a default', Q.stops, 0.1, above)]), ['none'])).toEqual(
      outside('d must be above 0, not 0.'),
    ));
});

describe('what is said first', () => {
  test('of two outside, the first in the order of the arguments, however they are given', () => {
    const first = outside('a must be above 0, not -1.');
    expect(call(trusting([a, b]), [-1, -2])).toEqual(first);
    expect(call(trusting([a, b]), [-1, column(-2, 2)])).toEqual(column(first, first));
    expect(call(trusting([a, b]), [column(-1, 1), -2])).toEqual(
      column(first, outside('b must be above 0, not -2.')),
    );
    expect(call(trusting([list('x', 'The list', Q.stops, above), b]), [column(1, -1), -2])).toEqual(
      outside('x (number 2 of the list) must be above 0, not -1.'),
    );
  });
  test('what cannot be read, or is missing, before what is outside', () => {
    const odd = { error: '#VALUE!', message: expect.stringMatching(/^b: "odd" cannot be read/) };
    expect(call(trusting([a, b]), [-1, 'odd'])).toEqual(odd);
    expect(call(trusting([a, b]), [-1, column('odd', 2)])).toEqual(
      column(odd, outside('a must be above 0, not -1.')),
    );
    expect(call(trusting([a, one('c', 'The third', Q.pops)]), [-1, null])).toEqual({
      error: '#VALUE!',
      message: 'c is missing: the third.',
    });
  });
  test('a blank row is blank, whatever stands beside it', () =>
    expect(call(trusting([a, one('c', 'The third', Q.pops)]), [column(-1, -1), column(null, 4)])).toEqual(
      column('', outside('a must be above 0, not -1.')),
    ));
});

test('an argument that is not there is in no range', () =>
  expect(call(trusting([maybe('m', 'One more', Q.pops, above)]), [null])).toBe(1));

test('a value that the function has no use for is held to its range too', () =>
  expect(call(rowOf('POPSREADING') as AnyRow, [16, 4, 0, null, null, -1])).toEqual(
    outside('pupil must be from 0.1 up to 10, not -1. A tolerance in the place of the focal length?'),
  ));
