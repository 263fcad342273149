import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { headless, type EngineValue } from '../../src/engine/headless';
import { snapshot, type TestCell } from './book';

/**
 * The spreadsheet functions that templates and users rely on. Expected values follow Excel's published description of
 * each function and the arithmetic of the few numbers below; none was copied from the engine.
 */
//            A  B   C    D  E     F              G     H
const DATA: TestCell[][] = [
  [1, 10, 'x', 3, null, '=SEQUENCE(3)', null, '=A1+10'],
  [2, 20, 'y', 1, null, null, null, '=A2+10'],
  [3, 30, 'x', 5, null, null, null, '=A3+10'],
  [4, 40, 'y', 4, null, null, null, '=A4+10'],
  [5, 50, 'x', 2, null, null, null, '=A5+10'],
];
const NA = { error: '#N/A' };

const FORMULAS: readonly (readonly [string, unknown])[] = [
  ['=SUM(A1:A5)', 15],
  ['=SUMPRODUCT(A1:A5,B1:B5)', 550],
  ['=SUMPRODUCT((A1:A5>2)*B1:B5)', 120],
  ['=SUMPRODUCT(--(C1:C5="x"),B1:B5)', 90],
  ['=IF(A1=1,"y","n")', 'y'],
  ['=IF(A1:A3>1,"y","n")', [['n'], ['y'], ['y']]],
  ['=IFERROR(1/0,"e")', 'e'],
  ['=IFNA(NA(),"na")', 'na'],
  ['=IFS(A1>3,"a",A1>0,"b")', 'b'],
  ['=SWITCH(A2,1,"one",2,"two","?")', 'two'],
  ['=XLOOKUP(3,A1:A5,B1:B5)', 30],
  ['=XLOOKUP(9,A1:A5,B1:B5,"none")', 'none'],
  ['=XLOOKUP(3.5,A1:A5,B1:B5,,-1)', 30],
  ['=XLOOKUP("x",C1:C5,A1:A5,,0,-1)', 5],
  ['=XLOOKUP(2,A1:A5,A1:C5)', [[2, 20, 'y']]],
  ['=XMATCH(4,A1:A5)', 4],
  ['=INDEX(B1:B5,MATCH(4,A1:A5,0))', 40],
  ['=INDEX(A1:C5,2,0)', [[2, 20, 'y']]],
  ['=MATCH(3.2,A1:A5,1)', 3],
  ['=VLOOKUP(3,A1:C5,3,FALSE)', 'x'],
  ['=VLOOKUP(3.5,A1:B5,2)', 30],
  ['=VLOOKUP(9,A1:B5,2,FALSE)', NA],
  ['=LET(a,A1,b,a+1,a+b)', 3],
  ['=LET(r,A1:A5,SUM(r)/ROWS(r))', 3],
  ['=LAMBDA(x,x*2)(4)', 8],
  ['=MAP(A1:A3,LAMBDA(x,x*x))', [[1], [4], [9]]],
  ['=REDUCE(0,A1:A5,LAMBDA(a,x,a+x))', 15],
  ['=SCAN(0,A1:A3,LAMBDA(a,x,a+x))', [[1], [3], [6]]],
  ['=BYROW(A1:B2,LAMBDA(r,SUM(r)))', [[11], [22]]],
  ['=BYCOL(A1:B2,LAMBDA(r,SUM(r)))', [[3, 30]]],
  [
    '=MAKEARRAY(2,2,LAMBDA(r,c,r*c))',
    [
      [1, 2],
      [2, 4],
    ],
  ],
  [
    '=FILTER(A1:B5,C1:C5="x")',
    [
      [1, 10],
      [3, 30],
      [5, 50],
    ],
  ],
  ['=FILTER(A1:A5,A1:A5>9,"none")', 'none'],
  ['=SORT(D1:D5)', [[1], [2], [3], [4], [5]]],
  ['=SORT(D1:D5,1,-1)', [[5], [4], [3], [2], [1]]],
  ['=SORTBY(A1:A5,D1:D5)', [[2], [5], [1], [4], [3]]],
  ['=UNIQUE(C1:C5)', [['x'], ['y']]],
  [
    '=SEQUENCE(2,3,1,2)',
    [
      [1, 3, 5],
      [7, 9, 11],
    ],
  ],
  ['=ROUND(2.345,2)', 2.35],
  ['=ROUNDUP(2.341,2)', 2.35],
  ['=ROUNDDOWN(2.349,2)', 2.34],
  ['=MROUND(7,3)', 6],
  ['=CEILING(2.1,0.5)', 2.5],
  ['=CEILING.MATH(-2.1)', -2],
  ['=FLOOR(2.9,0.5)', 2.5],
  ['=TRUNC(-2.7)', -2],
  ['=INT(-2.7)', -3],
  ['=MOD(-1,3)', 2],
  ['=TEXT(0.25,"0%")', '25%'],
  ['=TEXT(1234.5,"#,##0.00")', '1,234.50'],
  ['=TEXT(0.5,"h:mm")', '12:00'],
  ['=TEXT(45000,"yyyy-mm-dd")', '2023-03-15'],
  ['=TEXT(1.5,"+0.0;-0.0;0")', '+1.5'],
  ['=TEXT(0.5,"# ?/?")', ' 1/2'],
  ['=COUNTIF(C1:C5,"x")', 3],
  ['=COUNTIF(A1:A5,">2")', 3],
  ['=COUNTIFS(A1:A5,">1",C1:C5,"x")', 2],
  ['=SUMIFS(B1:B5,C1:C5,"x",A1:A5,">1")', 80],
  ['=SUMIF(C1:C5,"y",B1:B5)', 60],
  ['=AVERAGEIFS(B1:B5,C1:C5,"x")', 30],
  ['=MAXIFS(B1:B5,C1:C5,"y")', 40],
  ['=MINIFS(B1:B5,C1:C5,"y")', 20],
  ['=COUNTA(A1:C5)', 15],
  ['=COUNTBLANK(A1:A7)', 2],
  ['=AVERAGE(A1:A5)', 3],
  ['=MEDIAN(A1:A5)', 3],
  ['=STDEV.S(A1:A5)', Math.sqrt(2.5)],
  ['=PERCENTILE.INC(A1:A5,0.5)', 3],
  ['=LARGE(A1:A5,2)', 4],
  ['=RANK.EQ(4,A1:A5)', 2],
  ['=LOG(8,2)', 3],
  ['=LN(EXP(1))', 1],
  ['=POWER(2,0.5)', Math.SQRT2],
  ['=2^10', 1024],
  ['=SQRT(2)', Math.SQRT2],
  ['=PI()', Math.PI],
  ['=ABS(-1)', 1],
  ['=SIGN(-3)', -1],
  ['=RADIANS(180)', Math.PI],
  ['=ATAN2(1,1)', Math.PI / 4],
  ['=TEXTJOIN(", ",TRUE,C1:C3)', 'x, y, x'],
  ['=CONCAT(C1:C3)', 'xyx'],
  ['="a"&1', 'a1'],
  ['=LEFT("abc",2)', 'ab'],
  ['=MID("abc",2,1)', 'b'],
  ['=SUBSTITUTE("1/60","/","-")', '1-60'],
  ['=VALUE("1.5")', 1.5],
  ['=FIND("b","abc")', 2],
  ['=LEN("abc")', 3],
  ['=UPPER("a")', 'A'],
  ['=TEXTBEFORE("a/b","/")', 'a'],
  ['=TEXTAFTER("a/b","/")', 'b'],
  ['=TEXTSPLIT("a,b",",")', [['a', 'b']]],
  ['=REPT("x",3)', 'xxx'],
  ['=FIXED(1.25,1)', '1.3'],
  ['=NUMBERVALUE("1,5",",")', 1.5],
  ['=VSTACK(A1:A2,B1:B2)', [[1], [2], [10], [20]]],
  [
    '=HSTACK(A1:A2,B1:B2)',
    [
      [1, 10],
      [2, 20],
    ],
  ],
  ['=TAKE(A1:A5,2)', [[1], [2]]],
  ['=DROP(A1:A5,3)', [[4], [5]]],
  ['=CHOOSECOLS(A1:C2,2)', [[10], [20]]],
  ['=CHOOSEROWS(A1:A5,-1)', 5],
  ['=TOCOL(A1:B2)', [[1], [10], [2], [20]]],
  ['=TOROW(A1:A2)', [[1, 2]]],
  ['=EXPAND(A1:A2,3,1,0)', [[1], [2], [0]]],
  [
    '=WRAPROWS(A1:A4,2)',
    [
      [1, 2],
      [3, 4],
    ],
  ],
  ['=TRANSPOSE(A1:A3)', [[1, 2, 3]]],
  [
    '=MMULT(A1:B2,A1:B2)',
    [
      [21, 210],
      [42, 420],
    ],
  ],
  ['=SUM({1,2;3,4})', 10],
  [
    '={1,2;3,4}',
    [
      [1, 2],
      [3, 4],
    ],
  ],
  ['=SUM(A:A)', 15],
  ['=SUM(1:1)', 1 + 10 + 3 + 1 + 11],
  ['=A1:A3*2', [[2], [4], [6]]],
  [
    '=A1:A2+TRANSPOSE(A1:A2)',
    [
      [2, 3],
      [3, 4],
    ],
  ],
  ['=OFFSET(A1,1,1)', 20],
  ['=SUM(OFFSET(A1,0,0,3,1))', 6],
  ['=INDIRECT("B2")', 20],
  ['=ADDRESS(1,2)', '$B$1'],
  ['=ROW(A3)', 3],
  ['=COLUMN(B1)', 2],
  ['=ROWS(A1:A5)', 5],
  ['=CHOOSE(2,"a","b")', 'b'],
  ['=AGGREGATE(9,6,A1:A5)', 15],
  ['=SUBTOTAL(109,A1:A5)', 15],
  ['=ISNUMBER(A1)', true],
  ['=ISBLANK(A9)', true],
  ['=ISTEXT(C1)', true],
  ['=ISERROR(1/0)', true],
  ['=ERROR.TYPE(1/0)', 2],
  ['=NA()', NA],
  ['=1/0', { error: '#DIV/0!' }],
  ['=NOSUCHNAME', { error: '#NAME?' }],
  ['=AND(TRUE,A1=1)', true],
  ['=OR(A1=2,A1=1)', true],
  ['=NOT(TRUE)', false],
  ['=XOR(TRUE,TRUE)', false],
  ['=N(TRUE)', 1],
  ['=DATE(2024,2,29)', 45351],
  ['=TIME(12,0,0)', 0.5],
  ['=YEAR(45351)', 2024],
  ['=HOUR(0.5)', 12],
  ['=Other!A1+1', 101],
  ["='My Sheet'!A1", 7],
  ['=SUM(Other!A1:A2)', 300],
  ['=UnitRate*2', 0.5],
  ['=SUM(Block)', 15],
  ['=TWICE(4)', 8],
  ['=SUM(Table1[Qty])', 6],
  ['=SUM(Table1[[Qty]:[Price]])', 66],
  ['=ROWS(Table1)', 3],
  ['=ROWS(Table1[#All])', 4],
  ['=Table1[[#Headers],[Qty]]', 'Qty'],
  ['=XLOOKUP(2,Table1[Qty],Table1[Price])', 20],
  ['=SUMPRODUCT(Table1[Qty],Table1[Price])', 140],
  ['=XLOOKUP(11,H1:H5,A1:A5)', 1],
  ['=MATCH(15,H1:H5,0)', 5],
  ['=COUNTIF(H1:H5,13)', 1],
];

const cellOf = (formula: string): string => `L${9 + 8 * FORMULAS.findIndex(([each]) => each === formula)}`;

/** Numbers to nine places; all else exactly. */
const close = (cell: unknown): unknown => (typeof cell === 'number' ? expect.closeTo(cell, 9) : cell);
const asRows = (wanted: unknown): unknown[][] =>
  Array.isArray(wanted) ? (wanted as unknown[][]).map((row) => row.map(close)) : [[close(wanted)]];

describe('native functions', () => {
  let book: ReturnType<typeof headless>;
  const answer = (formula: string): EngineValue[][] => book.answer('Data', cellOf(formula));

  beforeAll(async () => {
    const rows = [...DATA];
    for (const [formula] of FORMULAS) {
      while (rows.length < Number(cellOf(formula).slice(1)) - 1) rows.push([]);
      rows.push([...Array<null>(11).fill(null), formula]);
    }
    const Table = [
      ['Qty', 'Price'],
      [1, 10],
      [2, 20],
      [3, 30],
    ];
    book = headless(snapshot({ Data: rows, Other: [[100], [200]], 'My Sheet': [[7]], Table }));
    book.workbook.insertDefinedName('UnitRate', '=0.25');
    book.workbook.insertDefinedName('Block', 'Data!$A$1:$A$5');
    book.workbook.insertDefinedName('TWICE', '=LAMBDA(x,x*2)');
    const place = { startRow: 0, endRow: 3, startColumn: 0, endColumn: 1 };
    await book.workbook.addTable('Table', 'Table1', place, 'table-1', {});
    await book.calculate();
  });
  afterAll(() => book.dispose());

  test.each(FORMULAS)('%s', (formula, wanted) => {
    expect(answer(formula)).toEqual(asRows(wanted));
  });

  test('follow an input that changes, in computed columns too', async () => {
    book.workbook.getSheetByName('Data')?.getRange('A1').setValue(6);
    await book.calculate();
    expect(answer('=SUM(A1:A5)')).toEqual([[20]]);
    expect(answer('=XLOOKUP(11,H1:H5,A1:A5)')).toEqual([[NA]]);
    expect(answer('=MATCH(15,H1:H5,0)')).toEqual([[5]]);
    expect(answer('=COUNTIF(H1:H5,13)')).toEqual([[1]]);
    expect(answer('=SORT(D1:D5)')).toEqual([[1], [2], [3], [4], [5]]);
    expect(answer('=A1:A3*2')).toEqual([[12], [4], [6]]);
  });
});
