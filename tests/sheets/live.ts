import type { ICellData } from '@univerjs/core';
import type { BookCell, BookSheet } from '../../src/book/book';
import { usedArea } from '../../src/book/cells';
import { address } from '../../src/formula/address';
import type { SheetValues } from '../../src/hosts/command/sheetValues';
import { openedBook } from './openedBook';
import { typedData } from './typedData';

const keyOf = ({ row, column }: BookCell): string => `${row},${column}`;

/** What has to be alike for one sheet to become another by typing alone. */
const shapeOf = (sheet: BookSheet): string => JSON.stringify([sheet.name, usedArea(sheet), sheet.tables]);

interface Open {
  readonly shape: string;
  readonly book: Awaited<ReturnType<typeof openedBook>>;
  cells: ReadonlyMap<string, BookCell>;
}
const open = new Map<string, Open>();

const cellsOf = (sheet: BookSheet): ReadonlyMap<string, BookCell> =>
  new Map(sheet.cells.map((cell) => [keyOf(cell), cell]));

/** The sheet as it stands open, or opened. */
async function openSheet(sheet: BookSheet): Promise<Open> {
  const shape = shapeOf(sheet);
  const before = open.get(sheet.name);
  if (before?.shape === shape) return before;
  before?.book.dispose();
  const now = { shape, book: await openedBook([sheet]), cells: cellsOf(sheet) };
  open.set(sheet.name, now);
  return now;
}

/** Types into the cells that are to hold something else, all at once: the grid looks all formulas over whenever something is typed. */
function typeOver({ book, cells }: Open, sheet: BookSheet): void {
  const wanted = cellsOf(sheet);
  const typed: Record<number, Record<number, ICellData>> = {};
  const type = (row: number, column: number, data: ICellData) => ((typed[row] ??= {})[column] = data);
  for (const [key, cell] of wanted) {
    const was = cells.get(key);
    if (was?.formula !== cell.formula || was?.value !== cell.value)
      type(cell.row, cell.column, typedData(cell));
  }
  for (const [key, { row, column }] of cells)
    if (!wanted.has(key)) type(row, column, typedData({ value: null }));
  if (Object.keys(typed).length === 0) return;
  const { rows, columns } = usedArea(sheet);
  book.workbook.getSheetByName(sheet.name)?.getRange(0, 0, rows, columns).setValues(typed);
}

/** What was calculated, by what was typed: many a test begins with the demo job. */
const known = new Map<string, SheetValues>();

/**
 * The values of a sheet. It stays open, so that the next one that differs from it in what is typed need not be read anew; that
 * also is what a person does.
 */
export async function liveValues(sheet: BookSheet): Promise<SheetValues> {
  const typed = JSON.stringify([sheet.name, sheet.tables, sheet.cells]);
  const before = known.get(typed);
  if (before) return before;
  const now = await openSheet(sheet);
  typeOver(now, sheet);
  now.cells = cellsOf(sheet);
  await now.book.calculate();
  const { rows, columns } = usedArea(sheet);
  const values = now.book.read(sheet.name, `A1:${address({ row: rows - 1, column: columns - 1 })}`);
  const valueAt: SheetValues = (row, column) => values[row]?.[column] ?? null;
  known.set(typed, valueAt);
  return valueAt;
}
