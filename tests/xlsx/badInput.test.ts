import { describe, expect, test } from 'vitest';
import { readXlsx } from '../../src/xlsx/read';
import { cells, workbook, zip } from './parts';

async function read(inside: string, more = {}, names = '') {
  const { book, notUnderstood } = await readXlsx(
    zip(workbook(cells(`<row r="1">${inside}</row>`), more, names)),
  );
  return { values: book.sheets[0]?.cells.map(({ value }) => value), book, notUnderstood };
}

describe('cells that are not of the kind that a file says', () => {
  const KEPT = [
    'Cells that the file calls numbers, dates or truths, and that hold something else, are kept as texts.',
  ];

  test.each([
    ['a text', '<c r="A1"><v>abc</v></c>', 'abc'],
    ['a number with a comma', '<c r="A1" t="n"><v>1,5</v></c>', '1,5'],
    ['no number', '<c r="A1"><v>INF</v></c>', 'INF'],
    ['a number of a programmer', '<c r="A1"><v>0x10</v></c>', '0x10'],
    ['more than a number can be', '<c r="A1"><v>1e999</v></c>', '1e999'],
    ['no truth', '<c r="A1" t="b"><v>x</v></c>', 'x'],
    ['no date', '<c r="A1" t="d"><v>nonsense</v></c>', 'nonsense'],
  ])('keep %s as a text, and that is said', async (_, cell, text) => {
    const { values, notUnderstood } = await read(cell);
    expect(values).toEqual([text]);
    expect(notUnderstood).toEqual(KEPT);
  });

  test.each([
    ['<c r="A1"><v>-1.5E-3</v></c>', -0.0015],
    ['<c r="A1"><v> 7 </v></c>', 7],
    ['<c r="A1"><v>.5</v></c>', 0.5],
    ['<c r="A1" t="b"><v>false</v></c>', false],
    // A text that looks like a number is a text: nothing is changed, and nothing has to be said.
    ['<c r="A1" t="str"><v>12</v></c>', '12'],
    ['<c r="A1" t="inlineStr"><is><t>007</t></is></c>', '007'],
  ])('%s is what it is', async (cell, value) => {
    const { values, notUnderstood } = await read(cell);
    expect(values).toEqual([value]);
    expect(notUnderstood).toEqual([]);
  });

  test.each([
    ['inline', '<c r="A1" t="inlineStr"><is><t>TEXT</t></is></c>'],
    ['of a formula', '<c r="A1" t="str"><v>TEXT</v></c>'],
  ])('a text longer than a cell can hold is cut, and that is said: %s', async (_, cell) => {
    // 32,767 letters are the most in a cell of Excel.
    const most = await read(cell.replace('TEXT', 'x'.repeat(32_767)));
    expect(most).toMatchObject({ values: ['x'.repeat(32_767)], notUnderstood: [] });
    const { values, notUnderstood } = await read(cell.replace('TEXT', 'x'.repeat(1_000_000)));
    expect(values).toEqual(['x'.repeat(32_767)]);
    expect(notUnderstood).toEqual(['Texts of more than 32767 letters, which no cell can hold, are cut.']);
  });

  test('an empty one is empty', async () => {
    expect(await read('<c r="A1"><v></v></c><c r="B1" t="b"/><c r="C1" t="s"/>')).toMatchObject({
      values: [],
      notUnderstood: [],
    });
  });

  test('a text that the file has lost', async () => {
    const { values, notUnderstood } = await read('<c r="A1" t="s"><v>9</v></c><c r="B1"><v>1</v></c>');
    expect(values).toEqual([1]);
    expect(notUnderstood).toEqual(['Some texts are missing in the file: their cells are empty.']);
  });

  test('what a formula last gave is calculated anew', async () => {
    const { book, notUnderstood } = await read('<c r="A1"><f>1+1</f><v>two</v></c>');
    expect(book.sheets[0]?.cells).toMatchObject([{ formula: '=1+1' }]);
    expect(notUnderstood).toEqual([]);
  });
});

describe('stored errors', () => {
  test('stay what they are', async () => {
    const codes = ['#N/A', '#DIV/0!', '#REF!', '#NAME?', '#NULL!', '#NUM!', '#VALUE!', '#SPILL!', '#CALC!'];
    const inside = codes.map((code) => `<c t="e"><v>${code}</v></c>`).join('');
    const { values, notUnderstood } = await read(inside);
    expect(values).toEqual(codes.map((error) => ({ error })));
    expect(notUnderstood).toEqual([]);
  });

  test('of programs that have more of them are told', async () => {
    const { values, notUnderstood } = await read('<c r="A1" t="e"><v>#FIELD!</v></c>');
    expect(values).toEqual([{ error: '#VALUE!' }]);
    expect(notUnderstood).toEqual(['The error #FIELD! is not known here, and is shown as #VALUE!.']);
  });
});
