import { asks, documented, type Family } from '../asked';
import {
  COMPARISONS,
  digits,
  anyNumber,
  numberCell,
  quoted,
  SPELT,
  anyText,
  TEXTS,
  textCell,
  anyTruth,
} from '../expressions';

const AREAS = ['E1:E6', 'A1:A5', 'L1:L5', 'H1:H6', 'A1:A12'];

/** A number in any spelling, where a formula may have one. */
export const spelt: Family = (draw) => {
  const one = draw.pick(SPELT);
  const other = draw.pick(SPELT);
  return asks(
    draw.pick([
      `${numberCell(draw)}${draw.pick(COMPARISONS)}${one}`,
      `${one}&""`,
      `${one}${draw.pick(['+', '-', '*', '<', '>='])}${other}`,
      `SUM({${one.replace('%', '')},${other.replace('%', '')}})`,
      `ISNUMBER(${one})`,
      `COUNTIF(E1:E6,${quoted(draw.pick(['>', '<=', '=', '', '<>']) + one)})`,
      `SUMIF(E1:E6,${quoted(draw.pick(['>', '<']) + one)},M1:M6)`,
      `MATCH(${draw.pick(['5.60', '8.0', '016', '1.1E1', '4.'])},E1:E6,0)`,
      `IF(${numberCell(draw)}>${one},${other},"small")`,
      `ROUND(${one}*${other},2)`,
      `VALUE(${quoted(one)})`,
      `N(${one})`,
      `MAX(${one},${other},1)`,
      `-${one}`,
    ]),
  );
};

/** Three or four operands with any signs between them and no brackets. */
export const precedence: Family = (draw) => {
  const operand = (percent: '' | '%' = '') =>
    draw.pick(['-', '', '', '', '']) +
    (draw.isSo(0.7) ? draw.pick(['2', '3', '5', '.5', '1.50', '10']) : numberCell(draw)) +
    draw.pick(['', '', '', '', percent]);
  const sign = () => draw.pick(['+', '-', '*', '/', '^', '&', '=', '<', '>', '<=', '<>']);
  const last = draw.isSo(0.4) ? draw.pick(['+', '*', '&', '>']) + operand('%') : '';
  const chain = `${operand()}${sign()}${operand()}${sign()}${draw.pick(['2', '3', '-1', '.5'])}${last}`;
  // powers of small numbers alone, and not in texts: neither promises the last digits, nor what is too small to be written
  return asks(chain.includes('^') ? chain.replaceAll('&', '+').replace(/[A-Z]\d+/g, '3') : chain);
};

export const numbers: Family = (draw) => asks(anyNumber(draw, draw.whole(2, 3)));
export const words: Family = (draw) => asks(anyText(draw, draw.whole(2, 3)));
export const truths: Family = (draw) => asks(anyTruth(draw, draw.whole(2, 3)));

/** Two comparisons with the same column, one after the other. */
export const twice: Family = (draw) => {
  const [column, rows] = draw.pick([
    ['A', 12],
    ['L', 5],
    ['G', 6],
    ['K', 4],
    ['B', 8],
  ] as const);
  const cell = `${column}${draw.whole(1, rows)}`;
  const compared = () =>
    `${draw.pick(COMPARISONS)}${draw.pick(['0', '""', '"x"', '12', '"12"', '5', '1', '"0"'])}`;
  const asked = () => `IFERROR(IF(${cell}${compared()},"yes","no"),"error")`;
  return asks(
    draw.pick([
      `${asked()}&${asked()}`,
      `${asked()}&IF(${cell}="","none",${cell})`,
      `COUNTIF(${column}1:${column}${rows},${draw.pick(['0', '""', '12', '"x"', '5'])})&"/"&SUMPRODUCT(IFERROR(--(${column}1:${column}${rows}${compared()}),7))`,
      `SUMPRODUCT(IFERROR(--(${column}1:${column}${rows}${compared()}),7))*100+SUMPRODUCT(IFERROR(--(${column}1:${column}${rows}${compared()}),7))`,
      `IF(SUM(L1:L5)>0,"some","none")&SUMPRODUCT(--(L1:L5${compared()}))`,
    ]),
  );
};

/** An array calculated in between, and then the cells near A1 asked for what it holds. */
export const between: Family = (draw) => {
  const factor = draw.pick([100, 10, 3]);
  const [column, rows] = draw.pick([
    ['A', 3],
    ['B', 3],
    ['C', 3],
  ] as const);
  const cells = `${column}1:${column}${rows}`;
  const held = draw.pick([5, 6, 8, 9, 3, 7, 2, 50]) * factor;
  const ask = draw.pick([
    `COUNTIF(${cells},${held})`,
    `SUMIF(${cells},${held},H1:H3)`,
    `SUMPRODUCT(--(${cells}=${held}))`,
    `COUNTIF(${cells},">${factor * 2}")`,
  ]);
  return asks(
    `SUM((${draw.pick(['D10:F12', 'H1:I3', 'E10:E12', 'M1:N3'])}*${factor})+0)*0+COUNTIF(${cells},1)*0+${ask}`,
  );
};

/** SUMIF and AVERAGEIF whose third argument is one cell, which the formula then asks for itself. */
export const short: Family = (draw) => {
  const [of, from] = draw.pick([
    ['D1:D6', 'E1'],
    ['D1:D3', 'E1'],
    ['J1:J6', 'M1'],
    ['D1:D4', 'H1'],
    ['J1:J4', 'N1:N2'],
  ] as const);
  const which = of.startsWith('D')
    ? draw.pick(['Softbox', 'Grid', 'Beauty*', '<>Grid'])
    : draw.pick(['abc', 'a*', '<>abc']);
  const after = draw.pick([
    `SUM(${from})`,
    `COUNT(${from})`,
    `ROWS(${from})*3`,
    `MAX(${from})`,
    `SUM(${from}*2)`,
  ]);
  return asks(`${draw.pick(['SUMIF', 'SUMIF', 'AVERAGEIF'])}(${of},${quoted(which)},${from})+${after}`);
};

/** A formula that gives "", an empty cell, and what functions make of them. */
export const blanks: Family = (draw) => {
  const cell = draw.pick(['A11', 'B8', 'L1', 'A11', 'A3', 'D7', 'L3']);
  const cells = draw.pick(AREAS);
  return asks(
    draw.pick([
      `${cell}${draw.pick(['+', '*', '-'])}${digits(draw)}`,
      `${draw.pick(['COUNTA', 'COUNT', 'COUNTBLANK', 'ISTEXT', 'ISBLANK', 'LEN', 'N', 'ISNUMBER', 'SUM', 'MAX', 'T', 'AVERAGEA'])}(${cell})`,
      `${cell}${draw.pick(COMPARISONS)}${draw.pick(['0', '""', '5', '"a"', 'A3', 'A11', 'L2'])}`,
      `IFERROR(${cell}*1,"no number")`,
      `${cell}&"a"`,
      `IF(${cell}="","empty",${cell})`,
      `${draw.pick(['COUNTBLANK', 'COUNTA', 'COUNT', 'SUM'])}(${cells})`.replace(
        'SUM(A1:A12)',
        'COUNT(A1:A12)',
      ),
      `COUNTIF(${cells},${draw.pick(['"="', '"<>"', '""', '"*"', '"?*"', '0'])})`,
      `SUMPRODUCT(--ISBLANK(${cells}))+SUMPRODUCT(--ISTEXT(${cells}))*10`,
      `SUMPRODUCT(LEN(L1:L5))`,
    ]),
  );
};

/** What a formula finds empty is 0 in its cell. */
export const found: Family = (draw) => {
  const empty = draw.pick(['A3', 'A5', 'L3', 'D8', 'G4']);
  const gives = draw.pick([
    empty,
    `IF(TRUE,${empty})`,
    `IFERROR(${empty},${digits(draw)})`,
    `INDEX(A1:A5,${draw.pick(['3', '5'])})`,
    `CHOOSE(${draw.pick(['1', '2'])},A3,L3)`,
    'VLOOKUP("x",A1:B1,2,FALSE)',
    'IFERROR(VLOOKUP(4,D10:G10,4,FALSE),8)',
    `HLOOKUP(1,G1:H4,4,FALSE)`,
    'LOOKUP(5,H1:H3,L1:L3)',
    `IF(A1>${draw.pick(['4.0', '1', '9'])},${empty},${digits(draw)})`,
    `OFFSET(A1,2,0)`,
    `INDIRECT("A3")`,
  ]);
  return asks(gives);
};

/** Kinds that are not alike: numbers come before texts, texts before truth values. */
export const kinds: Family = (draw) => {
  const shelf = [
    ['1', '0', '5', 'A1', '0.5'],
    ['"x"', '"TRUE"', '"1"', 'A6', '"abc"'],
    ['TRUE', 'FALSE', 'A7', '(1=1)'],
  ] as const;
  const [one, other] = draw.pick([
    [0, 1],
    [0, 2],
    [1, 2],
    [2, 0],
    [2, 1],
    [1, 0],
  ] as const);
  const sign = draw.pick(COMPARISONS);
  const answer =
    sign === '<>' || (sign.startsWith('<') && one < other) || (sign.startsWith('>') && one > other);
  return documented(
    `${draw.pick(shelf[one])}${sign}${draw.pick(shelf[other])}`,
    answer,
    'the order of kinds in Microsoft\'s "Sort data in a range or table": numbers, texts, FALSE, TRUE',
  );
};

/** Numbers turned into texts by a sign or a function of texts. */
export const shownNumbers: Family = (draw) => {
  const value = draw.pick([
    `${draw.whole(1, 30)}/${draw.pick([3, 7, 9, 11, 8, 13])}`,
    `-${draw.whole(1, 30)}/${draw.pick([3, 7])}`,
    '0.1+0.2', '-0', '0*-1', '1.1*1.1', '100*1.1', '1/1000', '2/3000', '1E-3', '1E-5', '1.50', '1E10/3', '19.99*3', '0.1*3', '1E21', '1-0.9', 'SQRT(2)', 'PI()', '1/3*3', '4.35*100', '1.005*1000',
  ]); // prettier-ignore
  return asks(
    draw.pick([
      `(${value})&""`, `LEN(${value})`, `(${value})&" m"`, `CONCAT("a",${value})`, `LEFT(${value},${draw.whole(1, 8)})`, `RIGHT(${value},${draw.whole(1, 5)})`,
      `TEXTJOIN("/",TRUE,${value},A1)`, `UPPER(${value})`, `SUBSTITUTE(${value},".",",")`, `MID(${value},2,3)`, `"x"&${value}*1`, `EXACT(${value},${value})`, `TRIM(${value})`, `FIND(".",${value}&".")`,
    ]),
  ); // prettier-ignore
};

/** Comparisons of sums that binary fractions hold almost. */
export const almost: Family = (draw) => {
  const [one, other] = draw.pick([
    ['1.1^2', '1.21'], ['1/49*49', '1'], ['0.1+0.2', '0.3'], ['0.1*3', '0.3'], ['4.35*100', '435'], ['1.1*3', '3.3'], ['1-0.9', '0.1'], ['SQRT(2)^2', '2'], ['19.99*3', '59.97'], ['0.7+0.1', '0.8'], ['8.1-8', '0.1'],
    ['C1*100', '1999'], ['1/3+1/3+1/3', '1'], ['5.6*3', '16.8'],
  ] as const); // prettier-ignore
  const sign = draw.pick(COMPARISONS);
  return asks(
    draw.pick([
      `${one}${sign}${other}`,
      `IF(${one}${sign}${other},"yes","no")`,
      `${other}${sign}${one}`,
      `SUMPRODUCT(--(${one}${sign}{${other.replace('/', '')},9}))`,
    ]),
  );
};

/** IF, AND, OR and their kin, with whatever may stand for a truth value. */
export const logic: Family = (draw) => {
  const given = () =>
    draw.pick([
      anyTruth(draw, 1),
      numberCell(draw),
      'TRUE',
      'FALSE',
      '0',
      '2',
      '1.50',
      quoted(draw.pick(['a', 'TRUE', 'x', ''])),
      textCell(draw),
      'A7',
      'A3',
    ]);
  return asks(
    draw.pick([
      `IF(${given()},1,2)`,
      `IF(${given()},"yes","no")`,
      `IFERROR(IF(AND(${given()},${given()}),"yes","no"),"refused")`,
      `AND(${given()},${given()})`,
      `OR(${given()},${given()})`,
      `NOT(${given()})`,
      `XOR(${given()},${anyTruth(draw, 1)})`,
      `IFS(${anyTruth(draw, 1)},1,${anyTruth(draw, 1)},2,TRUE,3)`,
      `SWITCH(${draw.pick(['A1', 'A8', 'A2', '"b"', 'D1', '2'])},5,"five",0,"none","softbox","box","b","letter",2,"two","other")`,
      `CHOOSE(${draw.pick(['1', '2.9', 'A1', '3', 'A4', '0', '"2"'])},"one","two",${digits(draw)})`,
      `IFNA(${draw.pick(['K2', 'K1', 'K4', 'MATCH(99,H1:H6,0)'])},${digits(draw)})`,
      `IFERROR(${draw.pick(['K2', 'K4', 'A1/A2', 'A6+1', 'E1'])},${quoted(draw.pick(TEXTS))})`,
      `IF(ISNUMBER(${numberCell(draw)}),${anyNumber(draw, 1)},${anyText(draw, 1)})`,
    ]),
  );
};
