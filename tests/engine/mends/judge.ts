import { parseAddress } from '../../../src/formula/address';
import { headless } from '../../../src/engine/headless';
import { snapshot, type TestCell } from '../book';
import { unmended } from './unmended';

export type Answer = number | string | boolean | null | { readonly error: string };
/** A formula, and what it is to give with the cells that it reads: a value, or rows of them where it spills. */
export interface Case {
  readonly formula: string;
  readonly expected: Answer | readonly (readonly Answer[])[];
  readonly cells?: Readonly<Record<string, TestCell>>;
}

/** Where the formula stands: right of all that a case reads, and below it. */
const PLACE = { row: 29, column: 27, a1: 'AB30' };

function rowsFor({ formula, cells = {} }: Case): TestCell[][] {
  const rows = Array.from({ length: PLACE.row + 1 }, () => Array<TestCell>(PLACE.column + 1).fill(null));
  const put = (row: number, column: number, cell: TestCell) => {
    (rows[row] as TestCell[])[column] = cell;
  };
  for (const [a1, cell] of Object.entries(cells)) {
    const place = parseAddress(a1);
    if (!place) throw new Error(`${a1} is no cell.`);
    put(place.row, place.column, cell);
  }
  put(PLACE.row, PLACE.column, formula);
  return rows;
}

export const asRows = (answer: Case['expected']): unknown[][] =>
  Array.isArray(answer) ? (answer as unknown[][]) : [[answer]];
/** Twelve digits of a number count, and of an error its code. */
export const rounded = (rows: readonly (readonly unknown[])[]): unknown[][] =>
  rows.map((row) =>
    row.map((cell) => {
      if (typeof cell === 'number') return Number(cell.toPrecision(12));
      return typeof cell === 'object' && cell !== null ? { error: (cell as { error: string }).error } : cell;
    }),
  );

/** What each formula gives, each on a sheet of its own, with all that is mended. */
export async function mendedAnswers(cases: readonly Case[]): Promise<unknown[][][]> {
  const book = headless(snapshot(Object.fromEntries(cases.map((each, i) => [`Case${i}`, rowsFor(each)]))));
  await book.calculate();
  const given = cases.map((_, i) => rounded(book.answer(`Case${i}`, PLACE.a1)));
  book.dispose();
  return given;
}

/** What the engine gives by itself, in as many cells as were expected. */
export async function plainAnswers(cases: readonly Case[]): Promise<unknown[][][]> {
  const sheets = await unmended(cases.map(rowsFor));
  return cases.map(({ expected }, i) =>
    rounded(
      asRows(expected).map((row, r) =>
        row.map((_, c) => sheets[i]?.[PLACE.row + r]?.[PLACE.column + c] ?? null),
      ),
    ),
  );
}
