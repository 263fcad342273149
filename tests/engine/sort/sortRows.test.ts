import type { Injector } from '@univerjs/core';
import { expect, it } from 'vitest';
import type { SortBy } from '../../../src/engine/sort/order';
import { sortRows } from '../../../src/engine/sort/sortRows';
import { parseArea } from '../../../src/formula/areaText';
import { gridRange } from '../../../src/engine/gridRange';
import { calculated, type TestCell } from '../book';

type Rows = readonly (readonly TestCell[])[];
const FIRST: SortBy = { column: 0, largestFirst: false };

async function sorted(
  sheets: Readonly<Record<string, Rows>>,
  area: string,
  by: readonly SortBy[] = [FIRST],
  prepare: (book: Awaited<ReturnType<typeof calculated>>) => unknown = () => {},
) {
  const book = await calculated(sheets);
  await prepare(book);
  const { workbook } = book;
  const [first = ''] = Object.keys(sheets);
  const { _injector: injector } = workbook as unknown as { readonly _injector: Injector };
  const range = parseArea(area);
  if (!range) throw new Error(area);
  const outcome = sortRows(injector, {
    unitId: workbook.getId(),
    subUnitId: first,
    range: gridRange(range),
    by,
  });
  await book.calculate();
  const formula = (a1: string, sheet = first) => workbook.getSheetByName(sheet)?.getRange(a1).getFormula();
  const refused = 'refused' in outcome ? outcome.refused : undefined;
  return { book, outcome, refused, formula, read: (a1: string, sheet = first) => book.read(sheet, a1) };
}

it('orders numbers, texts, truth values and errors, the empty cells last whichever way', async () => {
  const cells: Rows = [[true], ['Birch 10'], [null], [3], ['birch 9'], ['=1/0'], [-2], [false]];
  const up = await sorted({ Plan: cells }, 'A1:A8');
  expect(up.read('A1:A8').flat()).toEqual([
    -2,
    3,
    'birch 9',
    'Birch 10',
    false,
    true,
    { error: '#DIV/0!' },
    null,
  ]);
  const down = await sorted({ Plan: cells }, 'A1:A8', [{ column: 0, largestFirst: true }]);
  expect(down.read('A1:A8').flat()).toEqual([
    { error: '#DIV/0!' },
    true,
    false,
    'Birch 10',
    'birch 9',
    3,
    -2,
    null,
  ]);
});

it('orders marks that are texts by their figures, among the numbers', async () => {
  const stops = await sorted({ Plan: [['f/11'], [8], ['f/5.6'], [16], ['f/2']] }, 'A1:A5');
  expect(stops.read('A1:A5').flat()).toEqual(['f/2', 'f/5.6', 8, 'f/11', 16]);
  const times = await sorted({ Plan: [['1/60'], ['1/250'], [0.5], ['1/125 s']] }, 'A1:A4');
  expect(times.read('A1:A4').flat()).toEqual(['1/250', '1/125 s', '1/60', 0.5]);
});

it('keeps the order of rows that are alike, and asks the next column', async () => {
  const rows: Rows = [
    [2, 'b', 1],
    [1, 'b', 2],
    [2, 'a', 3],
    [1, 'b', 4],
  ];
  const { read } = await sorted({ Plan: rows }, 'A1:C4', [
    { column: 1, largestFirst: false },
    { column: 0, largestFirst: true },
  ]);
  expect(read('C1:C4').flat()).toEqual([3, 1, 2, 4]);
});

it('has formulas go with their rows, and those elsewhere with what they name', async () => {
  const { book, refused, read, formula } = await sorted(
    {
      Plan: [
        ['Head', 'Power', 'Twice', 100],
        [3, 30, '=B2*2+$D$1', '=C2'],
        [1, 10, '=B3*2+$D$1', '=SUM(B2:B4)'],
        [2, 20, '=B4*2+$D$1', '=SUM(B:B)'],
      ],
      Other: [['=Plan!B2&""', '=Plan!$C$4', '=Fee', '=SUM(Plan!A2:B4)']],
    },
    'A2:C4',
    [FIRST],
    ({ workbook }) => workbook.insertDefinedName('Fee', 'Plan!$B$3'),
  );
  expect(refused).toBeUndefined();
  expect(read('A2:C4')).toEqual([
    [1, 10, 120],
    [2, 20, 140],
    [3, 30, 160],
  ]);
  expect(formula('C2')).toBe('=B2*2+$D$1');
  // By hand: 30 · 2 + 100, and 10 + 20 + 30.
  expect(read('D2:D4').flat()).toEqual([160, 60, 60]);
  expect(formula('D2')).toBe('=C4');
  expect(read('A1:D1', 'Other').flat()).toEqual(['30', 140, 10, 66]);
  expect(formula('B1', 'Other')).toBe('=Plan!$C$3');

  await book.workbook.undo();
  await book.calculate();
  expect(read('A2:C4')).toEqual([
    [3, 30, 160],
    [1, 10, 120],
    [2, 20, 140],
  ]);
  expect([formula('D2'), formula('B1', 'Other')]).toEqual(['=C2', '=Plan!$C$4']);
  expect(read('C1', 'Other').flat()).toEqual([10]);
});

it.each([
  ['a running total', '=B2+C1', 'C2 reads another of these rows: C1'],
  ['a sum so far', '=SUM(B$1:B2)', 'C2 reads another of these rows: B1:B2'],
])('refuses %s, whose answers mean the order', async (_, total, words) => {
  const rows: Rows = [
    [3, 1, 1],
    [1, 2, total],
    [2, 3, 0],
  ];
  const { refused, read } = await sorted({ Plan: rows }, 'A1:C3');
  expect(refused).toContain(words);
  expect(read('A1:A3').flat()).toEqual([3, 1, 2]);
});

it('refuses where a formula elsewhere reads some of the rows, unless they stay together', async () => {
  const rows = (text: string): Rows => [
    [3, 1, text],
    [1, 2],
    [2, 3],
  ];
  const apart = await sorted({ Plan: rows('=SUM(B1:B2)') }, 'A1:B3');
  expect(apart.refused).toContain('C1 reads a part of these rows: B1:B2');
  expect(apart.read('A1:A3').flat()).toEqual([3, 1, 2]);
  const together = await sorted({ Plan: rows('=SUM(B2:B3)') }, 'A1:B3');
  expect(together.refused).toBeUndefined();
  expect(together.formula('C1')).toBe('=SUM(B1:B2)');
  expect(together.read('C1').flat()).toEqual([5]);
});

it('refuses rows with merged cells, with a list that spills, and a name for a part of them', async () => {
  const rows: Rows = [[3, '=SEQUENCE(2)'], [1], [2]];
  const spilled = await sorted({ Plan: rows }, 'A1:B3');
  expect(spilled.refused).toContain('One formula fills the cells B1:B2');
  const plain: Rows = [[3], [1], [2]];
  const merged = await sorted({ Plan: plain }, 'A1:B3', [FIRST], ({ workbook }) => {
    workbook.getSheetByName('Plan')?.getRange('A2:B2').merge();
  });
  expect(merged.refused).toContain('A2:B2 are merged');
  const named = await sorted({ Plan: plain }, 'A1:A3', [FIRST], ({ workbook }) =>
    workbook.insertDefinedName('Some', 'Plan!$A$1:$A$2'),
  );
  expect(named.refused).toContain('The name Some stands for a part of these rows');
  for (const { read } of [merged, named]) expect(read('A1:A3').flat()).toEqual([3, 1, 2]);
});

it('refuses rows with the heading of a table among them, or with a part of its rows', async () => {
  const rows: Rows = [[3], ['Head'], [1], [2], [0]];
  const gridOf = (text: string) => {
    const area = parseArea(text);
    if (!area) throw new Error(text);
    return gridRange(area);
  };
  const withTable = (area: string) =>
    sorted({ Plan: rows }, area, [FIRST], ({ workbook }) =>
      workbook.addTable('Plan', 'Kit', gridOf('A2:A4'), 'kit'),
    );
  for (const area of ['A1:A5', 'A2:A4', 'A1:A3', 'A4:A5']) {
    const { refused, read } = await withTable(area);
    expect(refused, area).toContain('the table Kit');
    expect(read('A1:A5').flat()).toEqual([3, 'Head', 1, 2, 0]);
  }
  const body = await withTable('A3:A4');
  expect(body.refused).toBeUndefined();
});

it('has nothing to undo where the rows are in that order', async () => {
  const { outcome } = await sorted({ Plan: [[1], [2], [null]] }, 'A1:A3');
  expect(outcome).toMatchObject({ isChanged: false });
});
