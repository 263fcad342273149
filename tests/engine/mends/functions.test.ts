import { beforeAll, describe, expect, test } from 'vitest';
import { asRows, type Answer, type Case, mendedAnswers, rounded } from './judge';
import type { TestCell } from '../book';

/**
 * The functions that stand in the place of the engine's own: what Microsoft's help of each says, on a small list whose answers
 * are counted by hand.
 */
const LIST: Readonly<Record<string, TestCell>> = {
  A1: 'Softbox', B1: 8, C1: 10, D1: true,
  A2: 'Grid', B2: 5.6, C2: 20, D2: false,
  A3: 'softbox', B3: 11, C3: 30, D3: true,
  A4: 'Umbrella', B4: 16, C4: 40, D4: false,
  A5: 'a*b', B5: 4, C5: 50, D5: true,
  A6: '12', B6: 12, C6: 60, D6: false,
  // rising, with two alike; falling
  F1: 1, F2: 3, F3: 3, F4: 5, F5: 9,
  G1: 9, G2: 5, G3: 3, G4: 1,
  // a row
  I1: 'x', J1: 'y', K1: 'z',
  I2: 1, J2: 2, K2: 3,
}; // prettier-ignore
const error = (code: string) => ({ error: code });
const NA = error('#N/A');
const VALUE = error('#VALUE!');
type Example = readonly [formula: string, expected: Answer | readonly (readonly Answer[])[]];

const EXAMPLES: Readonly<Record<string, readonly Example[]>> = {
  'COUNTIF and its kind': [
    ['=COUNTIF(A1:A6,"softbox")', 2],
    ['=COUNTIF(A1:A6,"<>softbox")', 4],
    ['=COUNTIF(A1:A6,"s*")', 2],
    ['=COUNTIF(A1:A6,"a~*b")', 1],
    ['=COUNTIF(A1:A6,"????")', 1],
    ['=COUNTIF(A1:A8,"*")', 6],
    ['=COUNTIF(A1:B6,12)', 2],
    ['=COUNTIF(B1:B6,">=11")', 3],
    ['=COUNTIF(B1:B6,"<"&B1)', 2],
    ['=COUNTIF(D1:D6,TRUE)', 3],
    ['=COUNTIF(B1:B8,"")', 2],
    ['=COUNTIF(B1:B6,{8,4,99})', [[1, 1, 0]]],
    ['=COUNTIF(B1:B6,H1)', 0],
    ['=COUNTIF({1,2,3},1)', VALUE],
    ['=COUNTIFS(A1:A6,"softbox",B1:B6,">8")', 1],
    ['=COUNTIFS(A1:A6,"softbox",B1:B5,">8")', VALUE],
    ['=SUMIF(A1:A6,"softbox",C1)', 40],
    ['=SUMIF(B1:B6,">8")', 39],
    ['=SUMIF(I1:K1,"y",I2:K2)', 2],
    ['=SUMIFS(C1:C6,A1:A6,"softbox",D1:D6,TRUE)', 40],
    ['=SUM(SUMIFS(C1:C6,A1:A6,{"Grid","Umbrella"}))', 60],
    ['=AVERAGEIF(A1:A6,"softbox",C1:C6)', 20],
    ['=AVERAGEIF(A1:A6,"none",C1:C6)', error('#DIV/0!')],
    ['=AVERAGEIFS(B1:B6,C1:C6,">=40")', 32 / 3],
    ['=MAXIFS(B1:B6,A1:A6,"softbox")', 11],
    ['=MINIFS(B1:B6,D1:D6,TRUE)', 4],
  ],
  'MATCH, XMATCH': [
    ['=MATCH("SOFTBOX",A1:A6,0)', 1],
    ['=MATCH("u*",A1:A6,0)', 4],
    ['=MATCH("12",A1:A6,0)', 6],
    ['=MATCH(12,A1:A6,0)', NA],
    ['=MATCH(4,F1:F5)', 3],
    ['=MATCH(3,F1:F5,1)', 3],
    ['=MATCH(0,F1:F5,1)', NA],
    ['=MATCH(4,G1:G4,-1)', 2],
    ['=MATCH(3,G1:G4,-1)', 3],
    // The smallest that is not below: where several are, the last of them, as upwards.
    ['=MATCH(5,{9;5;5;3},-1)', 3],
    ['=MATCH(4,{9;5;5;3},-1)', 3],
    ['=MATCH({3,9},F1:F5,0)', [[2, 5]]],
    ['=MATCH("y",I1:K1,0)', 2],
    ['=MATCH(1,A1:B6,0)', NA],
    ['=XMATCH("softbox",A1:A6)', 1],
    ['=XMATCH("softbox",A1:A6,0,-1)', 3],
    ['=XMATCH(4,F1:F5,-1)', 2],
    ['=XMATCH(4,F1:F5,1)', 4],
    ['=XMATCH("s*",A1:A6,2,-1)', 3],
    ['=XMATCH(5,F1:F5,0,2)', 4],
    ['=XMATCH(5,G1:G4,0,-2)', 2],
    ['=XMATCH("s*",A1:A6,2,2)', VALUE],
    ['=XMATCH(1,F1:F5,3)', VALUE],
  ],
  'XLOOKUP, VLOOKUP, HLOOKUP, LOOKUP': [
    ['=XLOOKUP("grid",A1:A6,C1:C6)', 20],
    ['=XLOOKUP("grid",A1:A6,B1:D6)', [[5.6, 20, false]]],
    ['=XLOOKUP("none",A1:A6,C1:C6,"not there")', 'not there'],
    ['=XLOOKUP("none",A1:A6,C1:C6)', NA],
    ['=XLOOKUP({"Grid";"none"},A1:A6,C1:C6,0)', [[20], [0]]],
    ['=XLOOKUP("y",I1:K1,I2:K2)', 2],
    ['=XLOOKUP("y",I1:K1,I1:K2)', [['y'], [2]]],
    ['=XLOOKUP(7,F1:F5,F1:F5,,-1)', 5],
    ['=XLOOKUP(7,F1:F5,F1:F5,,1)', 9],
    ['=XLOOKUP(3,F1:F5,{"a";"b";"c";"d";"e"},,0,-1)', 'c'],
    ['=XLOOKUP("a",A1:A6,C1:C5)', VALUE],
    ['=VLOOKUP("grid",A1:C6,3,FALSE)', 20],
    ['=VLOOKUP("um*",A1:C6,2,0)', 16],
    ['=VLOOKUP(4,F1:G5,1)', 3],
    ['=VLOOKUP("Grid",A1:C6,{2,3},FALSE)', [[5.6, 20]]],
    ['=VLOOKUP({"Grid";"Umbrella"},A1:C6,3,FALSE)', [[20], [40]]],
    ['=VLOOKUP("Grid",A1:C6,4,FALSE)', error('#REF!')],
    ['=VLOOKUP("Grid",A1:C6,0,FALSE)', VALUE],
    ['=HLOOKUP("y",I1:K2,2,FALSE)', 2],
    ['=HLOOKUP(2.5,I2:K2,1)', 2],
    ['=LOOKUP(4,F1:F5,{"a";"b";"c";"d";"e"})', 'c'],
    ['=LOOKUP(9.99E+307,B1:B9)', 12],
    ['=LOOKUP(2,1/(A1:A6="softbox"),C1:C6)', 30],
    ['=LOOKUP(4,F1:G5)', 3],
  ],
  'SORT, SORTBY, UNIQUE': [
    ['=SORT(B1:B4)', [[5.6], [8], [11], [16]]],
    ['=SORT(A1:B3,2,-1)', [['softbox', 11], ['Softbox', 8], ['Grid', 5.6]]],
    ['=SORT(A1:C3,{1,2},{1,-1})', [['Grid', 5.6, 20], ['softbox', 11, 30], ['Softbox', 8, 10]]],
    ['=SORT({3,1,2},1,1,TRUE)', [[1, 2, 3]]],
    ['=SORT({"b";2;TRUE;"a";1})', [[1], [2], ['a'], ['b'], [true]]],
    ['=SORT(B1:B3,2)', VALUE],
    ['=SORTBY(A1:A3,B1:B3)', [['Grid'], ['Softbox'], ['softbox']]],
    ['=SORTBY(B1:B3,A1:A3,1,C1:C3,-1)', [[5.6], [11], [8]]],
    ['=SORTBY(I1:K1,I2:K2,-1)', [['z', 'y', 'x']]],
    ['=SORTBY(A1:A3,B1:B2)', VALUE],
    ['=UNIQUE(A1:A4)', [['Softbox'], ['Grid'], ['Umbrella']]],
    ['=UNIQUE(A1:A4,FALSE,TRUE)', [['Grid'], ['Umbrella']]],
    ['=UNIQUE({1,2,1},TRUE)', [[1, 2]]],
    ['=UNIQUE({1;"1";1})', [[1], ['1']]],
    ['=UNIQUE({1;1},FALSE,TRUE)', error('#CALC!')],
  ],
  'signs over lists': [
    ['={1;2}+{10,20}', [[11, 21], [12, 22]]],
    ['={1,2}&"x"', [['1x', '2x']]],
    ['=-F1:F2', [[-1], [-3]]],
    ['=F1:F2^2', [[1], [9]]],
    ['=A1:A3="SOFTBOX"', [[true], [false], [true]]],
    ['=1/{0,2}', [[error('#DIV/0!'), 0.5]]],
    ['="3"+{1,2}', [[4, 5]]],
    ['="x"+1', VALUE],
    ['=5>"5"', false],
    // Fifteen digits that differ are two numbers.
    ['=1.00000000000001=1', false],
    ['=9.99999999999999=9.99999999999998', false],
    ['="1 1/0"+0', VALUE],
    ['=TEXT(-1.5,"# ?/?")', '-1 1/2'],
    ['=TEXT(3.14159,"# ???/???")', '3  16/113'],
    ['=TEXT(3.14159,"# ?/8")', '3 1/8'],
    ['="é">"f"', false],
    ['="2024-01-31"+1', 45323],
  ],
  'IF, CHOOSE, SWITCH': [
    ['=IF({TRUE,FALSE},1,2)', [[1, 2]]],
    ['=IF({1;0},{1,2},3)', [[1, 2], [3, 3]]],
    ['=IF("TRUE",1,2)', 1],
    ['=IF(0,1)', false],
    ['=CHOOSE(2,F1:F2,G1:G2)', [[9], [5]]],
    ['=SUM(CHOOSE(2,F1:F2,G1:G2))', 14],
    ['=CHOOSE(3,1,2)', VALUE],
    ['=SWITCH("GRID",A2,1,0)', 1],
    ['=SWITCH({1,2},1,"a",2,"b")', [['a', 'b']]],
  ],
  'texts and formats': [
    ['=SEARCH("o?t","a Softbox")', 4],
    ['=SEARCH("o?t","an o-t")', 4],
    ['=SEARCH("X","abxax",4)', 5],
    ['=TRIM("  a   b ")', 'a b'],
    ['=TEXTJOIN(",",TRUE,1/3,TRUE)', '0.333333333333333,TRUE'],
    ['=TEXT(0.001,"0;-0;""zero""")', '0'],
    ['=TEXT(100.4,"[>100]""much"";0")', 'much'],
    ['=TEXT(1.005,"0.00;(0.00)")', '1.01'],
    ['=TEXT(1234.565,"#,##0.00")', '1,234.57'],
  ],
}; // prettier-ignore

const ALL = Object.values(EXAMPLES).flatMap((examples) =>
  examples.map(([formula, expected]): Case => ({ formula, expected, cells: LIST })),
);
let given: unknown[][][];
beforeAll(async () => {
  given = await mendedAnswers(ALL);
});

describe.each(Object.keys(EXAMPLES))('%s', (functions) => {
  test.each(EXAMPLES[functions] ?? [])('%s', (formula, expected) => {
    expect(given[ALL.findIndex((each) => each.formula === formula)]).toEqual(rounded(asRows(expected)));
  });
});
