import { type Arbitrary, assert, constantFrom, integer, nat, property, record } from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BookChart } from '../../../src/book/chart';
import type { Area } from '../../../src/formula/area';
import { inserted, type Lines, moved, removed } from '../../../src/formula/followEdit';
import { chartAfter, type Edit, placeAfter } from '../../../src/hosts/workbench/charts/afterEdit';
import { byCells, byPixels } from '../../../src/hosts/workbench/charts/onSheet/newPlace';
import { trials } from '../../full';

const cameIn = (lines: Lines): Edit => ({ after: inserted(lines), removed: [] });
const went = (lines: Lines): Edit => ({ after: removed(lines), removed: [lines] });
/** Rows that came in before a place, or, where there are fewer than none, went from there on. */
const linesOf =
  (axis: Lines['axis']) =>
  (at: number, count: number): Edit =>
    count < 0 ? went({ axis, at, count: -count }) : cameIn({ axis, at, count });
const [rows, columns] = [linesOf('rows'), linesOf('columns')];

/** Rows 10 to 19 and columns C to F, counted from 0. */
const PLACE: Area = { row: 10, column: 2, rows: 10, columns: 4 };
const cells = (row: number, count: number, column = 0) => ({
  cells: { row, column, rows: count, columns: 1 },
});
const chart: BookChart = {
  kind: 'scatter',
  title: 'Energy',
  xTitle: '',
  yTitle: '',
  x: cells(1, 3),
  series: [
    { name: 'Ws', values: cells(1, 3, 1) },
    { name: 'Now', x: cells(6, 1), values: cells(6, 1, 1), role: 'point' },
  ],
  place: PLACE,
};

describe('where cells are after an edit', () => {
  test.each<[string, Edit, Partial<Area>]>([
    ['two rows that came in above push it down', rows(3, 2), { row: 12 }],
    ['a row that came in at its first row does too', rows(10, 1), { row: 11 }],
    ['rows that came in within it make it taller', rows(15, 3), { rows: 13 }],
    ['rows that came in right below leave it', rows(20, 3), {}],
    ['rows that went above pull it up', rows(0, -4), { row: 6 }],
    ['rows that went within it make it lower', rows(12, -3), { rows: 7 }],
    ['of rows that went across its upper edge, two were its own', rows(8, -4), { row: 8, rows: 8 }],
    ['of rows that went across its lower edge, one was its own', rows(19, -5), { rows: 9 }],
    ['of an area that went there is no row left', rows(5, -20), { row: 5, rows: 0 }],
    ['columns go alike', columns(0, 1), { column: 3 }],
    ['rows that move take it along', { after: moved({ axis: 'rows', at: 8, count: 15 }, 40), removed: [] }, { row: 27 }],
    ['rows that move away from above it pull it up', { after: moved({ axis: 'rows', at: 2, count: 3 }, 40), removed: [] }, { row: 7 }],
    ['of rows apart that went, those before it count', { after: () => undefined, removed: [{ axis: 'rows', at: 2, count: 3 }, { axis: 'rows', at: 9, count: 12 }] }, { row: 6, rows: 0 }],
    ['cells that went from below it leave it', { after: () => undefined, removed: [] }, {}],
    ['also where they go', columns(1, -2), { column: 1, columns: 3 }],
  ])('%s', (_what, edit, changed) => expect(placeAfter(PLACE, edit)).toEqual({ ...PLACE, ...changed })); // prettier-ignore

  test('what came in and went again has changed nothing', () => {
    const lines: Arbitrary<Lines> = record({
      axis: constantFrom('rows', 'columns'),
      at: nat(40),
      count: integer({ min: 1, max: 9 }),
    });
    assert(
      property(lines, (came) => {
        expect(placeAfter(placeAfter(PLACE, cameIn(came)), went(came))).toEqual(PLACE);
      }),
      trials(81, 300),
    );
  });
});

describe('a chart after an edit', () => {
  test('moves with its place and with the plain cells that it draws', () => {
    expect(chartAfter(chart, rows(0, 2))).toEqual({
      ...chart,
      x: cells(3, 3),
      series: [
        { name: 'Ws', values: cells(3, 3, 1) },
        { name: 'Now', x: cells(8, 1), values: cells(8, 1, 1), role: 'point' },
      ],
      place: { ...PLACE, row: 12 },
    });
  });
  test('draws what is left of it', () => {
    const { series } = chartAfter(chart, rows(6, -1));
    expect(series.map(({ name }) => name)).toEqual(['Ws']);
  });
  test('draws nothing where all along its axis is gone', () => {
    expect(chartAfter(chart, columns(0, -1)).series).toEqual([]);
  });
  test('stays large enough to be seen and taken hold of', () => {
    expect(chartAfter(chart, rows(8, -20)).place).toEqual({ ...PLACE, row: 8, rows: 5 });
    expect(chartAfter(chart, columns(0, -20)).place).toEqual({ ...PLACE, column: 0, columns: 2 });
  });
});

describe('a chart in somebody’s hands', () => {
  /** Rows of 20 pixels; columns of 50, from the eighth on of 100. */
  const SHEET = {
    rows: 40,
    columns: 12,
    rowStart: (row: number) => 20 * row,
    columnStart: (column: number) => 50 * column + 50 * Math.max(0, column - 7),
  };
  test.each([
    ['goes down and to the left', 'move', 3, -1, { row: 13, column: 1 }],
    [
      'keeps its width where columns are wider, as near as whole ones allow',
      'move',
      0,
      5,
      { column: 7, columns: 2 },
    ],
    ['does not leave the sheet at its beginning', 'move', -20, -9, { row: 0, column: 0 }],
    ['is cut to what is left at its end', 'move', 99, 99, { row: 35, rows: 5, column: 10, columns: 2 }],
    ['grows', 'size', 2, 1, { rows: 12, columns: 5 }],
    ['does not grow beyond the sheet', 'size', 99, 99, { rows: 30, columns: 10 }],
    ['does not shrink until nothing can be read', 'size', -99, -99, { rows: 5, columns: 2 }],
  ] as const)('%s', (_what, wish, down, right, changed) =>
    expect(byCells(PLACE, wish, down, right, SHEET)).toEqual({ ...PLACE, ...changed }),
  );
  test.each([
    ['is moved to the nearest cell', 'move', 74, 31, { row: 12, column: 3 }],
    ['stays where it is moved by less than half a cell', 'move', 24, 9, {}],
    ['is sized to the nearest cell', 'size', 140, -31, { rows: 8, columns: 6 }],
  ] as const)('%s', (_what, wish, right, down, changed) =>
    expect(byPixels(PLACE, wish, right, down, SHEET)).toEqual({ ...PLACE, ...changed }),
  );
});
