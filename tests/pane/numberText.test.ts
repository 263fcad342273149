import { numfmt } from '@univerjs/core';
import { describe, expect, test } from 'vitest';
import { numberText, plainNumber } from '../../src/pane/numberText';
import { formatOf, SHEET_QUANTITIES } from '../../src/sheets/formats';

const ENERGY = '[<100]0.0" Ws";[<1000]0" Ws";#\\ ##0" Ws"';
const STOPS = '+0.0" stop";-0.0" stop";0.0" stop"';

/** Expected texts follow the rules for number formats in ECMA-376 part 1, 18.8.31; worked by hand. */
describe('a number as its cell shows it', () => {
  test.each([
    [11.3137, '"f/"0.0', 'f/11.3'],
    [0.5714, '0.0%', '57.1%'],
    [0.5, '0%', '50%'],
    [-1.5, STOPS, '-1.5 stop'],
    [1, STOPS, '+1.0 stop'],
    [0, STOPS, '0.0 stop'],
    [9.4, ENERGY, '9.4 Ws'],
    [400, ENERGY, '400 Ws'],
    [1200, ENERGY, '1 200 Ws'],
    [12345, ENERGY, '12 345 Ws'],
    [1234567, ENERGY, '1234 567 Ws'],
    [0.25, '0.0##" s"', '0.25 s'],
    [2, '0.0##" s"', '2.0 s'],
    [0.0005, '0.0##" s"', '0.001 s'],
    [3, '0.0":1"', '3.0:1'],
    [-2, '0.0', '-2.0'],
    [7, '0', '7'],
    [7, '00', '07'],
    [0, '#', ''],
    [0, '0', '0'],
    [1 / 3, 'General', '0.333333'],
    [-1 / 3, 'General', '-0.333333'],
    [8, '"f/"General', 'f/8'],
    [16, '@', '16'],
    [5, '0" pops; all"', '5 pops; all'],
    // 2026 began with day 46023: 31 + 28 + 31 + 30 + 31 days later begins June
    [46023 + 151 + 14, 'yyyy-mm-dd;@', '2026-06-15'],
    [-3, 'yyyy-mm-dd;@', '-3'],
  ])('%f in %s is %s', (value, format, text) => {
    expect(numberText(value, format)).toBe(text);
  });
});

/** The outside: the number formatter that the embedded grid uses. General is left out: it has its own width of figures. */
describe('like the grid', () => {
  const formats = new Set(
    SHEET_QUANTITIES.flatMap((q) => [formatOf(q)?.result ?? '', formatOf(q)?.input ?? '']),
  );
  const values = [
    0, 0.04, 0.0625, 0.5, 1, 1.96, 9.96, 45.254, 99.4, 400, 1200, 76543.2, -0.0004, -0.3, -1.96, -12,
  ];
  test.each([...formats].filter((format) => !/General|@/.test(format)))('%s', (format) => {
    expect(values.map((value) => numberText(value, format))).toEqual(
      values.map((value) => numfmt.format(format, value).trim()),
    );
  });
});

test('a plain number has six figures at most and no noughts at its end', () => {
  expect([13.454342644059432, 0.07177346253629313, 45, 0.00005, -2.989735285399].map(plainNumber)).toEqual([
    '13.4543',
    '0.0717735',
    '45',
    '0.00005',
    '-2.98974',
  ]);
});
