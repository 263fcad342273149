import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { ENGINE_FUNCTIONS } from '../../src/engine/natives';
import { CATALOGUE } from '../../src/catalogue';
import { functionName } from '../../src/catalogue/words';
import { functionsIn, ownNames } from '../../src/formula/calls';
import { lex, type Token } from '../../src/formula/lex';
import { placeOf } from '../../src/formula/sheetPlace';
import { ALL_TYPED } from '../formula/corpus';
import { calculated, type TestCell } from './book';

beforeAll(() => {
  vi.spyOn(console, 'warn').mockImplementation(() => {});
  vi.spyOn(console, 'error').mockImplementation(() => {});
});
afterAll(() => vi.restoreAllMocks());

const KNOWN = new Set([...CATALOGUE.map(functionName), ...ENGINE_FUNCTIONS]);

/** Whether all that a formula names is in the workbook of this test: cells of one sheet each, and known functions. */
function isAllThere(formula: string): boolean {
  const tokens = lex(formula);
  const own = ownNames(tokens);
  const isThere = (token: Token): boolean => {
    if (token.kind === 'columns' || token.kind === 'unknown') return false;
    if (token.before === undefined) return token.kind !== 'name' || own.has(token.name.toLowerCase());
    const { isElsewhere, sheets } = placeOf(token.before);
    return ['cells', 'lines'].includes(token.kind) && !isElsewhere && sheets.length === 1;
  };
  return tokens.every(isThere) && functionsIn(tokens).every((name) => KNOWN.has(name));
}

/** What the engine does not know of what every spreadsheet does. */
const NOT_IN_THE_ENGINE: readonly string[] = [
  // the last cell of a sheet of Excel lies outside the sheets of the grid, and these never were cells
  '=XFD1048576', '=XFE1', '=A1048577',
  // an error in the formula itself
  '=#NAME?',
]; // prettier-ignore

test('the engine knows all that formulas name, and nothing that they do not', async () => {
  const formulas = ALL_TYPED.filter(isAllThere);
  expect(formulas.length).toBeGreaterThan(150);
  const sheets = formulas.flatMap((formula) =>
    lex(formula).flatMap(({ before }) => (before === undefined ? [] : placeOf(before).sheets)),
  );
  const ROOM = 20;
  const rows = formulas.flatMap((formula): TestCell[][] => [
    [...Array.from({ length: 20 }, () => null), formula],
    ...Array.from({ length: ROOM - 1 }, () => []),
  ]);
  const book = await calculated({
    Formulas: rows,
    ...Object.fromEntries(
      sheets.map((name) => [
        name,
        [
          [1, 2],
          [3, 4],
        ],
      ]),
    ),
  });
  const unknown = formulas.filter((_, i) =>
    book
      .answer('Formulas', `U${i * ROOM + 1}`)
      .flat()
      .some((value) => typeof value === 'object' && value?.error === '#NAME?'),
  );
  book.dispose();
  expect(unknown).toEqual(NOT_IN_THE_ENGINE);
});
