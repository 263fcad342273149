import { Lexer } from '@univerjs/engine-formula';
import { describe, expect, test, vi } from 'vitest';
import { headless } from '../../../src/engine/headless';
import { seenFromCell } from '../../../src/engine/mends/readFormulasOnce';
import { calculated, snapshot, type TestCell } from '../book';

describe('a formula as seen from its cell', () => {
  test.each([
    ['=A1*2', '=A7*2'],
    ['=SUM(A1:B1,$D$1)', '=SUM(A7:B7,$D$1)'],
    ['=IF(A1>5E3,"A1",LOG10(B1))', '=IF(A7>5E3,"A1",LOG10(B7))'],
    ['=a1&TRUE', '=A7&TRUE'],
  ])('%s and, six rows down, %s are one', (formula, moved) => {
    expect(seenFromCell(formula, 0, 3)).toBeDefined();
    expect(seenFromCell(formula, 0, 3)).toBe(seenFromCell(moved, 6, 3));
    expect(seenFromCell(formula, 0, 3)).not.toBe(seenFromCell(moved, 5, 3));
    expect(seenFromCell(formula, 0, 3)).not.toBe(seenFromCell(moved, 6, 4));
  });

  test.each([
    '=$A1', '=A$1', '=$A$1:A3', '=A1:$A$3', '=Fee*2', '=Other!A1', "='A 1'!A1", '=A:A', '=1:1', '=A1#', '=@A1:A3',
    '={1,2}', '=Kit[Qty]', '=OFFSET(A1,1,0)', '=INDIRECT("A1")', '=INDEX(A1:A3,2)', '=LET(x,A1,x)', '=A1B2',
  ])('%s is for itself', (formula) => {
    expect(seenFromCell(formula, 0, 3)).toBeUndefined();
  }); // prettier-ignore
});

/** Column A counts, and B to F ask for it, by cells that move along, that stay, and by both. */
const ROWS = 30;
const rows = (): TestCell[][] =>
  Array.from({ length: ROWS }, (_, i) => {
    const row = i + 1;
    return [
      row,
      `=A${row}*2`,
      `=SUM(A$1:A${row})`,
      `=SUM($A$1:$A$${ROWS})-A${row}`,
      `=IF(B${row}>20,"much",B${row}&" of A${row}")`,
      row === 1 ? '=B1' : `=F${row - 1}+B${row}`,
    ];
  });

test('each of a column of formulas answers for its own row, also after a change', async () => {
  const book = await calculated({ Data: rows() });
  const wanted = (first: number) =>
    Array.from({ length: ROWS }, (_, i) => {
      const a = i === 0 ? first : i + 1;
      const sum = ((i + 1) * (i + 2)) / 2 - 1 + first;
      const all = (ROWS * (ROWS + 1)) / 2 - 1 + first;
      return [a, 2 * a, sum, all - a, a > 10 ? 'much' : `${2 * a} of A${i + 1}`, 2 * sum];
    });
  expect(book.read('Data', `A1:F${ROWS}`)).toEqual(wanted(1));
  book.workbook.getSheetByName('Data')?.getRange('A1').setValue(9);
  await book.calculate();
  expect(book.read('Data', `A1:F${ROWS}`)).toEqual(wanted(9));
  book.dispose();
});

test('formulas that were filled answer for their own cells, though those filled beside them say the same', async () => {
  const book = await calculated({
    Data: [
      [1, '=A1*2', 10, '=C1*2'],
      [2, null, 20],
      [3, null, 30],
    ],
  });
  const sheet = book.workbook.getSheetByName('Data');
  for (const column of ['B', 'D']) {
    const all = sheet?.getRange(`${column}1:${column}3`);
    if (all) await sheet?.getRange(`${column}1`).autoFill(all);
  }
  await book.calculate();
  expect(book.read('Data', 'B1:B3')).toEqual([[2], [4], [6]]);
  expect(book.read('Data', 'D1:D3')).toEqual([[20], [40], [60]]);
  book.dispose();
});

test('a column of formulas is read once', async () => {
  const read = vi.spyOn(Lexer.prototype, 'treeBuilder');
  const column = Array.from({ length: 200 }, (_, i): TestCell[] => [i, `=A${i + 1}*7-${'1'.repeat(3)}`]);
  const book = headless(snapshot({ Data: column }));
  await book.calculate();
  expect(book.read('Data', 'B200')).toEqual([[199 * 7 - 111]]);
  expect(read.mock.calls.length).toBeLessThan(5);
  read.mockRestore();
  book.dispose();
});
