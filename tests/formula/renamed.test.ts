import { expect, test } from 'vitest';
import { renamed, type Renames } from '../../src/formula/renamed';
import { ALL_TYPED } from './corpus';

const of =
  (table: Readonly<Record<string, string>>) =>
  (name: string): string | undefined =>
    table[name];
const RENAMES: Renames = {
  sheet: of({ Plan: "Ann's plan", 'a:b': 'a-b', '[x] y': '-x- y', Jan: 'January' }),
  name: of({ Kit: 'Kit_2', Rate: 'Rate_2' }),
  column: (table, column) =>
    table === 'Kit' || table === undefined ? of({ 'Ws #1': 'Energy [Ws]' })(column) : undefined,
};

test.each([
  ['=Plan!A1+1', "='Ann''s plan'!A1+1"],
  ["='Plan'!$A$1:$B$2", "='Ann''s plan'!$A$1:$B$2"],
  ["='a:b'!A1", "='a-b'!A1"],
  ["='[x] y'!A1", "='-x- y'!A1"],
  ['=SUM(Jan:Dec!A1)', "=SUM('January:Dec'!A1)"],
  ["=SUM('Jan:Plan'!A:A)", "=SUM('January:Ann''s plan'!A:A)"],
  ['=[Book.xlsx]Plan!A1', '=[Book.xlsx]Plan!A1'],
  ['=Planned!A1&"Plan!A1"', '=Planned!A1&"Plan!A1"'],
  ['=Plan!#REF!', "='Ann''s plan'!#REF!"],
  ['=Rate*2+Plan!Rate', "=Rate_2*2+'Ann''s plan'!Rate_2"],
  ['=LET(Rate,2,Rate*3)', '=LET(Rate,2,Rate*3)'],
  ["=SUM(Kit[Ws '#1])", "=SUM(Kit_2[Energy '[Ws']])"],
  ["=[@Ws '#1]", "=[@[Energy '[Ws']]]"],
  ["=[@[Ws '#1]]", "=[@[Energy '[Ws']]]"],
  ["=Kit[[#This Row],[Ws '#1]]", "=Kit_2[[#This Row],[Energy '[Ws']]]"],
  ['=Kit[#All]', '=Kit_2[#All]'],
  ["=Other[Ws '#1]", "=Other[Ws '#1]"],
])('%s reads %s afterwards', (before, after) => expect(renamed(before, RENAMES)).toBe(after));

test('every formula stays as it is where nothing is renamed', () => {
  const nothing = (): undefined => undefined;
  const kept = ALL_TYPED.map((formula) =>
    renamed(formula, { sheet: nothing, name: nothing, column: nothing }),
  );
  expect(kept).toEqual(ALL_TYPED);
});
