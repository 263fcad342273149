import { expect, test } from 'vitest';
import type { BookRule, BookSheet } from '../../src/book/book';
import { fitted } from '../../src/book/fitForGrid';
import { sheetOf } from '../xlsx/parts';

const cells = [{ row: 9, column: 4, value: 1 }];
const area = (row: number, column: number, rows: number, columns: number) => ({ row, column, rows, columns });
const list = (...areas: BookRule['areas'][number][]): BookRule => ({
  areas,
  kind: 'list',
  bounds: ['"a,b"'],
  blank: true,
  strict: true,
});
const fit = (sheet: BookSheet) => {
  const { book, changed } = fitted({ sheets: [sheet], names: [] });
  return { merges: book.sheets[0]?.merges, rules: book.sheets[0]?.rules, changed };
};
const WHOLE = area(0, 0, 1_048_576, 16_384);

test('merged cells without end are merged as far as the sheet holds something', () => {
  // Cells are held as far as E10.
  expect(fit(sheetOf(cells, { merges: [WHOLE] }))).toMatchObject({
    merges: [area(0, 0, 10, 5)],
    changed: [expect.any(String)],
  });
  expect(fit(sheetOf(cells, { merges: [area(2, 1, 1_048_574, 1)] })).merges).toEqual([area(2, 1, 8, 1)]);
  expect(fit(sheetOf(cells, { merges: [area(20, 20, 1_048_556, 16_364)] })).merges).toEqual([]);
});

test('rules for a whole sheet hold as far as the sheet holds something, and some cells more', () => {
  const { rules, changed } = fit(sheetOf(cells, { rules: [list(WHOLE)] }));
  expect(rules).toEqual([list(area(0, 0, 1010, 31))]);
  expect(changed).toHaveLength(1);
});

test('what a grid can keep stays as it is, and nothing is said', () => {
  const sheet = sheetOf(cells, {
    merges: [area(0, 0, 2, 2), area(5, 0, 50_000, 1)],
    rules: [list(area(0, 0, 1_048_576, 1), area(0, 3, 1_048_576, 2))],
  });
  expect(fit(sheet)).toEqual({ merges: sheet.merges, rules: sheet.rules, changed: [] });
});

test('many of them together are counted together', () => {
  const merges = [0, 1, 2].map((column) => area(0, column, 40_000, 1));
  expect(fit(sheetOf(cells, { merges })).merges).toEqual([...merges.slice(0, 2), area(0, 2, 10, 1)]);
});
