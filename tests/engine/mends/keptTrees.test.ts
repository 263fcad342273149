import { hashAlgorithm } from '@univerjs/core';
import {
  type AstTreeBuilder,
  DefinedNamesService,
  generateAstNode,
  type IFormulaCurrentConfigService,
  Lexer,
  LexerNode,
  SuperTableService,
} from '@univerjs/engine-formula';
import { expect, test, vi } from 'vitest';
import '../../../src/engine/mends/keptTrees';
import { gridRange } from '../../../src/engine/gridRange';
import { openedBook } from '../../sheets/openedBook';

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

test('and again when a table of the workbook has changed, or is gone', () => {
  const read = reader('tables');
  const formula = '=SUM(Fees[Fee])';
  expect([read(formula), read(formula)]).toEqual([1, 1]);
  const tables = new SuperTableService();
  tables.registerTable('tables', 'Fees', {} as never);
  expect([read(formula), read(formula)]).toEqual([2, 2]);
  tables.remove('tables', 'Fees');
  expect([read(formula), read(formula)]).toEqual([3, 3]);
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

test('the formulas that name a table are read once for all of its rows, and again where there is another table', async () => {
  const [fees, rates] = ['=SUM(Fees[Fee])*Fees[[#This Row],[Fee]]', '=SUM(Rates[Rate])'];
  const cells = [
    ...['Fee', 2, 3, 4].map((value, row) => ({ row, column: 0, value })),
    ...[1, 2, 3].map((row) => ({ row, column: 1, value: null, formula: fees })),
    ...['Rate', 5, 6].map((value, row) => ({ row, column: 2, value })),
    { row: 0, column: 3, value: null, formula: rates },
  ];
  const area = { row: 0, column: 0, rows: 4, columns: 1 };
  const book = await openedBook([
    { name: 'Sheet', cells, tables: [{ name: 'Fees', area, columns: [{ name: 'Fee' }] }] },
  ]);
  const readings = vi.spyOn(Lexer.prototype, 'treeBuilder');
  const answers = async () => {
    readings.mockClear();
    await book.calculate();
    const read = readings.mock.calls.map(([formula]) => formula).sort();
    return [book.read('Sheet', 'B2:B4').flat(), book.read('Sheet', 'D1')[0]?.[0], read];
  };
  const none = expect.objectContaining({ error: expect.any(String) });
  // 2 + 3 + 4, times each
  expect(await answers()).toEqual([[18, 27, 36], none, [fees, rates]]);
  expect(await answers()).toEqual([[18, 27, 36], none, []]);
  await book.workbook.addTable('0', 'Rates', gridRange({ row: 0, column: 2, rows: 3, columns: 1 }), 'Rates');
  expect(await answers()).toEqual([[18, 27, 36], 5 + 6, [fees, rates]]);
  readings.mockRestore();
  book.dispose();
});
