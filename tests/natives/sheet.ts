import { parseAddress } from '../../src/formula/address';
import type { TestCell } from '../engine/book';

/**
 * The cells that every formula may read, by column from row 1: numbers, empty cells, texts that look like numbers, formulas
 * that give "", truth values, errors, dates, patterns.
 */
const COLUMNS: Readonly<Record<string, readonly TestCell[]>> = {
  A: [5, 0, null, 2.5, null, 'abc', true, '12', '=1/0', 12, '=""', -3],
  B: [
    'f/8',
    '1/60',
    'Softbox',
    'a-b-c',
    ' two  words ',
    'say "hi"',
    '5.6',
    '=IF(1=2,1,"")',
    'Grid',
    'ISO 100',
  ],
  C: [19.99, 1250, 0.145, 1.005, -7, 100, -0.145, 1234.567],
  D: ['Softbox', 'Beauty dish', 'softbox', 'Grid', 'Umbrella', 'Softbox', null, null, null, 4, 5, 6],
  E: [8, 5.6, 11, 16, 4, 8, null, null, null, 7, 8, 9],
  F: [45292, 45322, 45351, 45657, 44571, 44621, null, null, null, 1, 2, 3],
  G: [1, '2', true, null, 'x', 3],
  H: [1, 3, 5, 7, 9, 11],
  I: [11, 9, 7, 5, 3, 1],
  J: ['abc', 'a?c', 'abbc', 'a*', '~x', 'Abc'],
  K: [1, '=NA()', 3, '=1/0'],
  L: ['=""', 0, null, '0', 1],
  M: [120, 80, 250, 80, 40, 310],
  N: [800, 400, 200, 100, 50, 25],
};

const letters = Object.keys(COLUMNS);
const height = Math.max(...Object.values(COLUMNS).map((cells) => cells.length));

/** The same, in rows from A1. */
export const SHEET: readonly (readonly TestCell[])[] = Array.from({ length: height }, (_, row) =>
  letters.map((letter) => COLUMNS[letter]?.[row] ?? null),
);

/** What a cell holds; a formula as the text of it. Outside of the sheet every cell is empty. */
export function cellAt(a1: string): TestCell {
  const place = parseAddress(a1);
  return place ? (SHEET[place.row]?.[place.column] ?? null) : null;
}
