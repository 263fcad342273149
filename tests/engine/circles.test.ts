import { describe, expect, test } from 'vitest';
import { headless } from '../../src/engine/headless';
import { answers, calculated, snapshot, type TestCell } from './book';

async function row(cells: readonly TestCell[]) {
  const book = await calculated({ Data: [[...cells]] });
  const [values] = book.read('Data', `A1:${'ABCDEFGH'[cells.length - 1]}1`);
  const isCircular = book.isCircular();
  book.dispose();
  return { values, isCircular };
}
const CIRCLE = { error: '#REF!', message: expect.stringMatching(/goes round in a circle/) };
const error = expect.objectContaining({ error: '#REF!' });

describe('formulas that go round in a circle', () => {
  test.each([
    ['a cell that reads itself', ['=A1+1']],
    ['by a name alone', ['=A1']],
    ['in a sum of its own column', ['=SUM(A:A)']],
    ['behind IFERROR', ['=IFERROR(A1,5)']],
  ])('are refused: %s', async (_, cells) => {
    expect(await row(cells)).toEqual({ values: [CIRCLE], isCircular: true });
  });

  test('are refused, all of the circle and what uses it; the others are answered', async () => {
    const { values, isCircular } = await row(['=B1+1', '=C1*2', '=A1', '=C1+1', 7, '=E1+1']);
    expect(values).toEqual([error, error, error, error, 7, 8]);
    expect(values).toContainEqual(CIRCLE);
    expect(isCircular).toBe(true);
  });

  test('are answered once the circle is cut', async () => {
    const book = headless(snapshot({ Data: [['=B1+1', '=A1+1']] }));
    await book.calculate();
    book.workbook.getSheetByName('Data')?.getRange('A1').setValue(4);
    await book.calculate();
    expect(book.read('Data', 'A1:B1')).toEqual([[4, 5]]);
    expect(book.isCircular()).toBe(false);
    book.dispose();
  });
});

describe('formulas that only name their own cell', () => {
  test.each([
    ['=ROW(A1)', 1],
    ['=ROWS(A$1:A1)', 1],
    ['=COLUMN(A1)', 1],
    ['=OFFSET(A1,0,1)', 5],
    ['=INDEX(A1:B1,1,2)', 5],
    ['=ADDRESS(ROW(A1),1)', '$A$1'],
  ])('%s is answered', async (formula, answer) => {
    expect(await row([formula, 5])).toEqual({ values: [answer, 5], isCircular: false });
  });
});

test('functions of places answer where a reference lies, whatever its cells hold', async () => {
  const cases: readonly (readonly [string, TestCell | TestCell[][]])[] = [
    ['=ROW(B5)', 5],
    ['=COLUMN(B5)', 2],
    ['=ROWS(B2:C9)', 8],
    ['=COLUMNS(B2:D9)', 3],
    ['=ROWS(A:A)>1000', true],
    ['=ROW(A2:A4)', [[2], [3], [4]]],
    ['=COLUMN(B1:C1)', [[2, 3]]],
    ['=SUM(ROW(1:5))', 15],
    ['=SUM(ROW(INDIRECT("2:4")))', 9],
    ['=ROW(INDEX(A1:A9,3))', 3],
    ['=ROW(OFFSET(A1,4,0))', 5],
    ['=COLUMN(Data!C3)', 3],
    ['=ROWS({1;2;3})', 3],
    ['=COLUMNS({1,2})', 2],
    ['=ROWS(5)', 1],
    ['=ROW(A1)+0', 1],
  ];
  const { book, answer } = await answers(
    cases.map(([formula]) => formula),
    [['=NA()', 1]],
  );
  cases.forEach(([formula, wanted], i) => {
    expect(answer(i), formula).toEqual(Array.isArray(wanted) ? wanted : [[wanted]]);
  });
  book.dispose();
  // Without an argument they mean their own cell.
  expect(await row([null, '=ROW()+COLUMN()'])).toMatchObject({ values: [null, 3] });
});
