import { describe, expect, test } from 'vitest';
import { functionsIn } from '../../src/formula/calls';
import { lex } from '../../src/formula/lex';
import { speaksOf } from '../../src/formula/speaksOf';
import { addressParts } from '../../src/formula/sheetPlace';
import { parseReference } from '../../src/formula/reference';
import { type Piece, readFormula, referencesIn } from '../../src/formula/tree';
import { ALL_TYPED, HOSTILE } from './corpus';

describe('a formula speaks of a sheet', () => {
  test.each([
    ['=Plan!A1'], ['=plan!A1'], ["='Plan'!A1"], ['=SUM(Plan!A:A)'], ['=Plan!A1#'], ['=Plan:Set!A1'], ['=Set:Plan!A1'], ["='Set 1:Plan'!A1"], ['=A1:Plan!B3'], ['=Plan!Rate'], ['=Plan!MYOWN(1)'], ['=Plan!#REF!'],
    ['=F(1,-Plan!A1%)'], ['=LET(x,Plan!A1,x)'], [`=${'('.repeat(2000)}Plan!A1`],
  ])('%s of Plan', (formula) => expect(speaksOf(formula, 'Plan', [])).toBe(true)); // prettier-ignore
  test.each(["=\"Plan!A1\"", '=Planner!A1', "='My Plan'!A1", '=[1]Plan!A1', "='C:\\x\\[b.xlsx]Plan'!A1", '=[Plan]Set!A1', '=T[Plan!A1]', '=Plan', 'Plan!A1', ''])(
    '%s does not', (formula) => expect(speaksOf(formula, 'Plan', [])).toBe(false)); // prettier-ignore
  test('by its name, however it is quoted', () => {
    expect(speaksOf("='Ann''s set, Bo''s lights'!B2", "Ann's set, Bo's lights", [])).toBe(true);
    expect(speaksOf("='Ann''s set'!B2", "Ann''s set", [])).toBe(false);
  });
});

describe('a formula speaks of a table', () => {
  test.each(['=Lights[Reading]', '=lights[[#This Row],[A]]', '=SUM(1,Lights[@A])', '=ROWS(Lights)', '=Lights[#Headers]'])(
    '%s of Lights', (formula) => expect(speaksOf(formula, 'Set', ['Lights'])).toBe(true)); // prettier-ignore
  test.each(['=Lights_2[Reading]', '="Lights[Reading]"', '=[1]!Lights[Reading]', '=Book.xlsx!Lights[Reading]', '=[@Lights]', '=LIGHTS(1)'])(
    '%s does not', (formula) => expect(speaksOf(formula, 'Set', ['Lights'])).toBe(false)); // prettier-ignore
});

describe('a formula speaks of what its references lie on', () => {
  const references = [...ALL_TYPED, ...HOSTILE.filter((formula) => formula.startsWith('='))].flatMap(
    (formula) => referencesIn(formula).map((text) => [formula, parseReference(text)] as const),
  );
  const sheets = references.flatMap(([formula, reference]) =>
    reference?.kind === 'cells' && reference.sheet !== undefined ? [[formula, reference.sheet] as const] : [],
  );
  const tables = references.flatMap(([formula, reference]) =>
    reference?.kind === 'table' && reference.table !== undefined ? [[formula, reference.table] as const] : [],
  );
  test.each(sheets)('%s of the sheet %s', (formula, sheet) =>
    expect(speaksOf(formula, sheet, [])).toBe(true),
  );
  test.each(tables)('%s of the table %s', (formula, table) =>
    expect(speaksOf(formula, '', [table])).toBe(true),
  );
});

test.each([
  ["='Set (2)'!A1+NOPE(1)", ['NOPE']],
  ['=T[Power (W)]+sum(1)', ['SUM']],
  ['="SUM("&MÜLLER(1)', ['MÜLLER']],
  ['=SUM (1,2)', ['SUM']],
  ['=LET(f,LAMBDA(x,x+1),F(2))+f', ['LET', 'LAMBDA']],
  ['=Plan!MYOWN(1)', []],
  ['=SWEEP.STOPDIFF(8,_xldudf_OTHER(1))', ['SWEEP.STOPDIFF', '_XLDUDF_OTHER']],
  ['=Rate A1', []],
  ['=A1 (B1)', []],
])('the functions of %s', (formula, names) => expect(functionsIn(lex(formula))).toEqual(names));

// a space before the bracket is seen by those who look for functions alone
const AS_CALLS = ALL_TYPED.filter((formula) => formula !== '=SUM (1,2)');
test.each(AS_CALLS)('the functions of %s are calls of its tree', (formula) => {
  const calls = (piece: Piece | undefined): string[] => {
    if (piece?.kind === 'call') return [piece.name, ...piece.args.flatMap(calls)];
    return piece?.kind === 'calculation' ? piece.parts.flatMap(calls) : [];
  };
  expect(calls(readFormula(formula))).toEqual(expect.arrayContaining([...functionsIn(lex(formula))]));
});

test.each([
  ["'My sheet'!B7", 'My sheet', 'B7'],
  ["'It''s'!B7", "It's", 'B7'],
  ['Plan!B7', 'Plan', 'B7'],
  ["'Wow! Great'!B7", 'Wow! Great', 'B7'],
  ['📷!B7', '📷', 'B7'],
  ['B7', '', 'B7'],
])('the address %s in two parts', (text, sheet, cell) => expect(addressParts(text)).toEqual({ sheet, cell }));
