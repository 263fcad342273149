import { describe, expect, test } from 'vitest';
import { type After, followed, inserted, moved, removed } from '../../src/formula/followEdit';
import { ALL_TYPED, HOSTILE } from './corpus';

const rows = (at: number, count: number) => ({ axis: 'rows', at: at - 1, count }) as const;
const columns = (letter: string, count: number) =>
  ({ axis: 'columns', at: letter.charCodeAt(0) - 65, count }) as const;
const everywhere = (): boolean => true;

// what a spreadsheet makes of each, from its documentation and common practice; the addresses are counted by hand
describe('a formula reads, where', () => {
  test.each<[edit: string, after: After, formula: string, wanted: string]>([
    ['a row comes in above', inserted(rows(27, 1)), '=$J$27>0.05', '=$J$28>0.05'],
    ['a row comes in below', inserted(rows(28, 1)), '=$J$27>0.05', '=$J$27>0.05'],
    ['two rows come in between', inserted(rows(5, 2)), '=SUM(A$1:$B10)', '=SUM(A$1:$B12)'],
    ['a row comes in right below', inserted(rows(11, 1)), '=SUM(A1:A10)', '=SUM(A1:A10)'],
    ['a row comes in at its first', inserted(rows(1, 1)), '=SUM(A1:A10)', '=SUM(A2:A11)'],
    ['a row comes in, of columns', inserted(rows(1, 1)), '=SUM(A:$C)', '=SUM(A:$C)'],
    ['a column comes in', inserted(columns('B', 1)), '=A1+$B$2+C3&"B2"', '=A1+$C$2+D3&"B2"'],
    ['a column comes in, of columns', inserted(columns('B', 1)), '=SUM(A:$C)+SUM(2:3)', '=SUM(A:$D)+SUM(2:3)'],
    ['a row comes in, of rows', inserted(rows(3, 2)), '=SUM($2:$4)', '=SUM($2:$6)'],
    ['its row goes', removed(rows(27, 1)), '=$J$27>J28', '=#REF!>J27'],
    ['rows go within', removed(rows(4, 3)), '=SUM(A1:A10)', '=SUM(A1:A7)'],
    ['its first rows go', removed(rows(1, 3)), '=SUM(A2:A10)', '=SUM(A1:A7)'],
    ['its last rows go', removed(rows(9, 5)), '=SUM(A2:A10)', '=SUM(A2:A8)'],
    ['all its rows go', removed(rows(2, 9)), '=SUM(Plan!A2:A10)', '=SUM(Plan!#REF!)'],
    ['a column goes', removed(columns('B', 1)), '=SUM($A:$C)+SUM(B:B)+C1', '=SUM($A:$B)+SUM(#REF!)+B1'],
    ['its row goes up', moved(rows(9, 1), 1), '=A9+A3+A10', '=A2+A4+A10'],
    ['its row goes down', moved(rows(2, 1), 7), '=A2+A3+A10+A7', '=A7+A2+A10+A6'],
    ['rows go out of it', moved(rows(4, 2), 19), '=SUM(A1:A10)', '=SUM(A1:A8)'],
    ['rows come into it', moved(rows(14, 2), 4), '=SUM(A1:A10)', '=SUM(A1:A12)'],
    ['corners are the other way round', inserted(rows(5, 1)), '=SUM(B$9:$A2)', '=SUM($A2:B$10)'],
    ['it spills', inserted(rows(1, 1)), '=SUM(A1#)', '=SUM(A2#)'],
    ['it would leave the sheet', inserted(rows(1, 1)), '=A1048576+SUM(A9:A1048576)', '=#REF!+SUM(A10:A1048576)'],
  ])('%s', (_, after, formula, wanted) => expect(followed(formula, after, everywhere)).toBe(wanted)); // prettier-ignore

  test('the rows come into another sheet', () => {
    const isPlan = (before?: string) => before === 'Plan!';
    expect(followed('=A5+Plan!A5', inserted(rows(1, 1)), isPlan)).toBe('=A5+Plan!A6');
  });
});

test.each([...ALL_TYPED, ...HOSTILE])('%s is left alone by rows beyond it', (formula) =>
  expect(followed(formula, inserted(rows(1_048_577, 1)), everywhere)).toBe(formula),
);
