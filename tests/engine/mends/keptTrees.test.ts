import { hashAlgorithm } from '@univerjs/core';
import {
  type AstTreeBuilder,
  DefinedNamesService,
  generateAstNode,
  type IFormulaCurrentConfigService,
  type Lexer,
  LexerNode,
} from '@univerjs/engine-formula';
import { expect, test } from 'vitest';
import '../../../src/engine/mends/keptTrees';

/** How often the engine has read a formula of the workbook. */
function reader(unitId: string) {
  let count = 0;
  const lexer = { treeBuilder: () => (count++, new LexerNode()) } as unknown as Lexer;
  const builder = {
    parse: () => ({ formula: count, hasDefinedName: () => false }),
  } as unknown as AstTreeBuilder;
  const config = {
    getDirtyDefinedNameMap: () => ({}),
    getExecuteUnitId: () => unitId,
  } as unknown as IFormulaCurrentConfigService;
  return (formula: string): number =>
    (generateAstNode(unitId, formula, lexer, builder, config) as unknown as { formula: number }).formula;
}

test('a formula is read once, and again when a name of the workbook has changed', () => {
  const read = reader('names');
  const formula = `=${'Fee+'.repeat(30)}1`;
  expect([read(formula), read(formula)]).toEqual([1, 1]);
  const names = new DefinedNamesService({} as never);
  names.registerDefinedName('names', { id: 'fee', name: 'Fee', formulaOrRefString: '=2' });
  expect([read(formula), read(formula)]).toEqual([2, 2]);
  names.removeDefinedName('names', 'fee');
  expect(read(formula)).toBe(3);
});

test('two long formulas are two, also where the library counts the same number for them', () => {
  // found by counting for a hundred thousand formulas
  const [one, other] = ['6179086,61394', '5629849,100471'].map(
    (end) => `=SUM(${'A1,'.repeat(25)}${end})`,
  ) as [string, string];
  expect(hashAlgorithm(one)).toBe(hashAlgorithm(other));
  const read = reader('');
  expect([read(one), read(other), read(one)]).toEqual([1, 2, 1]);
});
