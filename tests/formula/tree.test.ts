import { describe, expect, test } from 'vitest';
import { type Piece, readFormula, referencesIn } from '../../src/formula/tree';
import { areaIn, areaOn, parseReference } from '../../src/formula/reference';
import { ALL_TYPED, HOSTILE } from './corpus';

/** A formula in short: each piece as its kind and text. */
function short(piece: Piece | undefined): unknown {
  if (!piece) return undefined;
  if (piece.kind === 'value') return piece.value;
  if (piece.kind === 'list') return piece.rows;
  if (piece.kind === 'reference') return { ref: piece.text };
  if (piece.kind === 'left out') return null;
  if (piece.kind === 'call') return { call: piece.name, of: piece.args.map(short) };
  if (piece.kind !== 'calculation') throw new Error('A piece is none of these.');
  return { sign: piece.sign ?? '?', text: piece.text, of: piece.parts.map(short) };
}
const read = (formula: string): unknown => short(readFormula(formula));
const ref = (text: string) => ({ ref: text });

describe('a formula is taken to its pieces', () => {
  /* prettier-ignore */
  const READ: readonly (readonly [string, unknown])[] = [
    ['=8', 8], ['= 1.5e-3 ', 0.0015], ['=.5', 0.5], ['=TRUE', true], ['=false', false], ['="f/8 ""2/3"""', 'f/8 "2/3"'], ['=#N/A', { error: '#N/A' }], ['=#NAME?', { error: '#NAME?' }],
    ['={8;11;16}', [[8], [11], [16]]], ['={1,"a";TRUE,#N/A}', [[1, 'a'], [true, { error: '#N/A' }]]], ['={-1, +2}', [[-1, 2]]], ['={TRUE,FALSE;"a""b",1}', [[true, false], ['a"b', 1]]], ['={"a;b","}"}', [['a;b', '}']]],
    ['=B2', ref('B2')], ['=$B$2', ref('$B$2')], ['=B2:C9', ref('B2:C9')], ['=A:A', ref('A:A')], ['=$3:$7', ref('$3:$7')], ['=B2#', ref('B2#')],
    ['=Sheet1!B2', ref('Sheet1!B2')], ["='Lights on set (2)'!B2:B9", ref("'Lights on set (2)'!B2:B9")], ["='It''s'!A1", ref("'It''s'!A1")], ['=[Book.xlsx]Sheet1!A1', ref('[Book.xlsx]Sheet1!A1')],
    ['=Lights[Reading]', ref('Lights[Reading]')], ['=Lights_2[Reading]', ref('Lights_2[Reading]')], ['=[@Reading]', ref('[@Reading]')], ['=Lights[@[Power now]]', ref('Lights[@[Power now]]')],
    ['=Lights[[#This Row],[Reading]]', ref('Lights[[#This Row],[Reading]]')], ["=T[it''s]", ref("T[it''s]")], ['=Rate', ref('Rate')], ['=Größe_1', ref('Größe_1')],
    ['=[1]!Rate', ref('[1]!Rate')], ['=Book.xlsx!Lights[Reading]', ref('Book.xlsx!Lights[Reading]')], ['=Plan!#REF!', { error: '#REF!' }], ["='Jo''s'!#REF!+1", { sign: '+', text: "'Jo''s'!#REF!+1", of: [{ error: '#REF!' }, 1] }],
    ["='C:\\[x.xlam]y'!SWEEP.STOPDIFF(8)", { call: "'C:\\[x.xlam]y'!SWEEP.STOPDIFF", of: [8] }], ['=Plan!myown(1)', { call: 'Plan!MYOWN', of: [1] }],
    ['=SWEEP.STOPDIFF(8, 11)', { call: 'SWEEP.STOPDIFF', of: [8, 11] }], ['=sweep.stopdiff(8,,"time")', { call: 'SWEEP.STOPDIFF', of: [8, null, 'time'] }], ['=PI()', { call: 'PI', of: [] }], ['=F(,1)', { call: 'F', of: [null, 1] }], ['=F(1))', { call: 'F', of: [1] }], ['  = 8', 8],
    ['=LOG10(8)', { call: 'LOG10', of: [8] }], ['=TRUE()', { call: 'TRUE', of: [] }], ['=A(B(1),"x,)")', { call: 'A', of: [{ call: 'B', of: [1] }, 'x,)'] }],
    ['=1+2*3', { sign: '+', text: '1+2*3', of: [1, { sign: '*', text: '2*3', of: [2, 3] }] }], ['=(1+2)*3', { sign: '*', text: '(1+2)*3', of: [{ sign: '+', text: '1+2', of: [1, 2] }, 3] }],
    ['=5-2-1', { sign: '-', text: '5-2-1', of: [{ sign: '-', text: '5-2', of: [5, 2] }, 1] }], ['=-1/3', { sign: '/', text: '-1/3', of: [{ sign: '-', text: '-1', of: [1] }, 3] }],
    ['=30%', { sign: '%', text: '30%', of: [30] }], ['=@A1', { sign: '@', text: '@A1', of: [ref('A1')] }], ['=A1<>""', { sign: '<>', text: 'A1<>""', of: [ref('A1'), ''] }],
  ];
  for (const [formula, pieces] of READ) test(formula, () => expect(read(formula)).toEqual(pieces));
});

describe('what is not understood keeps its text, and the calls in it', () => {
  test.each([
    ['=A1:INDEX(B:B,3)', 'A1:INDEX(B:B,3)', [ref('A1'), { call: 'INDEX', of: [ref('B:B'), 3] }]],
    ['=(A1,B2)', '(A1,B2)', [ref('A1'), ref('B2')]],
    ['=A1:A3 B2:B3', 'A1:A3 B2:B3', [ref('A1:A3'), ref('B2:B3')]],
    ['=LAMBDA(x,x)(F(3))', 'LAMBDA(x,x)(F(3))', [{ call: 'LAMBDA', of: [ref('x'), ref('x')] }, { call: 'F', of: [3] }]], // prettier-ignore
    ['=F(1) ~ 2', 'F(1) ~ 2', [{ call: 'F', of: [1] }, 2]],
    ['= F(1) ~ 2 ', 'F(1) ~ 2', [{ call: 'F', of: [1] }, 2]],
    ['=~', '~', []],
    ['=%', '%', []],
    [
      '= F(1))+2 ',
      'F(1))+2',
      [
        { call: 'F', of: [1] },
        { sign: '+', text: '+2', of: [2] },
      ],
    ],
    [
      '=F(1))+2',
      'F(1))+2',
      [
        { call: 'F', of: [1] },
        { sign: '+', text: '+2', of: [2] },
      ],
    ],
  ])('%s', (formula, text, of) => expect(read(formula)).toEqual({ sign: '?', text, of }));
  test('within one argument the others stay as they are', () =>
    expect(read('=F(8,A1:INDEX(B1,1),11)')).toMatchObject({ call: 'F', of: [8, { sign: '?' }, 11] }));
  test('an open bracket or quote ends the reading', () => {
    expect(read('=F(8,G(11')).toEqual({ call: 'F', of: [8, { call: 'G', of: [11] }] });
    expect(read('=F("abc')).toMatchObject({ call: 'F', of: [{ sign: '?' }] });
  });
  test('a formula nested as deep as spreadsheets take is read once, not over and over', () => {
    const deep = `=${'F('.repeat(64)}1${':2)'.repeat(64)}`;
    const depth = (piece: Piece | undefined): number =>
      piece?.kind === 'call'
        ? 1 + depth(piece.args[0])
        : piece?.kind === 'calculation'
          ? depth(piece.parts[0])
          : 0;
    expect(depth(readFormula(deep))).toBe(64);
  });
});

const WORKED = [...ALL_TYPED, ...HOSTILE].flatMap((formula) => {
  const piece = readFormula(formula);
  return piece && !['reference', 'list', 'value'].includes(piece.kind) ? [[formula, piece] as const] : [];
});
test.each(WORKED)('%s is taken whole', (formula, piece) => {
  // brackets around the whole are no piece of their own
  expect(
    formula
      .replace('=', '')
      .trim()
      .replaceAll(/[()\s]/g, ''),
  ).toContain(piece.text.replaceAll(/[()\s]/g, ''));
});

test('what lies deeper than any spreadsheet goes is passed over, with the references in it found all the same', () => {
  for (const [open, close] of [['(', ')'], ['F(', ')'], ['-', ''], ['@(', ')']] as const)
    expect(referencesIn(`=${open.repeat(2000)}A1${close.repeat(2000)}+B1`)).toEqual(['A1', 'B1']);
}); // prettier-ignore

test('the references of a sum of thousands are found', () => {
  expect(referencesIn(`=${'1+'.repeat(15_000)}A1`)).toEqual(['A1']);
  expect(referencesIn(`=A1${'%'.repeat(15_000)}+F(B1,A1)`)).toEqual(['A1', 'B1']);
});

test.each(['', '8', 'f/11', '=', ' = ', "'=8"])('%j is no formula', (text) =>
  expect(readFormula(text)).toBeUndefined(),
);

test('what is left out has no text', () =>
  expect(readFormula('=F(8,,1)')).toMatchObject({ args: [{}, { kind: 'left out', text: '' }, {}] }));

test('what is no formula has no references', () => expect(referencesIn('A1+B2')).toEqual([]));

test('the references of a formula, each once', () =>
  expect(referencesIn('=IF(A1="","",SWEEP.LIGHTSUM(A1,Lights[Reading],-B2))')).toEqual([
    'A1',
    'Lights[Reading]',
    'B2',
  ]));

describe('what a reference speaks of', () => {
  const cells = (row: number, column: number, rows = 1, columns = 1) => ({ kind: 'cells', row, column, rows, columns }); // prettier-ignore
  test.each([
    ['B2', cells(1, 1)],
    ['$AA$10', cells(9, 26)],
    ['b2:c4', cells(1, 1, 3, 2)],
    ['C4:B2', cells(1, 1, 3, 2)],
    ['XFD1048576', cells(1048575, 16383)],
    ['Plan!A1', { ...cells(0, 0), sheet: 'Plan' }],
    ["'It''s (2)'!A1:A3", { ...cells(0, 0, 3), sheet: "It's (2)" }],
    ["'Ann''s set, Bo''s lights'!B2", { ...cells(1, 1), sheet: "Ann's set, Bo's lights" }],
    ['Lights[Reading]', { kind: 'table', table: 'Lights', first: 'Reading', last: 'Reading', rows: 'all' }],
    ['[@Reading]', { kind: 'table', first: 'Reading', last: 'Reading', rows: 'this' }],
    ['T[@[Power now]]', { kind: 'table', table: 'T', first: 'Power now', last: 'Power now', rows: 'this' }],
    ['T[[#This Row],[A]:[B]]', { kind: 'table', table: 'T', first: 'A', last: 'B', rows: 'this' }],
    ['T[[A]:[B]]', { kind: 'table', table: 'T', first: 'A', last: 'B', rows: 'all' }],
    ["T[a'[b']]", { kind: 'table', table: 'T', first: 'a[b]', last: 'a[b]', rows: 'all' }],
    ['Rate', { kind: 'name', name: 'Rate' }],
    ["'It''s (2)'!Rate", { kind: 'name', name: 'Rate', sheet: "It's (2)" }],
  ])('%s', (text, wanted) => expect(parseReference(text)).toStrictEqual(wanted));
  test.each([
    'A:A',
    '1:3',
    'B2#',
    '[Book.xlsx]Sheet1!A1',
    "'[Book.xlsx]Sheet1'!A1",
    'XFE1',
    'A1048577',
    'T[#Headers]',
    'Sheet1:Sheet3!A1',
    "'Jan 1:Dec 31'!A1",
    '[Book.xlsx]Plan!Rate',
    "'Jan 1:Dec 31'!Rate",
    'Book.xlsx!T[A]',
    'Plan!#REF!',
    'A1+B1',
    'SUM(',
    '',
    'TRUE',
  ])(
    // prettier-ignore
    '%s is left to the spreadsheet',
    (text) => expect(parseReference(text)).toBeUndefined(),
  );
});

test.each([
  ['Plan!$B$2:$B$9', { row: 1, column: 1, rows: 8, columns: 1 }],
  ["'It''s'!B2", { row: 1, column: 1, rows: 1, columns: 1 }],
  ['B2', { row: 1, column: 1, rows: 1, columns: 1 }],
  ['Plan!$C:$B', { row: 0, column: 1, rows: 1_048_576, columns: 2 }],
  ['3:2', { row: 1, column: 0, rows: 2, columns: 16_384 }],
  ['B2#', undefined],
  ['XFE1', undefined],
  ['T[A]', undefined],
  ['B2:C3:D4', undefined],
])('the cells of %s', (text, wanted) => expect(areaIn(text)).toEqual(wanted));

test('the cells of a reference that lie on one sheet', () => {
  const there = { row: 0, column: 0, rows: 2, columns: 1 };
  expect(areaOn('Plan', 'Plan!A1:A2')).toEqual(there);
  expect(areaOn('Plan', 'plan!A1:A2')).toEqual(there);
  expect(areaOn("It's", "'It''s'!A1:A2")).toEqual(there);
  for (const other of [
    'A1:A2',
    'Set!A1:A2',
    'Plan:Set!A1:A2',
    '[1]Plan!A1:A2',
    'Plan!Rate',
    'Plan!A1:A2,Plan!C1',
  ])
    expect(areaOn('Plan', other)).toBeUndefined();
});
