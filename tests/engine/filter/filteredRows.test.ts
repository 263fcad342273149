import type { Injector } from '@univerjs/core';
import { expect, it } from 'vitest';
import { hideRows, showRows } from '../../../src/engine/filter/hideRows';
import { gridRange } from '../../../src/engine/gridRange';
import { parseArea } from '../../../src/formula/areaText';
import { calculated } from '../book';

const area = (text: string) => {
  const found = parseArea(text);
  if (!found) throw new Error(text);
  return gridRange(found);
};

/** A table in A1:B6, a list below it, and what counts them at the right. */
async function kit() {
  const rows = [
    ['Head', 'Energy', null, '=SUM(B2:B6)'],
    ['a', 1, null, '=SUBTOTAL(9,B2:B6)'],
    ['b', 2, null, '=AGGREGATE(9,4,B2:B6)'],
    ['a', 4, null, '=SUBTOTAL(9,B8:B9)'],
    ['b', 8, null, '=SUBTOTAL(109,B8:B9)'],
    ['a', 16, null, '=B6*2'],
    [],
    ['x', 100, null, '=B8+B6'],
    ['y', 200],
  ];
  const book = await calculated({ Plan: rows });
  await book.workbook.addTable('Plan', 'Kit', area('A1:B6'), 'kit');
  const { _injector: injector } = book.workbook as unknown as { readonly _injector: Injector };
  const at = (...numbers: number[]) => ({
    unitId: book.workbook.getId(),
    subUnitId: 'Plan',
    rows: numbers.map((number) => number - 1),
  });
  return {
    book,
    sheet: book.workbook.getSheetBySheetId('Plan'),
    hide: (...numbers: number[]) => hideRows(injector, at(...numbers)),
    show: (...numbers: number[]) => showRows(injector, at(...numbers)),
    async read(text: string) {
      await book.calculate();
      return book.read('Plan', text).flat();
    },
  };
}

it('leaves hidden rows of a table out of SUBTOTAL and AGGREGATE, and counts them in all else', async () => {
  const { hide, show, read, book } = await kit();
  // 1 + 2 + 4 + 8 + 16 = 31
  expect(await read('D1:D5')).toEqual([31, 31, 31, 300, 300]);
  hide(3, 5);
  // without 2 and 8
  expect(await read('D1:D6')).toEqual([31, 21, 21, 300, 300, 32]);
  await book.workbook.undo();
  expect(await read('D2')).toEqual([31]);
  await book.workbook.redo();
  expect(await read('D2')).toEqual([21]);
  show(3);
  expect(await read('D2')).toEqual([23]);
});

it('counts a row that is hidden outside of a table in SUBTOTAL(9), as it is no filter that hides it', async () => {
  const { hide, read } = await kit();
  hide(9);
  expect(await read('D4:D5')).toEqual([300, 100]);
});

it('counts a row of a table that is hidden by hand in SUBTOTAL(9) and not in SUBTOTAL(109)', async () => {
  const { hide, show, read, sheet, book } = await kit();
  sheet?.getRange('D6').setValue({ f: '=SUBTOTAL(109,B2:B6)' });
  expect(await read('D2:D6')).toEqual([31, 31, 300, 300, 31]);
  // 8 by hand; then 2 by a filter
  sheet?.hideRows(4, 1);
  expect(await read('D2')).toEqual([31]);
  expect(await read('D6')).toEqual([23]);
  hide(3);
  expect(await read('D2')).toEqual([29]);
  expect(await read('D6')).toEqual([21]);
  // a person shows the filtered row, and hides it again
  sheet?.showRows(2, 1);
  sheet?.hideRows(2, 1);
  expect(await read('D2')).toEqual([31]);
  await book.workbook.undo();
  await book.workbook.undo();
  expect(await read('D2')).toEqual([29]);
  // all are shown at the foot, and a filter hides the one that was hidden by hand
  show(3, 5);
  hide(5);
  expect(await read('D2')).toEqual([23]);
  await book.workbook.undo();
  await book.workbook.undo();
  expect(await read('D2')).toEqual([29]);
  expect(await read('D6')).toEqual([21]);
});

it('deletes the rows that are shown and leaves those that are filtered out, with all that names them', async () => {
  const { hide, read, sheet, book } = await kit();
  hide(3, 5);
  sheet?.deleteRows(1, 4);
  expect(await read('A1:B5')).toEqual(['Head', 'Energy', 'b', 2, 'b', 8, 'a', 16, null, null]);
  expect(sheet?.getRange('D4').getFormula()).toBe('=B4*2');
  expect(sheet?.getRange('D6').getFormula()).toBe('=B6+B4');
  // 2 + 8 + 16
  expect(await read('D1')).toEqual([26]);
  expect(book.workbook.getTableList()[0]?.range).toMatchObject(area('A1:B4'));
  await book.workbook.undo();
  expect(await read('A1:B6')).toEqual(['Head', 'Energy', 'a', 1, 'b', 2, 'a', 4, 'b', 8, 'a', 16]);
  // all rows are there again, and 2 and 8 still hidden
  expect(await read('D1:D2')).toEqual([31, 21]);
  await book.workbook.redo();
  expect(await read('D1')).toEqual([26]);
});

it('gives rows that come back what they had, each its own', async () => {
  const { book, hide, sheet } = await kit();
  hide(9);
  const seen = () => [7, 8, 9].filter((row) => sheet?.getSheet().getRowRawVisible(row - 1));
  expect(seen()).toEqual([7, 8]);
  sheet?.deleteRows(6, 3);
  await book.workbook.undo();
  expect(seen()).toEqual([7, 8]);
});
