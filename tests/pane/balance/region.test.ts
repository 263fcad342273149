import { describe, expect, test } from 'vitest';
import { regionAround, tableAt } from '../../../src/pane/balance/region';

const PICTURE = `
.........
.aaa..b..
.a.a.....
.aaa.c...
......c..
`;
const lines = PICTURE.trim().split('\n');
const isFilled = (row: number, column: number): boolean => (lines[row]?.[column] ?? '.') !== '.';

describe('the filled cells around a cell', () => {
  test.each([
    ['a cell of them', { row: 1, column: 1 }, { row: 1, column: 1, rows: 3, columns: 3 }],
    ['an empty cell between them', { row: 2, column: 2 }, { row: 1, column: 1, rows: 3, columns: 3 }],
    ['a cell that stands alone', { row: 1, column: 6 }, { row: 1, column: 6, rows: 1, columns: 1 }],
    ['cells that touch at a corner', { row: 3, column: 5 }, { row: 3, column: 5, rows: 2, columns: 2 }],
  ])('%s', (_, place, area) => {
    expect(regionAround(place, isFilled)).toEqual(area);
  });
  test('are none far from all', () => {
    expect(regionAround({ row: 30, column: 30 }, isFilled)).toBeUndefined();
  });
});

test('a table is that around the cell, or the one that ends right above it', () => {
  const [upper, lower] = [
    { row: 1, column: 1, rows: 3, columns: 2 },
    { row: 4, column: 2, rows: 2, columns: 2 },
  ];
  expect(tableAt([upper, lower], { row: 2, column: 1 })).toBe(upper);
  expect(tableAt([upper, lower], { row: 4, column: 1 })).toBe(upper);
  expect(tableAt([upper, lower], { row: 4, column: 2 })).toBe(lower);
  expect(tableAt([upper, lower], { row: 5, column: 1 })).toBeUndefined();
});
