import { expect, test } from 'vitest';
import { calls, isBalanced } from '../../src/formula/calls';
import { lex } from '../../src/formula/lex';
import { isOfTemplate, templateReference, templateTokens } from '../../src/formula/templateReference';
import { ALL_TYPED, HOSTILE } from './corpus';

const refused = (formula: string): string | undefined =>
  templateTokens(formula).find((token) => !isOfTemplate(token))?.raw;

test.each([
  '=A1', '=$A$1', '=A:A', '=1:3', '=SUM(2:4)', '=Reading', '=Plan!A1', '=#N/A', '=[Reading]', '=Heads[@Reading]', '=Heads[[#This Row],[Reading]]', '=[@[Power now]]', '=Heads[#All]', '=Heads[a_b]', '=[1]!Heads[Reading]',
  '={TRUE,1}', '={1,#N/A}', '=@{reading}', '={reading}#', '={pops-build:pops}', '="abc', '=Plan!SUM(1)', '={reading}!',
])('%s is not of a template', (formula) => expect(refused(formula)).not.toBeUndefined()); // prettier-ignore

test.each([
  '={reading}*2%', '=[@Reading]^2', '=SUM(Heads[Power now])', '={8;-11,"f/8"}', '=IF({a}<>"",TRUE,-.5e3)', '=SUM({a}:{b})', '=ROUND( {a} , 1 )&"x"',
])('%s is', (formula) => expect(refused(formula)).toBeUndefined()); // prettier-ignore

test('any formula is taken apart without a loss, and what names cells outright is not of a template', () => {
  for (const formula of [...ALL_TYPED, ...HOSTILE]) {
    const tokens = templateTokens(formula);
    expect(tokens.map(({ raw }) => raw).join('')).toBe(formula);
    const isOutright = tokens.some(({ kind }) => kind === 'cells' || kind === 'lines');
    if (isOutright) expect(refused(formula), formula).not.toBeUndefined();
  }
});

test.each([
  ['{reading}', { kind: 'cell', id: 'reading' }],
  ['[@Power now]', { kind: 'row', column: 'Power now' }],
  ['Heads[Power now]', { kind: 'column', table: 'Heads', column: 'Power now' }],
  ['Heads[@Power]', undefined],
  ['[Power]', undefined],
  ['8', undefined],
])('%s refers to what it names', (text, wanted) =>
  expect(templateTokens(text).map(templateReference)).toEqual([wanted]),
);

test('the calls of a formula, the inner ones first, with their arguments, depth and surroundings', () => {
  const found = calls(lex('=SWEEP.A(1,(SWEEP.B(x, y)+SUM()),)')).map(({ args, ...call }) => ({
    ...call,
    args: args.map((argument) => argument.map(({ raw }) => raw).join('')),
  }));
  expect(found).toEqual([
    { name: 'SWEEP.B', args: ['x', ' y'], depth: 2, within: undefined },
    { name: 'SUM', args: [], depth: 1, within: undefined },
    { name: 'SWEEP.A', args: ['1', '(SWEEP.B(x, y)+SUM())', ''], depth: 1, within: undefined },
  ]);
  expect(calls(lex('=INDEX( F(1),2)')).map(({ name, within }) => [name, within])).toEqual([
    ['F', 'INDEX'],
    ['INDEX', undefined],
  ]);
  expect(calls(lex('=A(B(1)')).map(({ name }) => name)).toEqual(['B']);
  expect(calls(lex('=1),F( )')).map(({ name, args }) => [name, args])).toEqual([['F', []]]);
});

test.each([['=F((1))', true], ['=F(1', false], ['=F(1))', false], ['=)(', false], ['=1', true]])( // prettier-ignore
  'brackets of %s', (formula, wanted) => expect(isBalanced(lex(formula))).toBe(wanted)); // prettier-ignore
