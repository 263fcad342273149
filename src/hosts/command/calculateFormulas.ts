import type { Book } from '../../book/book';
import { type CellError, cellError, isCellError } from '../../formula/errors';
import { areaIn } from '../../formula/reference';
import { referencesIn } from '../../formula/tree';
import type { EngineValue } from '../../engine/headless';
import { withLimits } from '../../engine/limits';
import { readExpression, Unreadable } from '../../engine/mends/reading/grammar';
import { MOST_ROWS, quotedSheet } from '../../formula/areaText';
import { lex } from '../../formula/lex';
import { at } from '../../exposure/core/at';
import { calculatedBook } from './bookInEngine';
import { type FormulaRefusal, formulaRefusal } from './sentences';
import { usedPart } from './wholeLines';

export interface Calculated {
  /** As it was given. */
  readonly formula: string;
  readonly value: EngineValue | EngineValue[][];
  /** One for each cell that holds an error, every one with a sentence. */
  readonly refusals: readonly FormulaRefusal[];
  /** What is left out of the value. */
  readonly leftOut?: string;
}

/**
 * The formula's cell lies right of every column a formula can name, so that a reference meets an empty cell and not
 * the formula itself; and it has all rows of a sheet below it to spill over.
 */
const CELL = { a1: 'XFE1', column: 16_384 };
const ROOM = { rowCount: MOST_ROWS, columnCount: 2 * CELL.column };

/** The engine goes through every cell that a formula names, empty or not. */
const MOST_CELLS = 10 * MOST_ROWS;
const TOO_WIDE = cellError(
  '#VALUE!',
  'The formula names more cells than ten whole columns have, and here all of them are empty: name fewer.',
);
const asTyped = (formula: string): string => `=${formula.trim().replace(/^=/, '')}`;
/** How many cells a formula names; one that it names by its text or its distance does not count. */
const cellsIn = (formula: string): number =>
  referencesIn(formula)
    .map(areaIn)
    .reduce((sum, area) => sum + (area ? area.rows * area.columns : 0), 0);

/** Why a formula is not given to the engine. */
function refusedUnasked(formula: string): CellError | undefined {
  try {
    readExpression(formula);
  } catch (reason) {
    if (reason instanceof Unreadable) return cellError(reason.code, reason.message);
    throw reason;
  }
  return cellsIn(formula) > MOST_CELLS ? TOO_WIDE : undefined;
}

/** Formulas in one workbook: of many, each may spill over a thousand cells, and the next ones need their room. */
const AT_ONCE = 200;

/** A workbook, and the one of its sheets that formulas are typed on. */
export interface Typed {
  readonly book: Book;
  readonly sheet: string;
}
const NO_BOOK: Typed = { book: { sheets: [], names: [] }, sheet: '' };

/** Calculates each formula on a sheet of its own, or as if it were typed beside the cells of a workbook's sheet. */
export async function calculate(formulas: readonly string[], typed = NO_BOOK): Promise<Calculated[]> {
  const results: Calculated[] = [];
  for (let i = 0; i < formulas.length; i += AT_ONCE)
    results.push(...(await withLimits(() => calculateTogether(formulas.slice(i, i + AT_ONCE), typed))));
  return results;
}

/** What names no sheet means the one that it is typed on. */
const on = (sheet: string, formula: string): string =>
  sheet === ''
    ? formula
    : lex(formula)
        .map(({ kind, raw, before }) =>
          before === undefined && (kind === 'cells' || kind === 'lines')
            ? `${quotedSheet(sheet)}!${raw}`
            : raw,
        )
        .join('');

const UNUSED = 'only as far as there is something in the sheet.';

async function calculateTogether(formulas: readonly string[], { book, sheet }: Typed): Promise<Calculated[]> {
  const nameOf = (i: number): string => `${UNLIKELY}${i + 1}`;
  const parts = formulas.map((formula) => usedPart(formula, book, sheet));
  const asked = formulas.map((formula, i) => parts[i] ?? asTyped(formula));
  const refused = asked.map(refusedUnasked);
  const sheets = formulas.map((formula, i) => ({
    id: `formula-${i}`,
    name: nameOf(i),
    ...ROOM,
    // The engine answers only when it has something to calculate.
    cellData: { 0: { [CELL.column]: { f: refused[i] ? '=0' : on(sheet, asked[i] ?? formula) } } },
  }));
  const calculated = await calculatedBook(book, sheets, sheet);
  const results = formulas.map((formula, i): Calculated => {
    const why = refused[i];
    const cells = why ? [[why]] : calculated.answer(nameOf(i), CELL.a1);
    const [first] = cells;
    const value = cells.length === 1 && first?.length === 1 ? at(first, 0) : cells;
    const errors = cells.flatMap((row) => row.filter(isCellError));
    return {
      formula,
      value,
      refusals: errors.map((error) => formulaRefusal(formula, error)),
      ...(parts[i] === undefined ? {} : { leftOut: UNUSED }),
    };
  });
  calculated.dispose();
  return results;
}

/** Before the number of a formula: no sheet of a person is called that. */
const UNLIKELY = 'Formula\u00a0';
