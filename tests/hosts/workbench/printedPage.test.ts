import { describe, expect, test } from 'vitest';
import type { BookPage, BookTable } from '../../../src/book/book';
import { type After, inserted, removed } from '../../../src/formula/followEdit';
import { keepPage, type KeptPage, pageAfter, pageNow } from '../../../src/hosts/workbench/book/printedPage';

const table = (name: string, row: number, rows: number, column = 'Head'): BookTable => ({
  name,
  area: { row, column: 0, rows: rows + 1, columns: 1 },
  columns: [{ name: column }],
});
const PAGE: BookPage = { landscape: true, header: 'Heads', titleRows: 2, breaks: [] };

/** Pages that were kept with these tables, as they are where the tables are now. */
function afterwards(page: BookPage, then: readonly BookTable[], now: readonly BookTable[]): BookPage {
  const stored = JSON.parse(JSON.stringify(keepPage(page, then, []))) as KeptPage;
  return pageWith(stored, now);
}
const cell = (row: number) => ({ row, column: 0, value: 1 });
/** The pages of a sheet with these tables, and a cell down there. */
const pageWith = (page: KeptPage, tables: readonly BookTable[], ...rows: readonly number[]): BookPage =>
  pageNow(page, { name: 'Heads', tables, cells: rows.map(cell) });

describe('pages kept with their sheet', () => {
  const heads = table('Heads', 4, 3);
  test('are the same while nothing has moved, with tables and without', () => {
    const page = { ...PAGE, breaks: [2, 6, 10], titlesFrom: 4 };
    expect(afterwards(page, [heads], [heads])).toEqual(page);
    expect(afterwards(page, [], [])).toEqual(page);
  });
  test('a break stands before the same row after rows came into the table above it, or above that', () => {
    const page = { ...PAGE, breaks: [10] };
    expect(afterwards(page, [heads], [table('Heads', 4, 5)]).breaks).toEqual([12]);
    expect(afterwards(page, [heads], [table('Heads', 7, 3)]).breaks).toEqual([13]);
    expect(afterwards(page, [heads], [table('Heads', 4, 1)]).breaks).toEqual([8]);
  });
  test('a break above all tables stays; one within a table moves with its headings', () => {
    const page = { ...PAGE, breaks: [2, 6] };
    expect(afterwards(page, [heads], [table('Heads', 5, 9)]).breaks).toEqual([2, 7]);
  });
  test('of two tables that lie above it, a break goes by the one that ends nearer', () => {
    const page = { ...PAGE, breaks: [20] };
    const lower = table('Circuits', 12, 4);
    expect(afterwards(page, [heads, lower], [table('Heads', 4, 4), table('Circuits', 13, 4)]).breaks).toEqual([21]); // prettier-ignore
    expect(afterwards(page, [lower, heads], [table('Circuits', 12, 6), heads]).breaks).toEqual([22]);
  });
  test('headings that head each page are found where their table is, by its columns where it is renamed', () => {
    const page = { ...PAGE, titlesFrom: 4 };
    expect(afterwards(page, [heads], [table('Heads_2', 9, 3)]).titlesFrom).toBe(9);
    expect(afterwards(page, [heads], [table('Lamps', 9, 3, 'Lamp')]).titlesFrom).toBe(4);
  });
  test('what prints grows with the rows that came in, and never shrinks', () => {
    const page = { ...PAGE, area: { row: 0, column: 0, rows: 12, columns: 4 } };
    expect(pageWith(page, [], 14).area?.rows).toBe(15);
    expect(pageWith(page, [], 3).area?.rows).toBe(12);
  });
  test('what stands below the area that prints is not printed later either; that grows with the tables in it', () => {
    const page = { ...PAGE, area: { row: 0, column: 0, rows: 12, columns: 4 } };
    const typed = table('Typed', 14, 6);
    const stored = JSON.parse(JSON.stringify(keepPage(page, [heads, typed], [cell(20)]))) as KeptPage;
    const now = (tables: readonly BookTable[]) => pageWith(stored, tables, 25).area?.rows;
    expect(now([heads, typed])).toBe(12);
    expect(now([table('Heads', 4, 5), table('Typed', 16, 9)])).toBe(14);
    expect(now([table('Heads', 5, 3), typed])).toBe(13);
  });
  test('a table that begins right of what prints does not say where it ends', () => {
    const page = { ...PAGE, area: { row: 0, column: 0, rows: 12, columns: 4 } };
    const beside = { ...table('Beside', 2, 9), area: { row: 2, column: 6, rows: 10, columns: 1 } };
    const stored = keepPage(page, [beside, heads], [cell(20)]);
    const grown = { ...beside, area: { ...beside.area, rows: 30 } };
    expect(pageWith(stored, [grown, heads], 40).area?.rows).toBe(12);
  });
  test('where no table says where it ends, what prints grows with the rows that come into it', () => {
    const page = { ...PAGE, area: { row: 0, column: 0, rows: 12, columns: 4 } };
    const rows = (at: number) => inserted({ axis: 'rows', at, count: 2 });
    const after = (at: number) => pageWith(pageAfter(keepPage(page, [], [cell(20)]), rows(at)), [], 22).area?.rows; // prettier-ignore
    expect([after(3), after(12)]).toEqual([14, 12]);
  });
  test('what prints grows with the columns that came in, and by no others', () => {
    const page = { ...PAGE, area: { row: 0, column: 0, rows: 12, columns: 4 } };
    const columns = (at: number, count: number) => ({ axis: 'columns', at, count }) as const;
    const after = (how: After) => pageAfter(page, how).area;
    expect(after(inserted(columns(2, 3)))).toEqual({ row: 0, column: 0, rows: 12, columns: 7 });
    expect(after(inserted(columns(0, 1)))).toEqual({ row: 0, column: 0, rows: 12, columns: 5 });
    expect(after(removed(columns(3, 2)))).toEqual({ row: 0, column: 0, rows: 12, columns: 3 });
    expect(after(inserted(columns(4, 1)))).toEqual(page.area);
    expect(after(inserted({ axis: 'rows', at: 0, count: 2 }))).toEqual(page.area);
    expect(after(removed(columns(0, 9)))).toEqual(page.area);
    expect(pageAfter(PAGE, inserted(columns(2, 3)))).toEqual(PAGE);
  });
  test('are headed by the name that the tab has now, and by nothing where they had no heading', () => {
    const heading = (page: BookPage) =>
      pageNow(keepPage(page, [heads], []), { name: 'Lamps', tables: [heads], cells: [] }).header;
    expect([heading(PAGE), heading({ ...PAGE, header: '' })]).toEqual(['Lamps', '']);
  });
  test('a workbook that was stored before keeps its rows', () =>
    expect(pageWith({ ...PAGE, breaks: [10] }, [heads]).breaks).toEqual([10]));
});
