import { expect, test } from 'vitest';
import { readXlsx } from '../../src/xlsx/read';
import { writeXlsx } from '../../src/xlsx/write';
import { ALL_TYPED, TYPED } from '../formula/corpus';
import { sheetOf } from './parts';

/** What speaks of another file is left out, its value kept, and no sheet may have a bracket in its name; the name of a file alone may be that of a sheet. */
const OUTSIDE = [
  ...TYPED['other files'].filter((formula) => !formula.startsWith('=Book.xlsx!')),
  "='Set [x'!A1",
];
/** Names of our functions are stored in capitals. */
const inCapitals = (formula: string): string =>
  formula.replace(/\bsweep\.stopdiff\b/gi, (name) => name.toUpperCase());

test('every formula that a person types comes back from a file', async () => {
  const cells = ALL_TYPED.map((formula, row) => ({ row, column: 0, value: 1, formula }));
  const { book, notUnderstood } = await readXlsx(await writeXlsx({ sheets: [sheetOf(cells)], names: [] }));
  const kept = new Map(book.sheets[0]?.cells.map((cell) => [cell.row, cell]));
  expect(ALL_TYPED.map((_, row) => kept.get(row)?.formula)).toEqual(
    ALL_TYPED.map((formula) => (OUTSIDE.includes(formula) ? undefined : inCapitals(formula))),
  );
  expect(OUTSIDE.map((formula) => kept.get(ALL_TYPED.indexOf(formula))?.value)).toEqual(OUTSIDE.map(() => 1));
  expect(notUnderstood).toEqual([
    'Links to other files are left out; what they last gave stays as plain values.',
  ]);
});
