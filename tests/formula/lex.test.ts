import { describe, expect, test } from 'vitest';
import { TEMPLATES } from '../../src/sheets/templates';
import { nodes } from '../../src/sheets/formulaNodes';
import { lex, type Token } from '../../src/formula/lex';
import { ALL_TYPED, HOSTILE, STORED } from './corpus';

const IN_TEMPLATES = TEMPLATES.flatMap((template) => nodes(template).map(({ formula }) => formula));
const joined = (tokens: readonly Token[]): string => tokens.map(({ raw }) => raw).join('');

describe('the pieces of a formula put together are the formula', () => {
  test.each([...ALL_TYPED, ...STORED.flat(), ...HOSTILE])('%s', (formula) => {
    expect(joined(lex(formula))).toBe(formula);
    expect(joined(lex(formula, 'fields'))).toBe(formula);
  });
  test('and so in every template', () => {
    expect(IN_TEMPLATES.length).toBeGreaterThan(50);
    for (const formula of IN_TEMPLATES) expect(joined(lex(formula, 'fields'))).toBe(formula);
  });
});

/** The kinds of a formula's pieces; of an operand also what it is. */
function short(token: Token): unknown {
  const { kind, before } = token;
  const place = before === undefined ? '' : `${before} `;
  switch (token.kind) {
    case 'cells':
      return `${place}cells ${token.from}${token.to === undefined ? '' : ` to ${token.to}`}${token.spills ? ' and its spill' : ''}`;
    case 'lines':
      return `${place}lines ${token.from} to ${token.to}`;
    case 'columns':
      return `${place}columns ${token.table ?? 'here'} ${token.inside}`;
    case 'name':
    case 'call':
      return `${place}${kind} ${token.name}`;
    case 'field':
      return `field ${token.id}`;
    case 'value':
      return before === undefined ? token.value : [place.trim(), token.value];
    case 'list':
      return token.rows;
    default:
      return `${place}${kind}`;
  }
}

describe('what the pieces are', () => {
  test.each<[string, readonly unknown[]]>([
    ['A1+$B$2*C:D', ['cells A1', 'sign', 'cells $B$2', 'sign', 'lines C to D']],
    ['$A1:B$2', ['cells $A1 to B$2']],
    ['2:$4', ['lines 2 to $4']],
    ['A1#', ['cells A1 and its spill']],
    ['A1:B2#', ['cells A1 to B2 and its spill']],
    ['A1:Plan!B3', ['cells A1', 'sign', 'Plan! cells B3']],
    ['Plan!A1:Plan!B3', ['Plan! cells A1', 'sign', 'Plan! cells B3']],
    ['Jan:Dec!A1', ['Jan:Dec! cells A1']],
    ['[1]Jan:Dec!A1', ['[1]Jan:Dec! cells A1']],
    ['2024!A1', ['2024! cells A1']],
    ['Q1!A1', ['Q1! cells A1']],
    ["'It''s'!Rate", ["'It''s'! name Rate"]],
    ["'C:\\[x.xlam]y'!OTHER.STOPDIFF(8)", ["'C:\\[x.xlam]y'! call OTHER.STOPDIFF", 8, 'close']],
    ['[1]!Rate', ['[1]! name Rate']],
    ['Book.xlsx!T[A]', ['Book.xlsx! columns T A']],
    ['Plan!#REF!', [['Plan!', { error: '#REF!' }]]],
    ['#REF!A1', [{ error: '#REF!' }, 'cells A1']],
    ['Plan!~', ['Plan! unknown', 'unknown']],
    ['T[[#This Row],[A]]', ['columns T [#This Row],[A]']],
    ['[@A]', ['columns here @A']],
    ["T[a'[b']]", ["columns T a'[b']"]],
    ["T['[A1]", ["columns T '[A1"]],
    ['T[x!y]+A1', ['columns T x!y', 'sign', 'cells A1']],
    ['sum(a1)', ['call SUM', 'cells a1', 'close']],
    ['LOG10(8)', ['call LOG10', 8, 'close']],
    ['A1B', ['name A1B']],
    ['A1.x', ['name A1.x']],
    ['Größe1', ['name Größe1']],
    ['true<>TRUE(', [true, 'sign', 'call TRUE']],
    ['Plan!TRUE', ['Plan! name TRUE']],
    ['8x', [8, 'name x']],
    ['1.5e-3', [0.0015]],
    ['.5', [0.5]],
    ['5.', [5]],
    ['"a ""b"""', ['a "b"']],
    ['{8;-1,"a;b"}', [[[8], [-1, 'a;b']]]],
    ['{ TRUE , #N/A }', [[[true, { error: '#N/A' }]]]],
    ['{1,A1}', ['unknown', 1, 'comma', 'cells A1', 'unknown']],
    ['{reading}', ['unknown', 'name reading', 'unknown']],
    ['( ,%', ['open', 'space', 'comma', 'sign']],
    ['📷!', ['unknown', 'unknown']],
    ['#A', ['sign', 'name A']],
  ])('%s', (formula, kinds) => expect(lex(formula).map(short)).toEqual(kinds));

  test('braces around an id are a cell in a template alone', () =>
    expect(lex('{reading}*{8;11}', 'fields').map(short)).toEqual(['field reading', 'sign', [[8], [11]]]));

  test.each(['"abc', "'abc", 'T[abc', '[[[abc]]]', "'a''!A1", "[a']"])(
    '%s, opened and not closed, takes all that follows',
    (open) => expect(lex(`8+${open}+A1`).map(short)).toEqual([8, 'sign', 'unknown']),
  );
});
