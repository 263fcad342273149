import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Area } from '../../src/formula/area';
import { placeFor } from '../../src/set/placeFor';
import { inLines, type SheetAsRead } from '../../src/set/sheetAsRead';
import { planAlone } from '../../src/sheets/makePlan';
import { trials } from '../full';
import { templateOf } from '../sheets/support';

/** Cells of 60 by 20, so that a picture of 300 by 100 takes five by five. */
const STARTS = { row: (row: number) => row * 20, column: (column: number) => column * 60 };
const SIZE = { width: 300, height: 100 };
const under = ({ cells }: SheetAsRead, { row, column, rows, columns }: Area): unknown[] =>
  cells.slice(row, row + rows).flatMap((line) => line.slice(column, column + columns).filter((value) => value !== '')); // prettier-ignore
const comesDown = ({ tables }: SheetAsRead, { row, column, rows, columns }: Area): boolean =>
  tables.some(
    (table) =>
      table.row < row + rows && table.column < column + columns && column < table.column + table.columns,
  );

describe('the place of a picture', () => {
  test('is at the selected cell where nothing stands under it', () => {
    const sheet = { name: 'Set', cells: [['a', '', '']], tables: [] };
    expect(placeFor(sheet, { row: 3, column: 1 }, SIZE, STARTS)).toEqual({ row: 3, column: 1, rows: 5, columns: 5 }); // prettier-ignore
  });
  test('is nearest to the head of the sheet where something does', () => {
    // three rows of four columns: right of them it begins at 4 × 60 and the third row, below them at the fourth
    const cells = Array.from({ length: 3 }, () => ['a', 'b', 'c', 'd']);
    const sheet = { name: 'Set', cells, tables: [] };
    const [row, column] = [3, 0];
    expect(placeFor(sheet, { row: 1, column: 1 }, SIZE, STARTS)).toMatchObject({ row, column });
    // a table comes down into what is below it
    const tables = [{ row: 0, column: 0, rows: 3, columns: 4 }];
    expect(placeFor({ ...sheet, tables }, { row: 1, column: 1 }, SIZE, STARTS)).toMatchObject({ row: 2, column: 4 }); // prettier-ignore
  });
  test('covers nothing, whatever stands on the sheet', () =>
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.constantFrom('', '', 'x', 0), { maxLength: 12 }), { maxLength: 12 }),
        fc.array(fc.record({ row: fc.nat(12), column: fc.nat(12), rows: fc.integer({ min: 1, max: 5 }), columns: fc.integer({ min: 1, max: 5 }) }), { maxLength: 3 }), // prettier-ignore
        fc.record({ row: fc.nat(15), column: fc.nat(15) }),
        (cells, tables, from) => {
          // a table stands on cells
          const sheet = { name: 'Set', cells, tables: tables.map((table) => ({ ...table, column: Math.min(table.column, 7) })) }; // prettier-ignore
          const wide = Array.from({ length: 12 }, () => '');
          const whole = { ...sheet, cells: [...cells, wide] };
          const place = placeFor(whole, from, SIZE, STARTS);
          expect(under(whole, place)).toEqual([]);
          expect(comesDown(whole, place)).toBe(false);
        },
      ),
      trials(281, 100),
    ));
  test('on a new Shot record is off all that is typed and answered there', () => {
    const { sheet } = planAlone(templateOf('shot-record'), true);
    const lines = inLines(sheet);
    const place = placeFor(lines, { row: 4, column: 1 }, { width: 1000, height: 600 }, STARTS);
    expect(under(lines, place)).toEqual([]);
    expect(comesDown(lines, place)).toBe(false);
  });
});
