import { LexerTreeBuilder } from '@univerjs/engine-formula';
import { expect, test } from 'vitest';
import '../../../src/engine/mends/quotes';

/** What stands in a formula that is moved two columns and a row. */
const moved = (formula: string) => new LexerTreeBuilder().moveFormulaRefOffset(formula, 2, 1);

test.each([
  ['=A1&"6"" dish"', '=C2&"6"" dish"'],
  ['=IF(A1="","""",B$1)', '=IF(C2="","""",D$1)'],
  ['=A1&"two\nlines"&B1', '=C2&"two\nlines"&D2'],
  ['=A1&"a\r\n""b"""', '=C2&"a\r\n""b"""'],
  ['={"a""b",1}&A1', '={"a""b",1}&C2'],
  ['=\'6" dish\'!A1&""""', '=\'6" dish\'!C2&""""'],
  ['=SUM(A1:B2)*$A$1', '=SUM(C2:D3)*$A$1'],
])('the texts of %j are the same when it is moved', (formula, after) => {
  expect(moved(formula)).toBe(after);
  // what the library keeps of a formula is the same the second time
  expect(moved(formula)).toBe(after);
});
