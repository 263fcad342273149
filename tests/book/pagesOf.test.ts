import { expect, it } from 'vitest';
import { type Line, pagesOf } from '../../src/book/pagesOf';

/** Rows from one to another, each ten high. */
const rows = (first: number, last: number): Line[] =>
  Array.from({ length: last - first + 1 }, (_, i) => ({ row: first + i, height: 10 }));
const PLAIN = { height: 50, titles: [], breaks: [], blocks: [], isFilled: () => true };
const told = (pages: ReturnType<typeof pagesOf>) =>
  pages.map(({ lines, isTitled }) => `${lines[0]?.row}-${lines.at(-1)?.row}${isTitled ? ' titled' : ''}`);

it('fills pages, and begins one where it is told to', () => {
  expect(told(pagesOf(rows(0, 11), PLAIN))).toEqual(['0-4', '5-9', '10-11']);
  expect(told(pagesOf(rows(0, 7), { ...PLAIN, breaks: [3] }))).toEqual(['0-2', '3-7']);
  expect(pagesOf([], PLAIN)).toEqual([]);
});

it('prints the title rows on each page behind them, and has room for fewer others there', () => {
  // two titles of ten leave room for three rows of ten
  const paper = { ...PLAIN, titles: rows(0, 1) };
  expect(told(pagesOf(rows(0, 9), paper))).toEqual(['0-4', '5-7 titled', '8-9 titled']);
});

it('keeps rows under a chart together where a page holds them', () => {
  expect(told(pagesOf(rows(0, 7), { ...PLAIN, blocks: [{ row: 3, rows: 4 }] }))).toEqual(['0-2', '3-7']);
  // six rows of ten are more than a page, whatever is done
  expect(told(pagesOf(rows(0, 8), { ...PLAIN, blocks: [{ row: 3, rows: 6 }] }))).toEqual(['0-4', '5-8']);
});

it('gives a row that is taller than a page one for itself', () => {
  const tall = [...rows(0, 1), { row: 2, height: 80 }, ...rows(3, 4)];
  expect(told(pagesOf(tall, PLAIN))).toEqual(['0-1', '2-2', '3-4']);
});

it('begins a page behind a row that is told to begin one and is hidden', () => {
  const shown = rows(0, 7).filter(({ row }) => row !== 3 && row !== 4);
  expect(told(pagesOf(shown, { ...PLAIN, height: 100, breaks: [3] }))).toEqual(['0-2', '5-7']);
});

it('keeps the rows of the taller of two charts together that begin in one row', () => {
  const blocks = [
    { row: 3, rows: 2 },
    { row: 3, rows: 4 },
  ];
  expect(told(pagesOf(rows(0, 7), { ...PLAIN, blocks }))).toEqual(['0-2', '3-7']);
});

it('keeps the rows of a chart together whose first row is hidden', () => {
  const shown = rows(0, 8).filter(({ row }) => row !== 3);
  expect(told(pagesOf(shown, { ...PLAIN, blocks: [{ row: 3, rows: 5 }] }))).toEqual(['0-2', '4-8']);
});

it('prints no page of empty rows', () => {
  // rows 3 and 4 are left over before the break, and nothing stands from row 8 on
  const isFilled = (row: number) => row < 3 || (row > 4 && row < 8);
  expect(told(pagesOf(rows(0, 10), { ...PLAIN, height: 30, breaks: [5], isFilled }))).toEqual(['0-2', '5-7']);
});
