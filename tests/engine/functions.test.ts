import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import { PLAIN_FUNCTIONS } from '../../src/catalogue/plain';
import type { Arg } from '../../src/catalogue/types';
import { exampleFormula, functionName } from '../../src/catalogue/words';
import { descriptions } from '../../src/engine/descriptions';
import { headless } from '../../src/engine/headless';
import { answers, calculated, snapshot, type TestCell } from './book';

async function answer(formula: string, data?: readonly (readonly TestCell[])[]) {
  const { book, answer: given } = await answers([formula], data);
  const rows = given(0);
  book.dispose();
  return rows;
}

describe('SWEEP functions in the workbench engine', () => {
  const EXAMPLES = CATALOGUE.flatMap((row) =>
    row.examples.map((example) => ({ row, formula: exampleFormula(row, example), example })),
  );

  test('every example of the catalogue gives its value', async () => {
    expect(EXAMPLES.length).toBeGreaterThanOrEqual(CATALOGUE.length);
    const { book, answer: given } = await answers(EXAMPLES.map(({ formula }) => formula));
    EXAMPLES.forEach(({ row, formula, example }, i) => {
      const wanted = [example.gives].flat(2).map((value) =>
        // An example states as many digits as a person would: six of them are compared.
        typeof value === 'number' ? [expect.closeTo(value, 6)] : [value],
      );
      // a list runs down, values side by side run across
      expect((given(i) as unknown[][]).flat(), formula).toEqual(wanted.flat());
      const across = (given(i) as unknown[][]).length === 1 && wanted.length > 1;
      expect(across, formula).toBe(Array.isArray(row.answers));
    });
    book.dispose();
  });

  test('numbers keep every digit', async () => {
    expect(await answer('=SWEEP.FREEZEBLUR(2,1/2000,0.5,3.76)')).toEqual([[132.97872340425533]]);
  });

  test('texts stay texts: no date, no number', async () => {
    const [[mark]] = (await answer('=SWEEP.STOPTEXT("1/60","time")')) as [[unknown]];
    expect(mark).toBe('1/60 s');
    expect(await answer('=ISTEXT(SWEEP.STOPTEXT("1/60","time"))')).toEqual([[true]]);
    expect(await answer('=SWEEP.STOPDIFF(A1,A2,"time")', [['1/125'], ['1/60']])).toEqual([[1]]);
    expect(await answer('=SWEEP.STOPDIFF({"1/4";"1/8"},"1/2","time")')).toEqual([[1], [2]]);
  });

  test('a refusal keeps its code and its sentence', async () => {
    const refused = [[{ error: '#NUM!', message: 'from must be above 0, not -1.' }]];
    expect(await answer('=SWEEP.STOPDIFF(-1,11)')).toEqual(refused);
    expect(await answer('=1+SWEEP.STOPDIFF(-1,11)')).toEqual(refused);
    expect(await answer('=SWEEP.STOPSHIFT(8,SWEEP.STOPDIFF(-1,11))')).toEqual(refused);
  });

  test('too few and too many arguments are told in a sentence', async () => {
    expect(await answer('=SWEEP.STOPDIFF(8)')).toEqual([
      [{ error: '#VALUE!', message: expect.stringMatching(/^to is /) }],
    ]);
    expect(await answer('=SWEEP.STOPDIFF(8,11,"aperture",4)')).toEqual([
      [{ error: '#VALUE!', message: 'STOPDIFF takes 2 or 3 values, not 4.' }],
    ]);
    expect(await answer('=SWEEP.STOPDIFF()')).toEqual([
      [{ error: '#VALUE!', message: expect.stringMatching(/^from is /) }],
    ]);
  });

  test('an error in a range comes out in its own cell, and so does a refusal', async () => {
    expect(await answer('=SWEEP.STOPDIFF(8,A1:A4)', [[16], ['=1/0'], [-1], [8]])).toEqual([
      [2],
      [{ error: '#DIV/0!' }],
      [{ error: '#NUM!', message: 'to must be above 0, not -1.' }],
      [0],
    ]);
  });

  test('an error that comes in from a cell goes out as it came', async () => {
    expect(await answer('=SWEEP.STOPDIFF(8,A1)', [['=NA()']])).toEqual([[{ error: '#N/A' }]]);
    expect(await answer('=SWEEP.STOPDIFF(8,A1)', [['=NOSUCHNAME']])).toEqual([[{ error: '#NAME?' }]]);
  });

  test('a blank row of a column gives an empty text', async () => {
    expect(await answer('=SWEEP.STOPDIFF(8,A1:A3)', [[16], [null], [8]])).toEqual([[2], [''], [0]]);
  });

  test('an empty cell and an argument left out are both blank', async () => {
    const built = [[16]];
    expect(await answer('=SWEEP.POPSFORTARGET(16,45,1,,,,)')).toEqual(built);
    expect(await answer('=SWEEP.POPSFORTARGET(16,45,1,A1)')).toEqual(built);
    expect(await answer('=SWEEP.POPSFORTARGET(16,45,1)')).toEqual(built);
    expect(await answer('=SWEEP.POPSFORTARGET(16,45,,,,,0.1)')).toEqual(
      await answer('=SWEEP.POPSFORTARGET(16,45,0,,,,0.1)'),
    );
    expect(await answer('=SWEEP.POPSFORTARGET(16,45,B1,,,,0.1)')).toEqual(
      await answer('=SWEEP.POPSFORTARGET(16,45,0,,,,0.1)'),
    );
  });

  test('a column against a row spills over the full grid', async () => {
    expect(await answer('=SWEEP.STOPDIFF({4;8},{8,16})')).toEqual([
      [2, 4],
      [0, 2],
    ]);
  });

  test('ranges, whole columns and array constants are lists', async () => {
    const shares = [[expect.closeTo(4 / 7, 12)], [expect.closeTo(2 / 7, 12)], [expect.closeTo(1 / 7, 12)]];
    expect(await answer('=SWEEP.LIGHTSHARE({16;11;8})')).toEqual(shares);
    expect(await answer('=SWEEP.LIGHTSHARE(A1:A3)', [[16], [11], [8]])).toEqual(shares);
    expect(await answer('=SWEEP.LIGHTSUM(A:A)', [[8], [8]])).toEqual(await answer('=SWEEP.LIGHTSUM(8,8)'));
  });

  test('a list says #SPILL! rather than overwrite', async () => {
    const book = await calculated({
      Data: [
        [16, '=SWEEP.LIGHTSHARE(A1:A3)'],
        [11, 'kept'],
        [8, null],
      ],
    });
    expect(book.read('Data', 'B1:B3')).toEqual([[{ error: '#SPILL!' }], ['kept'], [null]]);
    book.dispose();
  });

  test('names are read in any case', async () => {
    expect(await answer('=sweep.stopdiff(8,16)')).toEqual([[2]]);
  });

  test('they work within native functions, and these within them', async () => {
    expect(await answer('=IFERROR(SWEEP.STOPDIFF(-1,2),"bad")')).toEqual([['bad']]);
    expect(await answer('=MAP({4;8},LAMBDA(x,SWEEP.STOPDIFF(x,16)))')).toEqual([[4], [2]]);
    expect(await answer('=LET(s,SWEEP.STOPDIFF(8,{8;16}),INDEX(s,2))')).toEqual([[2]]);
    expect(await answer('=SUM(SWEEP.STOPDIFF(FILTER(A1:A3,A1:A3<16),16))', [[4], [8], [16]])).toEqual([[6]]);
    expect(await answer('=IF(SWEEP.STOPDIFF(8,16)=2,"two","")')).toEqual([['two']]);
  });

  test('a failure is forgotten when its cell is calculated anew without one', async () => {
    const book = await calculated({
      Data: [
        [-1, '=SWEEP.STOPDIFF(A1,11)', '=SWEEP.STOPDIFF(8,D1:D2)', -2],
        [null, null, null, 8],
      ],
    });
    const sheet = book.workbook.getSheetByName('Data');
    const sentence = (name: string, value: number) => ({
      error: '#NUM!',
      message: `${name} must be above 0, not ${value}.`,
    });
    expect(book.read('Data', 'B1:C2')).toEqual([
      [sentence('from', -1), sentence('to', -2)],
      [null, 0],
    ]);
    sheet?.getRange('A1').setValue(-3);
    sheet?.getRange('D1:D2').setValues([[8], [-4]]);
    await book.calculate();
    expect(book.read('Data', 'B1:C2')).toEqual([
      [sentence('from', -3), 0],
      [null, sentence('to', -4)],
    ]);
    // The same error without a sentence: nothing of the old one is left.
    sheet?.getRange('A1').setValue({ f: '=SQRT(-1)' });
    sheet?.getRange('D1:D2').setValues([[8], [8]]);
    await book.calculate();
    expect(book.read('Data', 'B1:C2')).toEqual([
      [{ error: '#NUM!' }, 0],
      [null, 0],
    ]);
    book.dispose();
  });

  test('two workbooks at once do not hear of each other', async () => {
    const [one, other] = [
      headless(snapshot({ Data: [['=SWEEP.STOPDIFF(-1,11)']] })),
      headless(snapshot({ Data: [['=SQRT(-1)']] })),
    ];
    await Promise.all([one.calculate(), other.calculate()]);
    expect(one.read('Data', 'A1')).toEqual([[{ error: '#NUM!', message: 'from must be above 0, not -1.' }]]);
    expect(other.read('Data', 'A1')).toEqual([[{ error: '#NUM!' }]]);
    one.dispose();
    other.dispose();
  });

  test('autocompletion and argument help know every function and argument', () => {
    const all = descriptions();
    const infos = all.slice(0, CATALOGUE.length);
    expect(infos.map((info) => info.functionName)).toEqual(CATALOGUE.map(functionName));
    infos.forEach((info, i) => {
      const args = CATALOGUE[i]?.args as readonly Arg[];
      expect(info.functionParameter.map(({ name, require }) => [name, require === 1])).toEqual(
        args.map(({ name, optional }) => [name, !optional]),
      );
      for (const { detail } of info.functionParameter) expect(detail).toMatch(/\S/);
    });
    const plain = all.slice(CATALOGUE.length);
    expect(plain.map((info) => info.functionName)).toEqual(PLAIN_FUNCTIONS.map(({ name }) => name));
    const round = plain.find((info) => info.functionName === 'ROUND');
    expect(round?.functionParameter.map(({ name, example }) => [name, example])).toEqual([
      ['number', 'B2'],
      ['digits', '2'],
    ]);
  });
});
