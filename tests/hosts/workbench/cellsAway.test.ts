import { expect, test } from 'vitest';
import { cellsAway } from '../../../src/hosts/workbench/tables/atFoot/cellsAway';

const range = { startRow: 10, endRow: 19, startColumn: 2, endColumn: 5 };

test.each([
  ['within it', 10, 5, 0],
  ['above it', 7, 3, 3],
  ['below it', 20, 2, 1],
  ['left of it', 15, 0, 2],
  ['beyond a corner', 23, 9, 8],
])('a cell %s is so many cells from a table', (_, row, column, away) =>
  expect(cellsAway(row, column, range)).toBe(away),
);
