import { describe, expect, test } from 'vitest';
import { headless } from '../../../src/engine/headless';
import { answers, calculated, snapshot, type TestCell } from '../book';

/**
 * What formulas mean follows Microsoft's "Calculation operators and precedence in Excel" (references first, then the sign in
 * front, %, ^, * and /, + and -, &, comparisons; alike signs from left to right), its pages on LET, LAMBDA, structured
 * references and the @ sign. The figures are worked by hand.
 */
const DATA: TestCell[][] = [
  [1, 10, 'x', true],
  [2, 20, '5', false],
  [3, 30, 'x', null],
];

async function each(formulas: readonly string[], data: readonly (readonly TestCell[])[] = DATA) {
  const { book, answer } = await answers(formulas, data);
  const given = formulas.map((_, i) => answer(i));
  book.dispose();
  return given.map((rows) => (rows.length === 1 && rows[0]?.length === 1 ? rows[0][0] : rows));
}
type Case = readonly [formula: string, answer: unknown];
const meets = async (cases: readonly Case[]) => {
  const given = await each(cases.map(([formula]) => formula));
  expect(given.map((answer, i) => [cases[i]?.[0], answer])).toEqual(cases.map((one) => [...one]));
};

describe('formulas are read as every spreadsheet reads them', () => {
  test('a minus in front of whatever gives a value', () =>
    meets([
      ['=-"5"', -5],
      ['=-TRUE', -1],
      ['=-D1', -1],
      ['=-C2', -5],
      ['=-{1,2}', [[-1, -2]]],
      ['=LET(a,2,-a)', -2],
      ['=LET(a,2,3*-a)', -6],
      ['=SUM(-A1:A3)', -6],
      ['=-(A1+A2)', -3],
      ['=--C2', 5],
      ['=-SUM(A1:A3)%', -0.06],
      ['=+C1', 'x'],
    ]));

  test('a sign in front of a brace', () =>
    meets([
      ['=1+{1,2}', [[2, 3]]],
      ['=SUM(2*{1;2;3})', 12],
      ['=2^{1,2,3}', [[2, 4, 8]]],
      ['=A1:A3*{1;10;100}', [[1], [20], [300]]],
      ['=1={1,2}', [[true, false]]],
      ['="a"&{"b","c"}', [['ab', 'ac']]],
    ]));

  test('powers, percents and signs in a row', () =>
    meets([
      ['="2"^"3"', 8],
      ['=2^C2', 32],
      ['=5%%', 0.0005],
      ['=200%^2', 4],
      ['=4^50%*3', 6],
      ['=2^--2', 4],
      ['=2^-1', 0.5],
      ['=2*--3', 6],
      ['=2--3', 5],
      ['=2+-+3', -1],
      ['=-2^2', 4],
      ['=2^3^2', 64],
      ['=10-4-3', 3],
      ['=1-2*3^100%', -5],
      ['=1+2&3+4', '37'],
      ['=1&2=12', false],
    ]));

  test('references in pieces', () =>
    meets([
      ['=SUM((A1,B2))', 21],
      ['=SUM((A1:A3,B1:B2),100)', 136],
      ['=LARGE((A1:A3,B1),2)', 3],
      ['=SMALL((A1:A3,B1),1)', 1],
      ['=INDEX((A1:A3,B1:B3),2,1,2)', 20],
      ['=AREAS((A1:A3,B1,B2))', 3],
      ['=A1:B2 B2:C3', 20],
      ['=SUM(A1:B3 A2:B2)', 22],
      ['=SUM(A:A 2:2)', 2],
      ['=A1 B1', { error: '#NULL!' }],
      ['=SUM(A1:A2:B3)', 66],
      ['=SUM(A:B:B)', 66],
      ['=SUM(A1:INDEX(B1:B3,2))', 33],
      ['=SUM(INDEX(A1:A3,2):A3)', 5],
      ['=SUM (A1:A3)', 6],
      ['=COUNTIF((A1,B1),1)', expect.objectContaining({ error: '#VALUE!' })],
    ]));

  test('names of LET and LAMBDA, one in the other', () =>
    meets([
      ['=LET(a,1,LET(b,2,a+b))', 3],
      ['=LET(a,1,b,LET(c,a+1,c*10),a+b)', 21],
      ['=LET(a,1,LET(a,5,a)+a)', 6],
      ['=LET(X,1,x)', 1],
      ['=LET(f,LAMBDA(x,x+1),f(2))', 3],
      ['=LET(k,10,f,LAMBDA(x,x*k),LET(k,3,f(2)+k))', 23],
      ['=LAMBDA(x,LAMBDA(y,x+y)(3))(4)', 7],
      ['=LAMBDA(f,f(2)*f(3))(LAMBDA(n,n+1))', 12],
      ['=LET(k,2,SUM(MAP(A1:A3,LAMBDA(x,x*k))))', 12],
      ['=SUM(MAP(A1:A3,LAMBDA(x,LET(y,x*2,y+1))))', 15],
      ['=LET(f,LAMBDA(x,x*2),MAP(A1:A3,f))', [[2], [4], [6]]],
      ['=LET(r,A1:A3,SUM(r)/ROWS(r))', 2],
      ['=LET(r,A1:A3,SUM(OFFSET(r,0,1)))', 60],
      ['=LET(r,A1,SUM(r:A3))', 6],
      ['=LET(n,RANDBETWEEN(1,1000000),n-n)', 0],
      ['=LET(a,1)', expect.objectContaining({ error: '#VALUE!' })],
      ['=LET(A1,1,A1)', expect.objectContaining({ error: '#NAME?' })],
      ['=LAMBDA(x,x)(1,2)', expect.objectContaining({ error: '#VALUE!' })],
    ]));

  test('a LAMBDA that would never end is refused', async () => {
    const [omega, beside] = await each(['=LAMBDA(f,f(f))(LAMBDA(f,f(f)))', '=1+1']);
    expect(omega).toEqual({ error: '#VALUE!', message: expect.stringContaining('without end') });
    expect(beside).toBe(2);
  });

  test('texts, with line breaks and quotation marks', () =>
    meets([
      ['="a\nb"', 'a\nb'],
      ['=LEN("a\r\nb")', 4],
      ['="6"" dish"', '6" dish'],
      ['=LEN("""")', 1],
      ['=IF(A1=1,"f/8, ""open""","")', 'f/8, "open"'],
      ['="("&A1&")"', '(1)'],
      ['="{"&A1', '{1'],
    ]));

  test('what is left out, and line breaks between', () =>
    meets([
      ['=IF(A1=2,1,)+1', 1],
      ['=IF(TRUE,,5)+1', 1],
      ['=SUM(\n  A1,\n  A2\n)', 3],
      ['= A1 + A2 ', 3],
      ['=PI()', Math.PI],
    ]));

  test('the @ sign and a spill', () =>
    meets([
      ['=@A1:A3', expect.objectContaining({ error: '#VALUE!' })],
      ['=@{7,8}', 7],
      ['=@SUM(A1:A3)', 6],
      ['=@A2', 2],
    ]));

  test('what is no formula says so', async () => {
    const broken = [
      '=1+',
      '=(1',
      '=1)',
      '=SUM(1;2)',
      '=1,5*2',
      '="a',
      '=A1 5',
      "='a",
      '=*2',
      '={1,2',
      '=1..2',
      '=SUM(,',
    ];
    const given = await each([...broken, '=A1']);
    expect(given.at(-1)).toBe(1);
    for (const answer of given.slice(0, -1))
      expect(answer).toEqual({ error: expect.stringMatching(/^#/), message: expect.stringMatching(/\w/) });
  });

  test('semicolons between arguments and commas in numbers are named', async () => {
    const [semicolon, ...commas] = await each(['=SUM(1;2)', '=1,5*2', '=1,5', '=SUM((1,5))', '=A1,5']);
    expect(semicolon).toEqual({
      error: '#VALUE!',
      message: expect.stringMatching(/semicolon.*write a comma/),
    });
    for (const comma of commas)
      expect(comma).toEqual({
        error: '#VALUE!',
        message: expect.stringMatching(/^A comma .*a point in numbers/),
      });
  });

  test('long sums are calculated, and what is too long or too deep is refused in words', async () => {
    const nested = (depth: number) => `=${'('.repeat(depth)}1${')'.repeat(depth)}`;
    const sum = `=${Array.from({ length: 4000 }, () => '1').join('+')}`;
    const [long, deep, deeper, longer] = await each([
      sum,
      nested(200),
      nested(3000),
      `${sum}${'+1'.repeat(200)}`,
    ]);
    expect([long, deep]).toEqual([4000, 1]);
    expect(deeper).toEqual({ error: '#VALUE!', message: expect.stringContaining('too many brackets') });
    expect(longer).toEqual({ error: '#VALUE!', message: expect.stringContaining('8,192') });
  });
});

describe('names of the workbook', () => {
  test('stand for one value, whatever is done with them', async () => {
    const book = headless(
      snapshot({
        Data: [
          ['=Fee*2', '=-Fee', '=SUM(Both)', '=TWICE(Fee)', '=LET(Fee,1,Fee)', '=Nested+1'],
          [4, 5],
        ],
      }),
    );
    book.workbook.insertDefinedName('Fee', '=1+2');
    book.workbook.insertDefinedName('Both', 'Data!$A$2,Data!$B$2');
    book.workbook.insertDefinedName('TWICE', '=LAMBDA(x,x*2)');
    book.workbook.insertDefinedName('Nested', '=Fee*10');
    await book.calculate();
    expect(book.read('Data', 'A1:F1')).toEqual([[6, -3, 9, 6, 1, 31]]);
    book.dispose();
  });

  test('that go round in a circle are refused', async () => {
    const book = headless(snapshot({ Data: [['=One', '=FACTORIAL(3)', 7]] }));
    book.workbook.insertDefinedName('One', '=Two+1');
    book.workbook.insertDefinedName('Two', '=One+1');
    book.workbook.insertDefinedName('FACTORIAL', '=LAMBDA(n,IF(n<2,1,n*FACTORIAL(n-1)))');
    await book.calculate();
    const refused = { error: '#VALUE!', message: expect.stringContaining('without end') };
    expect(book.read('Data', 'A1:C1')).toEqual([[refused, refused, 7]]);
    book.dispose();
  });

  test('follow when they change', async () => {
    const book = headless(snapshot({ Data: [['=Fee*2', '=Later+1']] }));
    const fee = book.workbook.insertDefinedName('Fee', '=3').getDefinedName('Fee');
    await book.calculate();
    expect(book.read('Data', 'A1')).toEqual([[6]]);
    fee?.setFormula('4');
    book.workbook.insertDefinedName('Later', '=5');
    await book.calculate();
    expect(book.read('Data', 'A1:B1')).toEqual([[8, 6]]);
    book.dispose();
  });
});

test('a row of a table is named by @', async () => {
  const book = headless(
    snapshot({
      Data: [
        ['Qty', 'Unit price', 'Sum'],
        [2, 10, '=Kit[@Qty]*Kit[@[Unit price]]'],
        [3, 20, '=SUM(Kit[@])'],
        [null, null, null],
        ['=SUM(Kit[Qty])', '=ROWS(Kit[#All])'],
      ],
    }),
  );
  await book.workbook.addTable(
    'Data',
    'Kit',
    { startRow: 0, endRow: 2, startColumn: 0, endColumn: 1 },
    'kit',
  );
  await book.calculate();
  expect(book.read('Data', 'C2:C3')).toEqual([[20], [23]]);
  expect(book.read('Data', 'A5:B5')).toEqual([[5, 3]]);
  book.dispose();
});

test('columns without their table are refused in words', async () => {
  const [refused] = await each(['=[@Qty]*2']);
  expect(refused).toEqual({
    error: '#NAME?',
    message: expect.stringContaining('in front of it, as in Kit[@Qty]'),
  });
});

test('functions that the grid lacks say so, and those that nobody knows do not', async () => {
  const lacking = [
    'REGEXTEST',
    'GROUPBY',
    'PIVOTBY',
    'PERCENTOF',
    'TRIMRANGE',
    'ISOMITTED',
    'ISO.CEILING',
    'GETPIVOTDATA',
  ];
  const book = await calculated({
    Data: [lacking.map((name) => `=${name}(1,2)`), ['=NOSUCH(1)', '=IFERROR(REGEXTEST("a","b"),7)']],
  });
  expect(book.read('Data', 'A1:H1')).toEqual([
    lacking.map((name) => ({ error: '#NAME?', message: expect.stringContaining(`no function ${name}.`) })),
  ]);
  expect(book.read('Data', 'A2:B2')).toEqual([[{ error: '#NAME?' }, 7]]);
  book.dispose();
});
