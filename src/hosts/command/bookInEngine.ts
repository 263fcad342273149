import {
  BooleanNumber,
  CellValueType,
  type ICellData,
  type IWorksheetData,
  LocaleType,
} from '@univerjs/core';
import type { Area } from '../../formula/area';
import { address } from '../../formula/address';
import { MOST_COLUMNS, MOST_ROWS } from '../../formula/areaText';
import { isCellError } from '../../formula/errors';
import { areaIn } from '../../formula/reference';
import { referencesIn } from '../../formula/tree';
import type { Book, BookCell, BookSheet } from '../../book/book';
import { usedArea } from '../../book/cells';
import { legalNames, OF_NAMES } from '../../book/legal/names';
import { BY_HAND } from '../../engine/filter/byHand';
import { gridRange } from '../../engine/gridRange';
import { type EngineValue, headless } from '../../engine/headless';

/** A sheet that stands beside those of a book, with formulas in it alone. */
export type Beside = Partial<IWorksheetData> & { readonly id: string; readonly name: string };

/** A text says that it is one: the engine reads "1/60" as a date otherwise, and one of no letters as nothing. */
function stored({ formula, value }: Pick<BookCell, 'formula' | 'value'>): ICellData {
  if (formula !== undefined) return { f: formula };
  if (value === '') return { v: value, t: CellValueType.FORCE_STRING };
  if (typeof value === 'string') return { v: value, t: CellValueType.STRING };
  if (typeof value === 'boolean') return { v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  return { v: isCellError(value) ? value.error : value };
}

/**
 * The names of a book as a stored workbook holds them: asked to add one, the grid refuses what is called like a function. One
 * that may not be is left out: a formula that spells it means something else.
 */
function storedNames({ names }: Book): Readonly<Record<string, unknown>> {
  const legal = legalNames(
    names.map(({ name }) => name),
    OF_NAMES,
  );
  return Object.fromEntries(
    names.flatMap(({ name, formula }, i) =>
      legal[i]?.why === undefined
        ? [[`name-${i}`, { id: `name-${i}`, name, formulaOrRefString: formula }]]
        : [],
    ),
  );
}

const idOf = (index: number): string => `sheet-${index}`;

/** Room below and right of what a book holds and its formulas name, for what they find by counting, and for what spills. */
const ROOM = { rows: 10_000, columns: 500 } as const;

/** As many rows and columns as all formulas of a book can need: the engine goes through every row of a whole column. */
function sizeOf({ sheets, names }: Book): { readonly rowCount: number; readonly columnCount: number } {
  let [rows, columns] = [0, 0];
  const reach = (area: Area): void => {
    // A whole column or row reaches as far as there is something.
    if (area.rows < MOST_ROWS) rows = Math.max(rows, area.row + area.rows);
    if (area.columns < MOST_COLUMNS) columns = Math.max(columns, area.column + area.columns);
  };
  const formulas = [
    ...names.map(({ formula }) => formula),
    ...sheets.flatMap(({ cells }) => cells.flatMap(({ formula }) => formula ?? [])),
  ];
  for (const sheet of sheets) {
    reach(usedArea(sheet));
    for (const { spill } of sheet.cells) if (spill) reach(spill);
  }
  for (const reference of formulas.flatMap(referencesIn)) {
    const area = areaIn(reference);
    if (area) reach(area);
  }
  return {
    rowCount: Math.min(MOST_ROWS, rows + ROOM.rows),
    columnCount: Math.min(MOST_COLUMNS, columns + ROOM.columns),
  };
}

/** A book with all of its formulas calculated. */
export interface CalculatedBook {
  valuesOf(sheet: BookSheet): (row: number, column: number) => EngineValue;
  /** All that a formula gives: its cell, or the cells that it spills over. */
  answer(sheetName: string, a1: string): EngineValue[][];
  /** Whether formulas go round in a circle. */
  readonly isCircular: boolean;
  dispose(): void;
}

/** @param typedOn - the sheet of the book that formulas beside it mean where they name none */
export async function calculatedBook(
  book: Book,
  beside: readonly Beside[] = [],
  typedOn?: string,
): Promise<CalculatedBook> {
  const size = sizeOf(book);
  const sheets = book.sheets.map((sheet, i): Beside => {
    const cellData: Record<number, Record<number, ICellData>> = {};
    for (const cell of sheet.cells) (cellData[cell.row] ??= {})[cell.column] = stored(cell);
    const hd = BooleanNumber.TRUE;
    const rowData = Object.fromEntries([
      ...(sheet.filteredRows ?? []).map((row) => [row, { hd }] as const),
      ...(sheet.hiddenRows ?? []).map((row) => [row, { hd, custom: BY_HAND }] as const),
    ]);
    return { id: idOf(i), name: sheet.name, ...size, rowData, cellData };
  });
  const all = [...sheets, ...beside];
  const isBeside = new Set(beside.map(({ id }) => id));
  const home = sheets.find(({ name }) => name === typedOn)?.id;
  const opened = headless(
    {
      name: 'Book',
      locale: LocaleType.EN_US,
      styles: {},
      sheetOrder: all.map(({ id }) => id),
      sheets: Object.fromEntries(all.map((sheet) => [sheet.id, sheet])),
      resources: [{ name: 'SHEET_DEFINED_NAME_PLUGIN', data: JSON.stringify(storedNames(book)) }],
    },
    (id) => (isBeside.has(id) ? (home ?? id) : id),
  );
  for (const [i, sheet] of book.sheets.entries())
    for (const { name, area } of sheet.tables)
      await opened.workbook.addTable(idOf(i), name, gridRange(area), `${idOf(i)}-${name}`);
  await opened.calculate();
  return {
    valuesOf(sheet) {
      const { rows, columns } = usedArea(sheet);
      if (rows === 0 || columns === 0) return () => null;
      const last = address({ row: rows - 1, column: columns - 1 });
      const values = opened.read(sheet.name, `A1:${last}`);
      return (row, column) => values[row]?.[column] ?? null;
    },
    answer: opened.answer,
    isCircular: opened.isCircular(),
    dispose: opened.dispose,
  };
}
