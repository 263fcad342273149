import { expect, test } from 'vitest';
import type { BookChart } from '../../src/book/chart';
import { pageBreaks } from '../../src/book/printedPages';

const chart = (row: number, rows: number): BookChart => ({
  kind: 'line',
  title: 'Light',
  xTitle: 'x',
  yTitle: 'y',
  x: { table: 'Rows', column: 'x' },
  series: [],
  place: { row, column: 0, rows, columns: 3 },
});
/** Three columns of 30 characters: (30 × 7 + 5) × ¾ = 161.25 points each, 483.75 together, which fit a page of 520 as they are. */
const WIDTHS = { 0: 30, 1: 30, 2: 30 };
const breaks = (charts: readonly BookChart[], told?: readonly number[]): number[] =>
  pageBreaks({ charts, widths: WIDTHS, heights: {} }, { landscape: false, titleRows: 2 }, told);

test('headings from further down take their room on the pages after them, and none before', () => {
  // From row 31 on a page has 45 rows beside one of headings.
  const from = (row: number, rows: number) =>
    pageBreaks(
      { charts: [chart(row, rows)], widths: WIDTHS, heights: {} },
      { landscape: false, titleRows: 1, titlesFrom: 30 },
      [31],
    );
  expect(from(66, 10)).toEqual([31]);
  expect(from(67, 10)).toEqual([31, 66]);
  expect(
    pageBreaks(
      { charts: [chart(36, 10)], widths: WIDTHS, heights: {} },
      { landscape: false, titleRows: 1, titlesFrom: 60 },
    ),
  ).toEqual([]);
});

test('a page of 690 points holds 46 rows of 15: a chart that ends in the 46th stays, one that ends below goes to the next', () => {
  expect(breaks([chart(36, 10)])).toEqual([]);
  expect(breaks([chart(37, 10)])).toEqual([36]);
});
test('a block that is told to starts a page, whatever there is room for', () =>
  expect(breaks([], [20, 50])).toEqual([20, 50]));
test('a chart is measured from the page that it would stand on, with the rows that each page repeats', () => {
  // From row 30 on, with 2 repeated rows: 44 rows more, up to row 73.
  expect(breaks([chart(64, 10)], [30])).toEqual([30]);
  expect(breaks([chart(65, 10)], [30])).toEqual([30, 64]);
});
test('only what prints makes a page small: one column of three is as it is, and so are its rows', () => {
  // Three columns of 60 characters are 956.25 points, printed at 520/956.25: 690 points then hold 84 rows.
  const wide = { charts: [chart(37, 10)], widths: { 0: 60, 1: 60, 2: 60 }, heights: {} };
  expect(pageBreaks(wide, { landscape: false, titleRows: 2 })).toEqual([]);
  const area = { row: 0, column: 0, rows: 60, columns: 1 };
  expect(pageBreaks(wide, { landscape: false, titleRows: 2, area })).toEqual([36]);
});
test('a break below a chart does not make room above it', () =>
  expect(breaks([chart(37, 10)], [60])).toEqual([36, 60]));
