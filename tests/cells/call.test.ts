import { describe, expect, test } from 'vitest';
import { rowOf } from '../../src/catalogue';
import type { AnyRow } from '../../src/catalogue/types';
import { type Answer, call } from '../../src/cells/call';
import { cellError, isCellError } from '../../src/formula/errors';

const run = (id: string, ...cells: unknown[]): Answer => call(rowOf(id) as AnyRow, cells);
const column = (...values: unknown[]): unknown[][] => values.map((v) => [v]);
const error = (code: string, words: RegExp): unknown => ({
  error: code,
  message: expect.stringMatching(words),
});
const NA = cellError('#N/A');

describe('blank cells', () => {
  test('a single blank argument is an error that names it', () => {
    for (const empty of [0, null, undefined, ''])
      expect(run('POPSFORTARGET', empty, 45)).toEqual(
        error('#VALUE!', /^reading is missing: reading of one pop\.$/),
      );
  });
  test('a blank row of a column is empty text in its row', () => {
    expect(run('POPSFORTARGET', column(16, null, 0, '', 16), 32)).toEqual(column(4, '', '', '', 4));
    expect(run('STOPDIFF', column(8, 8), column(16, null))).toEqual(column(2, ''));
  });
  test('a whole blank column is blank all the way down', () => {
    const answer = run('STOPDIFF', column(...Array<null>(1000).fill(null)), 8) as unknown[][];
    expect(answer).toHaveLength(1000);
    expect(new Set(answer.flat())).toEqual(new Set(['']));
  });
  test('an optional argument that is 0, blank or left out is its default, and none is zero', () => {
    for (const tolerance of [0, null, undefined, ''])
      expect(run('POPSFORTARGET', 16, 45, 1.04, null, null, null, tolerance)).toBe(16);
    expect(run('POPSFORTARGET', 16, 45, 1.04, null, null, null, 'none')).toBe(17);
    expect(run('CREEPTIME', 32, 4, '1/60', 'none')).toEqual(error('#NUM!', /limit must be above 0/));
  });
  test('a blank choice is the first word, whatever the host says for blank', () => {
    for (const empty of [0, null, undefined, '']) expect(run('LIGHTRATIO', 'f/16', 'f/8', empty)).toBe(5);
    expect(run('LIGHTRATIO', 'f/16', 'f/8', 'EACH')).toBe(4);
  });
});

describe('ranges', () => {
  test('a column against one value gives a column', () =>
    expect(run('POPSFORTARGET', column(16, 22, 32), 32)).toEqual(column(4, 2, 1)));
  test('a row against one value gives a row', () =>
    expect(run('STOPDIFF', [[8, 11, 16]], 8)).toEqual([[0, -1, -2]]));
  test('a column against a row gives the full grid', () =>
    expect(run('STOPDIFF', column(8, 16), [[8, 16, 32]])).toEqual([
      [0, 2, 4],
      [-2, 0, 2],
    ]));
  test('cells outside a mismatched shape are #N/A', () =>
    expect(run('STOPDIFF', column(8, 8, 8), column(8, 16))).toEqual([
      [0],
      [2],
      [error('#N/A', /differ in size/)],
    ]));
  test('outside counts in columns as in rows', () =>
    expect(run('STOPDIFF', [[8, 8, 8]], [[8, 16]])).toEqual([[0, 2, error('#N/A', /differ in size/)]]));
  test('a range of one cell is that cell', () => {
    expect(run('STOPDIFF', [[8]], [[11]])).toBe(1);
    expect(run('STOPDIFF', [['1/125']], '1/60', [['time']])).toBe(1);
  });
  test('a choice may be a range too, and each row is read by its own scale', () =>
    expect(run('STOPDIFF', column(8, '1/125'), column(16, '1/60'), column('aperture', 'time'))).toEqual(
      column(2, 1),
    ));
  test('a list of values is taken as a column', () =>
    expect(run('STOPDIFF', [8, 11], 8)).toEqual(column(0, -1)));
  test('ragged rows are blank where cells are missing', () =>
    expect(run('STOPDIFF', [[8, 11], [16]], 8)).toEqual([
      [0, -1],
      [-2, ''],
    ]));
  test('100,000 rows come back in one call', () => {
    const answer = run(
      'STOPDIFF',
      column(...Array.from({ length: 100_000 }, (_, i) => 2 ** (i % 7))),
      1,
    ) as number[][];
    expect(answer).toHaveLength(100_000);
    expect(answer.every(([stops], i) => stops === 0 - 2 * (i % 7))).toBe(true);
  });
});

describe('error cells', () => {
  test('an error comes out as that error, in its own cell only', () =>
    expect(run('STOPDIFF', column(8, NA, 'x', 16), 8)).toEqual([
      [0],
      [NA],
      [error('#VALUE!', /"x" cannot be read/)],
      [-2],
    ]));
  test('a single error argument is the answer', () => {
    const ref = cellError('#REF!');
    expect(run('STOPDIFF', 8, ref)).toBe(ref);
    expect(run('STOPDIFF', column(8, 11), ref)).toBe(ref);
  });
  test('an error in a list is the answer of the list', () =>
    expect(run('LIGHTSUM', 8, column(11, NA))).toBe(NA));
});

describe('lists', () => {
  test('blank members are left out of a sum and left blank in a list of answers', () => {
    expect(run('LIGHTSUM', column(8, null, ''), 0, 8)).toBeCloseTo(2 ** 3.5, 12);
    expect(run('LIGHTSHARE', column(16, null, 8))).toEqual([[0.8], [''], [expect.closeTo(0.2, 15)]]);
    expect(run('LIGHTSHARE', [[16, '', 8]])).toEqual([[0.8, '', expect.closeTo(0.2, 15)]]);
  });
  test('a list may be as long as a sheet', () => {
    const sheet = Array.from({ length: 1_048_576 }, (_, i) => [i === 7 ? 8 : null]);
    expect(run('LIGHTSUM', sheet)).toBe(8);
  });
  test('lists pair up by position, and a head without a number of pops does not fire', () => {
    // worked by hand: 4 pops of f/16 and none of f/8
    expect(run('POPSBUILD', column(16, null, 8), column(4, 0, null))).toBe(32);
    // worked by hand: 2 pops of f/16 and 1 of f/8: √(2·256 + 64) = 24
    expect(run('POPSBUILD', column(16, null, 8), column(2, null, 1))).toBeCloseTo(24, 12);
    // worked by hand: 3 pops of each: √(3·(256 + 64))
    expect(run('POPSBUILD', column(16, 8), 3)).toBeCloseTo(Math.sqrt(960), 12);
  });
  test('lists of different length are refused with both lengths', () =>
    expect(run('POPSBUILD', column(16, 8), column(1, 2, 3))).toEqual(
      error('#VALUE!', /as many cells as the first list: 3 beside 2/),
    ));
  test('a blank beside a value is refused with its place', () =>
    expect(run('FREEZEPOWER', column(100, 400), column('1/4000', null), '1/2000')).toEqual(
      error('#VALUE!', /durations is blank at place 2/),
    ));
  test('an empty list is missing', () =>
    expect(run('LIGHTSPREAD', column(null, ''))).toEqual(
      error('#VALUE!', /readings is blank: give at least one/),
    ));
  test('one bare number that is no mark makes the bare numbers of the list exact', () => {
    expect(run('LIGHTSPREAD', column(8, 11))).toBe(1);
    expect(run('LIGHTSPREAD', column(8, 8.1, 11))).toBeCloseTo(2 * Math.log2(11 / 8), 11);
    expect(run('LIGHTSPREAD', column(8, 8.1, 'f/11'))).toBe(1);
  });
  test('a blank is no such number, and the choice of another scale leaves nothing to be a mark', () => {
    expect(run('LIGHTSPREAD', column(8, 0, 11))).toBe(1);
    expect(run('LIGHTEVENNESS', column(11, 8.1, 5), 'lux')).toBeCloseTo((100 * 6) / 11, 10);
  });
  test('in a list that has no such rule every number is read by itself', () =>
    expect(run('LIGHTSUM', column(8, 8.1, 11))).toBeCloseTo(Math.sqrt(64 + 8.1 ** 2 + 128), 11));
  test('a function that answers with a list takes no range elsewhere', () =>
    expect(run('LIGHTTARGETS', column(8, 11), column(0, 0))).toEqual(
      error('#VALUE!', /total takes one cell here/),
    ));
  test('the table of a head stays whole while the limit spreads', () =>
    expect(
      run('FREEZEPOWER', column(100, 400), column('1/4000', '1/1000'), column('1/1000', '1/4000')),
    ).toEqual([[expect.closeTo(400, 9)], [expect.closeTo(100, 9)]]));
});

describe('counts and words', () => {
  test('too many arguments are counted', () =>
    expect(run('STOPDIFF', 8, 11, 'aperture', 4)).toEqual(
      error('#VALUE!', /^STOPDIFF takes 2 or 3 values, not 4\.$/),
    ));
  test('too few arguments name the one that is missing', () =>
    expect(run('STOPDIFF', 8)).toEqual(error('#VALUE!', /^to is missing/)));
  test('trailing arguments that are not there do not count', () => {
    expect(run('STOPDIFF', 8, 11, null, undefined)).toBe(1);
    expect(run('STOPDIFF', 8, 11, null, null)).toBe(1);
    expect(run('STOPDIFF', 8, 11, null, null, 4)).toEqual(error('#VALUE!', /takes 2 or 3 values, not 5/));
    expect(run('STOPDIFF', 8, 11, null, 4, null)).toEqual(error('#VALUE!', /takes 2 or 3 values, not 5/));
  });
  test('a word that is none of the choices is refused with the choices', () =>
    expect(run('LIGHTRATIO', 11, 8, 'both')).toEqual(
      error('#VALUE!', /basis must be "sum" or "each", not "both"/),
    ));
  test('negative f-numbers are #NUM!', () =>
    expect(run('STOPDIFF', -8, 11)).toEqual(error('#NUM!', /from must be above 0, not -8/)));
  test('a number out of reach of a cell is refused', () =>
    expect(run('STOPSHIFT', 8, 9000)).toEqual(error('#NUM!', /too large or too small/)));
  test('minus zero never comes out', () => expect(Object.is(run('STOPDIFF', 8, 8), 0)).toBe(true));
  test('a quantity follows another argument: pixels with a pitch, millimetres without', () => {
    expect(run('FREEZETIME', 2, '2 px', 0.5, 3.76)).toBeCloseTo((2 * 3.76e-6) / 0.5 / 2, 15);
    expect(run('FREEZETIME', 2, '0.5 mm')).toBeCloseTo(0.00025, 15);
    expect(run('FREEZETIME', 2, '2 px')).toEqual(error('#VALUE!', /a number of pixels, not a length/));
  });
  test('a refusal never throws, whatever the cell holds', () => {
    const odd = [Symbol('x'), () => 1, new Date(), { basicValue: {} }, [[[[1]]]], Number.NaN, Infinity, 10n];
    for (const cell of odd)
      expect(isCellError(run('STOPDIFF', cell, 8)) || Array.isArray(run('STOPDIFF', cell, 8))).toBe(true);
  });
});
