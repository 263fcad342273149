import { afterEach, expect, it, vi } from 'vitest';
import { sortRows } from '../../../src/engine/sort/sortRows';
import { answersNow, changedAnswers } from '../../../src/hosts/workbench/sort/changedAnswers';
import { calculated, type TestCell } from '../../engine/book';
import { gridOver } from './gridOver';

// The presets want a page; what is taken from them here is in the packages below them.
vi.mock('@univerjs/preset-sheets-core', async () => ({
  ...(await import('@univerjs/engine-formula')),
  ...(await import('@univerjs/sheets')),
}));

type Book = Awaited<ReturnType<typeof calculated>>;
const books: Book[] = [];
afterEach(() => books.splice(0).forEach((book) => book.dispose()));

/** The cells whose answers are others once the rows 2 to 4 of A to C are sorted by the first column. */
async function changedIn(rows: readonly (readonly TestCell[])[]): Promise<readonly string[]> {
  const book = await calculated({ Plan: rows });
  books.push(book);
  const { workbook } = book;
  const { grid, injector } = gridOver(workbook);
  const range = { startRow: 1, endRow: 3, startColumn: 0, endColumn: 2 };
  const at = { unitId: workbook.getId(), subUnitId: 'Plan', range };
  const before = answersNow(grid, { ...at, from: [0, 1, 2] });
  const outcome = sortRows(injector, { ...at, by: [{ column: 0, largestFirst: false }] });
  if ('refused' in outcome) throw new Error(outcome.refused);
  await book.calculate();
  return changedAnswers(before, answersNow(grid, { ...at, from: outcome.from }));
}

it('names the formulas of sorted rows that go by their place, where they stand now, and no others', async () => {
  expect(
    await changedIn([
      ['Head', 'Twice', 'So far'],
      // the row above, without naming it: 30, 30 + 10, 30 + 10 + 20
      [30, '=A2*2', '=N(OFFSET(C2,-1,0))+A2'],
      [10, '=A3*2', '=N(OFFSET(C3,-1,0))+A3'],
      [20, '=A4*2', '=N(OFFSET(C4,-1,0))+A4'],
    ]),
    // sorted it is 10, 10 + 20, 10 + 20 + 30: of the row of 10 it was 40, of 20 it was 60, of 30 it was 30
  ).toEqual(['C2', 'C3', 'C4']);
  expect(await changedIn([['Head', 'Twice'], [30, '=A2*2'], [10, '=A3*2'], [20, '=A4*2'], ['=SUM(B2:B4)']])).toEqual([]); // prettier-ignore
  // the second row is the second row still
  expect(await changedIn([['Head', 'No'], [30, '=ROW()-1'], [20, '=ROW()-1'], [10, '=ROW()-1']])).toEqual(['B2', 'B4']); // prettier-ignore
});
