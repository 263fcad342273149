import { ERROR_CODES } from '../../src/formula/errors';
import type { Draws } from './draws';

/** Numbers at the ends of what a number is, and those that spreadsheets make of dates and fractions. */
const NUMBERS = [
  0, -0, 1, -1, 0.5, 16, 100, 1e-9, 5e-324, -5e-324, 1e-320, 2.3e-308, 1e15, 2 ** 53, -(2 ** 53), 1e100, 1e154, 1e155, 1e300,
  Number.MAX_VALUE, -Number.MAX_VALUE, Number.EPSILON, 1 - Number.EPSILON, 1 + Number.EPSILON, 45_000, 46_038, 45_000.25, 0.125_694_444_444_444_4,
  4_294_967_296, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY,
]; // prettier-ignore

/** Texts: all that people write for numbers in all countries, units, words, traps of programs, and no text at all. */
const TEXTS = [
  '', ' ', '\u00a0', '\n', 'none', 'None', 'exact', 'zero', 'infinity', 'Infinity', 'NaN', 'TRUE', 'false', 'yes', 'x', '-', '?', '…', 'n/a',
  '0', '-0', '00', '1', '-1', '+1', '16', '1/0', '0/0', '1/3', '-1/3', '1 1/3', '1 1/0', '1/1e999', '½', '1½', '⅔', '1,5', '0,001', '1,234', '1.234,5', '1,234.5', '1 234,5',
  '1\u00a0234,5', '1\u202f234.5', "1'234.5", '1’234', '12.345.678', '1,23,456', '1e999', '1e-999', '1E+3', '1,5e-3', '.5', ',5', '5.', '0x10', '1_000', '٣', '１６', '−0.5', '–1', '1-2',
  'f/11', 'f/11+0.3', 'f/11 half', 'f/0', 'f/-8', 'f/', '11³', '8⁹', 'ISO 400', 'iso', 'ISO -100', '1/60 s', '1/60 exact', '30"', '1/125 s +0.3', '4 ms', '4 Ms', '350 µs', '2 min', '-2 s',
  `5' 6"`, '5 ft', '12 in', '80 cm', '1e400 km', '400 Ws', '1.2 kJ', '250 W', '5600 K', '-20 mired', '8°', '2 m/s', '33 rpm', '2560 lx', '640 lx·s', 'flat', 'dome', '3:1', '0:0', '1:0', '1:1:1', '30%', '-30 %', '1e308%', 'ND8', 'ND 0.9', 'ND9999', '8x', 'x0',
  '#N/A', '#VALUE!', '#DIV/0!', '=1+1', '+1+1', '-2+3', '@SUM(1)', '{=1}', "'1", '"', '""', '\\', '${1}', '<b>1</b>', '%s%n', 'constructor', '__proto__', 'toString', 'hasOwnProperty', 'valueOf',
  '\0', '\ud800', '\udfff1', '\u202e11', '1\u200b1', '\ufeff1', 'é'.normalize('NFD'), '👩‍🚀', '2025-11-25', '25.11.2025', '12:30', '1:30 PM', '1\t2', '1\r\n2', '1;2', '1,2,3',
]; // prettier-ignore

/** Texts beyond all measure, made only when they are drawn. */
const LONG_TEXTS: readonly (() => string)[] = [
  () => 'x'.repeat(32_767),
  () => '9'.repeat(400),
  () => `1${' 000'.repeat(5000)}`,
  () => `1${' 000'.repeat(5000)}x`,
  () => ' '.repeat(30_000),
  () => `${' '.repeat(30_000)}1`,
  () => `f/${'1'.repeat(3000)}`,
  () => '"'.repeat(3000),
  () => `1/${'0'.repeat(3000)}`,
  () => '1/'.repeat(3000),
  () => `0.${'0'.repeat(3000)}1`,
  () => '½'.repeat(3000),
  () => '1e'.repeat(3000),
  () => '\ud83d'.repeat(3000),
  () => '-'.repeat(3000),
];

/** What spreadsheets hand over for numbers with a format of their own, and for data types. */
const OBJECTS: readonly (() => unknown)[] = [
  () => ({ type: 'FormattedNumber', basicType: 'Double', basicValue: 0.5, numberFormat: '0%' }),
  () => ({ type: 'Double', basicValue: 16 }),
  () => ({ type: 'Entity', text: 'f/11', properties: { value: { type: 'Double', basicValue: 11 } } }),
  () => ({ type: 'Error', errorType: 'Div0', basicValue: '#DIV/0!' }),
  () => ({ f: '=1+1', v: 2, t: 2 }),
  () => ({}),
  () => Object.create(null),
  () => ({ toString: 1 }),
  () => ({ error: 'nonsense' }),
  () => ({ error: 5, message: {} }),
  () => [],
  () => [[]],
  () => [1, [2, [3]]],
];

export const number = (draws: Draws): number => {
  if (draws.isSo(0.5)) return draws.pick(NUMBERS);
  if (draws.isSo(0.3)) return draws.whole(-20, 200);
  const size = 10 ** (draws.isSo(0.7) ? draws.between(-6, 6) : draws.between(-323, 308));
  return draws.isSo(0.3) ? -size : size;
};
export const text = (draws: Draws): string =>
  draws.isSo(0.04) ? draws.pick(LONG_TEXTS)() : draws.pick(TEXTS);
const date = (draws: Draws): Date =>
  new Date(draws.pick([Number.NaN, 0, 1_764_000_000_000, -1e15, 8.64e15, 1_764_000_000_000 * draws.share()]));
const errorCell = (draws: Draws): unknown => ({
  error: draws.pick(ERROR_CODES),
  ...(draws.isSo(0.5) ? { message: 'Another cell said why.' } : {}),
});

/** Any value that a cell may hold, or that a host may hand over for one. */
export function anyCell(draws: Draws): unknown {
  const kind = draws.share();
  if (kind < 0.4) return number(draws);
  if (kind < 0.75) return text(draws);
  if (kind < 0.82) return draws.pick([null, undefined]);
  if (kind < 0.88) return errorCell(draws);
  if (kind < 0.92) return draws.isSo(0.5);
  return kind < 0.95 ? date(draws) : draws.pick(OBJECTS)();
}

/** Rows of cells: a block, a column, a row, a bare list, ragged, with rows that are empty, and once in a while huge. */
export function anyRange(draws: Draws, cell: (draws: Draws) => unknown, most: number): unknown[] {
  const [tall, wide] = draws.pick([
    [6, 5],
    [12, 1],
    [1, 12],
    [2, 2],
    [0, 3],
    [Math.min(200, most), 1],
    ...(draws.isSo(0.05) ? [[most, 1], [1, most], [Math.ceil(Math.sqrt(most)), Math.ceil(Math.sqrt(most))]] : []),
  ] as const); // prettier-ignore
  const rows = draws.times(draws.whole(Math.ceil(tall / 2), tall), () =>
    draws.times(wide, () => cell(draws)),
  );
  const damage = draws.share();
  if (damage < 0.1) return rows.flat();
  if (damage < 0.2) return rows.map((row) => row.slice(0, draws.whole(0, row.length)));
  if (damage < 0.25) return [...rows, [], ...rows, [[]]];
  if (damage < 0.3) return [rows, ...rows];
  if (damage < 0.34) {
    const withGaps: unknown[] = [];
    withGaps[3] = rows[0];
    return withGaps;
  }
  return rows;
}
