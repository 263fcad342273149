import { type IWorksheetData, LocaleType } from '@univerjs/core';
import { LexerTreeBuilder } from '@univerjs/engine-formula';
import { cellError, isCellError } from '../../cells/errors';
import { headless, type Value } from '../workbench/engine/headless';
import { type Refused, refusal } from './sentences';

export interface Calculated {
  /** As it was given. */
  readonly formula: string;
  readonly value: Value | Value[][];
  /** One for each cell that holds an error, every one with a sentence. */
  readonly refusals: readonly Refused[];
}

/**
 * The formula's cell lies right of every column a formula can name, so that a reference meets an empty cell and not
 * the formula itself; and it has all rows of a sheet below it to spill over.
 */
const CELL = { a1: 'XFE1', column: 16_384 };
const ROOM = { rowCount: 1_048_576, columnCount: 2 * 16_384 };

const SYNTAX = cellError(
  '#VALUE!',
  'This is not a whole formula: check its brackets, commas, signs and quotation marks.',
);
const asTyped = (formula: string): string => `=${formula.trim().replace(/^=/, '')}`;
const isWhole = (formula: string): boolean =>
  formula !== '=' && typeof new LexerTreeBuilder().treeBuilder(formula) !== 'string';

/** Calculates each formula on a sheet of its own. */
export async function calculate(formulas: readonly string[]): Promise<Calculated[]> {
  const names = formulas.map((_, i) => `Formula ${i + 1}`);
  const sheets = formulas.map((formula, i): Partial<IWorksheetData> & { id: string } => ({
    id: `formula-${i}`,
    name: names[i] as string,
    ...ROOM,
    cellData: { 0: { [CELL.column]: { f: asTyped(formula) } } },
  }));
  const book = headless({
    id: 'formulas',
    name: 'Formulas',
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: sheets.map(({ id }) => id),
    sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
  });
  await book.calculate();
  const results = formulas.map((formula, i): Calculated => {
    const cells = isWhole(asTyped(formula)) ? book.answer(names[i] as string, CELL.a1) : [[SYNTAX]];
    const value = cells.length === 1 && cells[0]?.length === 1 ? (cells[0][0] as Value) : cells;
    const errors = cells.flatMap((row) => row.filter(isCellError));
    return { formula, value, refusals: errors.map((error) => refusal(formula, error)) };
  });
  book.dispose();
  return results;
}
