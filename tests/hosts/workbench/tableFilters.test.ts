import { expect, it } from 'vitest';
import type { BookTable } from '../../../src/book/book';
import { withFilters } from '../../../src/hosts/workbench/filter/tableFilters';

const ROWS = [
  ['Part', 'Power'],
  ['key', '1/2'],
  ['fill', '1/2'],
  ['fill', ''],
  ['rim', '1/4'],
];
const textAt = (row: number, column: number): string => ROWS[row - 2]?.[column - 1] ?? '';
/** From B3, as rows and columns count from 0. */
const TABLE: BookTable = {
  name: 'Lights',
  area: { row: 2, column: 1, rows: 5, columns: 2 },
  columns: [{ name: 'Part' }, { name: 'Power' }],
};

it('says what a table is filtered by, from what its hidden rows do not show', () => {
  const { table, rows, isExact } = withFilters(TABLE, [3, 6, 9], textAt);
  expect(isExact).toBe(true);
  expect(rows).toEqual([3, 6]);
  expect(table.filters).toEqual([{ column: 0, texts: ['fill'], blank: false }]);
});

it('narrows by a second column, and knows empty cells', () => {
  // fill alone is left of the parts, and of these the one without a power
  const { table, rows } = withFilters(TABLE, [3, 4, 6], textAt);
  expect(rows).toEqual([3, 4, 6]);
  expect(table.filters).toEqual([
    { column: 0, texts: ['fill'], blank: false },
    { column: 1, texts: [], blank: true },
  ]);
});

it('says where no filter hides the same rows, which stay hidden by one that lets the others pass', () => {
  const filters = [{ column: 0, texts: ['same'], blank: false }];
  const alike = { table: { ...TABLE, filters }, rows: [3], isExact: false };
  expect(withFilters(TABLE, [3], () => 'same')).toEqual(alike);
  expect(withFilters(TABLE, [9], textAt)).toEqual({ table: TABLE, rows: [], isExact: true });
});

it('tells no rows apart by capitals, which other programs take for alike', () => {
  const words = ['Key', 'key', 'rim'];
  expect(withFilters(TABLE, [4], (row) => words[row - 3] ?? 'fill').isExact).toBe(false);
});
