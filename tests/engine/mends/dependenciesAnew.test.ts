import { FormulaDependencyGenerator } from '@univerjs/engine-formula';
import { expect, test, vi } from 'vitest';
import { calculated } from '../book';

/** Counts, after each calculation, how often the engine has noted that a formula reads an area. */
function countNoted() {
  const counts: number[] = [];
  const prototype = FormulaDependencyGenerator.prototype as unknown as {
    _getUpdateTreeListAndMakeDependency(this: Generator): unknown;
  };
  interface Noted {
    readonly _dependencyRTreeCache: { readonly _tree: Map<string, Map<string, { all(): unknown[] }>> };
  }
  interface Generator {
    readonly _dependencyManagerService: Noted;
  }
  const { _getUpdateTreeListAndMakeDependency: update } = prototype;
  const spy = vi.spyOn(prototype, '_getUpdateTreeListAndMakeDependency').mockImplementation(function (
    this: Generator,
  ) {
    const trees = [...this._dependencyManagerService._dependencyRTreeCache._tree.values()];
    counts.push(trees.flatMap((sheets) => [...sheets.values()]).flatMap((tree) => tree.all()).length);
    return update.call(this);
  });
  return { counts, end: () => spy.mockRestore() };
}

test('however often a cell is typed, the engine notes once what each formula reads', async () => {
  const book = await calculated({ Data: [[1, '=SUM(A1:A2)'], [2, '=SUM(A1:A3)'], [3]] });
  const { counts, end } = countNoted();
  const sheet = book.workbook.getSheetByName('Data');
  for (const value of [5, 6, 7]) {
    sheet?.getRange('A1').setValue(value);
    await book.calculateChanged();
  }
  end();
  // one area a formula
  expect(counts).toEqual([2, 2, 2]);
  expect(book.read('Data', 'B1:B2')).toEqual([[9], [12]]);
  book.dispose();
});

test('a formula that says something else is calculated with what it reads now', async () => {
  const book = await calculated({ Data: [[1, '=SUM(A1:A2)'], [2], [3]] });
  const sheet = book.workbook.getSheetByName('Data');
  sheet?.getRange('B1').setValue({ f: '=SUM(A2:A3)' });
  await book.calculateChanged();
  expect(book.read('Data', 'B1')).toEqual([[5]]);
  sheet?.getRange('A3').setValue(10);
  await book.calculateChanged();
  expect(book.read('Data', 'B1')).toEqual([[12]]);
  sheet?.getRange('A2').setValue({ f: '=B2' });
  sheet?.getRange('B2').setValue(4);
  await book.calculateChanged();
  expect(book.read('Data', 'A2:B2')).toEqual([[4, 4]]);
  expect(book.read('Data', 'B1')).toEqual([[14]]);
  book.dispose();
});
