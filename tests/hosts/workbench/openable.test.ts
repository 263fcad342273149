import type { IWorkbookData } from '@univerjs/core';
import { expect, test } from 'vitest';
import { openable } from '../../../src/hosts/workbench/state/openable';

/** The size that a stored sheet with one cell, in C4, is opened with. */
function sizeOf(rowCount: unknown, columnCount: unknown): unknown {
  const sheet = { rowCount, columnCount, cellData: { 3: { 2: { v: 1 } } } };
  const { sheets } = openable({ sheets: { a: sheet } } as unknown as IWorkbookData);
  return [sheets['a']?.rowCount, sheets['a']?.columnCount];
}

// A sheet has 1,048,576 rows and 16,384 columns at most. The usual: 60 rows more than are in use, and at least columns A to Z.
test.each([
  [64, 26, [64, 26]],
  [1_048_576, 16_384, [1_048_576, 16_384]],
  [1e9, 26, [64, 26]],
  [64, 16_385, [64, 26]],
  [0, -1, [64, 26]],
  [2.5, '26', [64, 26]],
  [undefined, null, [64, 26]],
  [Number.NaN, Number.POSITIVE_INFINITY, [64, 26]],
])('a sheet stored with %s rows and %s columns is opened with %j', (rows, columns, size) => {
  expect(sizeOf(rows, columns)).toEqual(size);
});

test('what stands far out counts, what no sheet has does not', () => {
  const sheet = {
    rowCount: 1e9,
    columnCount: 1e9,
    cellData: { 199: { 40: { v: 1 } }, 9_999_999: { 99_999: { v: 1 } } },
  };
  const { sheets } = openable({ sheets: { a: sheet } } as unknown as IWorkbookData);
  expect([sheets['a']?.rowCount, sheets['a']?.columnCount]).toEqual([260, 41]);
});
