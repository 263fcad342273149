import { AstTreeBuilder, LexerNode } from '@univerjs/engine-formula';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { BaseFunction } from '@univerjs/engine-formula';
import { native } from '../../src/engine/mends/nativeFunction';
import { NATIVE_FAMILIES } from '../../src/engine/natives';
import { headless } from '../../src/engine/headless';
import { drawn } from '../full';
import { answers, calculated, snapshot, type TestCell } from './book';

const DATA: TestCell[][] = [
  [1, 10, 'x', 3],
  [2, 20, 'y', 1],
  [3, 30, 'x', 5],
  [4, 40, 'y', 4],
  [5, 50, 'x', 2],
];

/** All that formulas give, each as rows of cells. */
async function all(formulas: readonly string[], data: readonly (readonly TestCell[])[] = DATA) {
  const { book, answer } = await answers(formulas, data);
  const given = formulas.map((_, i) => answer(i));
  book.dispose();
  return given;
}
/** The same for formulas of one cell each. */
const each = async (formulas: readonly string[], data?: readonly (readonly TestCell[])[]) =>
  (await all(formulas, data)).map((rows) => rows[0]?.[0]);

describe('the mended engine', () => {
  // The engine and its patches tell the console about formulas they cannot read.
  beforeEach(() => {
    vi.spyOn(console, 'warn').mockImplementation(() => {});
    vi.spyOn(console, 'error').mockImplementation(() => {});
  });
  afterEach(() => vi.restoreAllMocks());

  test('SORT leaves the cells that it sorts as they are', async () => {
    const sum = '=SUMPRODUCT(A1:A5,D1:D5)';
    expect(await each([sum, '=SUM(SORT(D1:D5,1,-1))', sum])).toEqual([46, 15, 46]);
  });

  test('a function that throws spoils its own cell only', async () => {
    vi.spyOn(native('GCD').prototype as BaseFunction, 'calculate').mockImplementation(() => {
      throw new Error('of its own');
    });
    expect(await each(['=GCD(A1:A5)', '=SUM(A1:A5)'])).toEqual([{ error: '#VALUE!' }, 15]);
    expect(console.warn).toHaveBeenCalled();
  });

  test('pieces of a formula that the parser throws at make a name that nobody knows', () => {
    const tokens: string[] = [];
    const parser = {
      _parse(piece: LexerNode) {
        tokens.push(piece.getToken());
        if (tokens.length === 1) throw new Error('no tree');
      },
    };
    AstTreeBuilder.prototype.parse.call(parser as unknown as AstTreeBuilder, new LexerNode());
    expect(tokens).toEqual(['R_1', 'UNREADABLE']);
    expect(console.warn).toHaveBeenCalled();
  });

  describe('spill references', () => {
    const SPILL: TestCell[][] = [['=SEQUENCE(3)', 7]];

    test('stand for all that a formula gives', async () => {
      expect(
        await all(['=A1#', '=A1#*2', '=SUM(A1#)', '=INDEX(A1#,2)', '=SUM(SWEEP.STOPDIFF(1,2^A1#))'], SPILL),
      ).toEqual([[[1], [2], [3]], [[2], [4], [6]], [[6]], [[2]], [[12]]]);
    });

    test('work from another sheet, by its plain and its quoted name', async () => {
      const book = await calculated({
        Data: SPILL,
        Sums: [['=SUM(Data!A1#)', "=SUM('Data'!$A$1#)", null, '=Data!A1#']],
      });
      expect(book.read('Sums', 'A1:B1')).toEqual([[6, 6]]);
      expect(book.answer('Sums', 'D1')).toEqual([[1], [2], [3]]);
      book.dispose();
    });

    test('work from a sheet whose name has signs of its own', async () => {
      const book = await calculated({ "Jo's (2) Größe": SPILL, Sums: [["='Jo''s (2) Größe'!A1#"]] });
      expect(book.answer('Sums', 'A1')).toEqual([[1], [2], [3]]);
      book.dispose();
    });

    test('follow a spill that grows', async () => {
      const book = await calculated({ Data: [[2, '=SEQUENCE(A1)', '=SUM(B1#)']] });
      expect(book.read('Data', 'C1')).toEqual([[3]]);
      book.workbook.getSheetByName('Data')?.getRange('A1').setValue(4);
      await book.calculate();
      expect(book.read('Data', 'C1')).toEqual([[10]]);
      book.dispose();
    });

    test('are #REF! on a cell that does not spill', async () => {
      expect(await each(['=SUM(B1#)'], SPILL)).toEqual([{ error: '#REF!' }]);
    });
  });

  test('a text in quotes is a text, also where it looks like a date, a time or two cells', async () => {
    const times: TestCell[][] = [
      ['1/4', 1],
      ['1:2', 2],
    ];
    const texts = [
      '=IF(TRUE,"1/4","")',
      '=CONCAT("1/4","x")',
      '=ISTEXT("1:2")',
      '=XLOOKUP("1:2",A1:A2,B1:B2)',
    ];
    expect(await each([...texts, '="say ""f/8"""', '="1:30"+0'], times)).toEqual([
      '1/4',
      '1/4x',
      true,
      2,
      'say "f/8"',
      0.0625,
    ]);
    expect(await all(['={"1/4";"a,b";"c;d"}', '={"},{";#N/A;-2}', '={"a,b",1;TRUE,2}'])).toEqual([
      [['1/4'], ['a,b'], ['c;d']],
      [['},{'], [{ error: '#N/A' }], [-2]],
      [
        ['a,b', 1],
        [true, 2],
      ],
    ]);
  });

  test('a text of no signs that a formula gives is a text, in its own cell and where it spills', async () => {
    const data: TestCell[][] = [['=""', 1, '=IF({1;0;1}=1,"",7)'], [null], [null], [null]];
    expect(
      await each(
        ['=ISTEXT(A1)', '=ISBLANK(A1)', '=COUNTA(A1:C3)', '=ISTEXT(C1)', '=ISTEXT(C3)', '=A1', '=LEN(A1)'],
        data,
      ),
    ).toEqual([true, false, 5, true, true, '', 0]);
    expect(await each(['=ISBLANK(A2)', '=COUNTA(A2:B3)', '=SUM(A1:C3)'], data)).toEqual([true, 0, 8]);
  });

  test('a truth differs from every text and number', async () => {
    const data: TestCell[][] = [[true, '', 1]];
    const differing = [
      '=A1<>""',
      '=A1<>B1',
      '=A1<>C1',
      '=B1<>A1',
      '=TRUE<>"TRUE"',
      '=1<>TRUE',
      '=TRUE<>FALSE',
    ];
    expect(await each(differing, data)).toEqual(differing.map(() => true));
    expect(await each(['=TRUE<>TRUE', '=TRUE=1', '=A1=""', '=TRUE<>(1=1)'], data)).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });

  test('an emptied cell is none', async () => {
    const book = await calculated({ Data: [['x', '=ISBLANK(A1)', '=COUNTA(A1)']] });
    book.workbook.getSheetByName('Data')?.getRange('A1').setValue('');
    await book.calculate();
    expect(book.read('Data', 'B1:C1')).toEqual([[true, 0]]);
    book.dispose();
  });

  test('numbers of an array constant are numbers, however they are spelt', async () => {
    expect(await all(['={.5;+2;5.;1E1}', '=SUM({.5;1})'])).toEqual([[[0.5], [2], [5], [10]], [[1.5]]]);
  });

  test('a comparison gives the same the second time: 0 is no empty text, nor a text a number', async () => {
    const data: TestCell[][] = [[0], ['=""'], [5], [null], ['x']];
    const thrice = async (formula: string) => each([formula, formula, formula], data);
    expect(await thrice('=A1=""')).toEqual([false, false, false]);
    expect(await thrice('=A1=0')).toEqual([true, true, true]);
    expect(await thrice('=A2=""')).toEqual([true, true, true]);
    expect(await thrice('=A4=""')).toEqual([true, true, true]);
    expect(await thrice('=A4=0')).toEqual([true, true, true]);
    // A text is more than any number.
    expect(await thrice('=A5>A3')).toEqual([true, true, true]);
    expect(await thrice('=SUMPRODUCT((A1:A5="")*1)')).toEqual([2, 2, 2]);
    expect(await thrice('=SUMPRODUCT((A1:A5=5)*1)')).toEqual([1, 1, 1]);
  });

  test('lookups find what is calculated, also after it has changed', async () => {
    const rows: TestCell[][] = Array.from({ length: 300 }, (_, i) => [i + 1, `=A${i + 1}*10`, null]);
    rows[0] = [
      1,
      '=A1*10',
      '=MATCH(2500,B1:B300,0)',
      '=XLOOKUP(5,A1:A300,B1:B300)',
      '=COUNTIF(B1:B300,2500)',
    ];
    const book = await calculated({ Data: rows });
    expect(book.read('Data', 'C1:E1')).toEqual([[250, 50, 1]]);
    book.workbook.getSheetByName('Data')?.getRange('A7').setValue(250);
    await book.calculate();
    expect(book.read('Data', 'C1:E1')).toEqual([[7, 50, 2]]);
    book.dispose();
  });

  describe('no native function changes the cells that it reads', () => {
    const NUMBERS = 'D1:D5';
    const TABLE = 'A1:D5';
    const ARGUMENTS = [
      NUMBERS,
      `${NUMBERS},1`,
      `${NUMBERS},1,-1`,
      `${NUMBERS},${NUMBERS}`,
      `${NUMBERS},-1`,
      `2,${NUMBERS}`,
      `${NUMBERS},1,1`,
      `${NUMBERS},,`,
      TABLE,
      `${TABLE},4,-1`,
      `${TABLE},2`,
      `A1:A5,${NUMBERS}`,
      `A1:A5,${NUMBERS},-1`,
      `${NUMBERS},">2"`,
      `3,${NUMBERS},A1:A5`,
      `",",TRUE,${NUMBERS}`,
      `${NUMBERS},LAMBDA(x,x+1)`,
    ];
    const PROBES = [
      `=SUMPRODUCT(${NUMBERS},{1;2;3;4;5})`,
      `=TEXTJOIN("|",FALSE,${TABLE})`,
      '=SUMPRODUCT(A1:A5,{1;2;3;4;5})',
    ];
    // By hand: 3·1 + 1·2 + 5·3 + 4·4 + 2·5, the cells row by row, and 1² + 2² + 3² + 4² + 5².
    const UNCHANGED = [46, '1|10|x|3|2|20|y|1|3|30|x|5|4|40|y|4|5|50|x|2', 55];

    test.each(drawn(Object.entries(NATIVE_FAMILIES)))('%s', async (_, family) => {
      const names = family.map(([, name]) => String(name));
      expect(names.length).toBeGreaterThan(0);
      // The probes stand behind every function, in the order in which the engine calculates.
      const formulas = names.flatMap((name) => [...ARGUMENTS.map((args) => `=${name}(${args})`), ...PROBES]);
      const given = await each(formulas);
      const changed = names.filter((_name, i) => {
        const start = i * (ARGUMENTS.length + PROBES.length) + ARGUMENTS.length;
        return JSON.stringify(given.slice(start, start + PROBES.length)) !== JSON.stringify(UNCHANGED);
      });
      expect(changed).toEqual([]);
    });
  });
});

test('a table may have an underscore or a dot in its name', async () => {
  const book = headless(
    snapshot({
      Data: [['Reading', 'Share'], [8], [11], [16], ['=SUM(Lights_2[Reading])', '=ROWS(Lights.b[Share])']],
    }),
  );
  const column = (c: number) => ({ startRow: 0, endRow: 3, startColumn: c, endColumn: c });
  await book.workbook.addTable('Data', 'Lights_2', column(0), 'one');
  await book.workbook.addTable('Data', 'Lights.b', column(1), 'two');
  await book.calculate();
  expect(book.read('Data', 'A5:B5')).toEqual([[35, 3]]);
  book.dispose();
});

test('what is found in a table of another sheet is read there', async () => {
  const book = headless(
    snapshot({
      Data: [['Reading'], [8], [11], [16]],
      Other: [['=INDEX(Lights[Reading],2)', '=SUM(OFFSET(Lights[Reading],1,0))'], [1], [2], [3]],
    }),
  );
  const place = { startRow: 0, endRow: 3, startColumn: 0, endColumn: 0 };
  await book.workbook.addTable('Data', 'Lights', place, 'one');
  await book.calculate();
  // The second reading; and the two that remain one row further down, 11 + 16.
  expect(book.read('Other', 'A1:B1')).toEqual([[11, 27]]);
  book.dispose();
});
