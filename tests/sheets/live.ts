import { CellValueType, type ICellData, LocaleType } from '@univerjs/core';
import type { BookCell, BookSheet } from '../../src/book/book';
import { usedArea } from '../../src/book/cells';
import { headless } from '../../src/engine/headless';
import { address } from '../../src/formula/address';
import { isCellError } from '../../src/formula/errors';
import type { SheetValues } from '../../src/hosts/command/sheetValues';

/** As data that leaves nothing of what the cell held before. */
export function typedData({
  formula,
  value,
}: {
  readonly formula?: string | undefined;
  readonly value: BookCell['value'];
}): ICellData {
  if (formula !== undefined) return { f: formula, v: null, t: null };
  if (value === null) return { v: null, t: null, f: null };
  if (typeof value === 'string') return { v: value, t: CellValueType.STRING, f: null };
  if (typeof value === 'boolean') return { v: value ? 1 : 0, t: CellValueType.BOOLEAN, f: null };
  return { v: isCellError(value) ? value.error : value, t: null, f: null };
}

const keyOf = ({ row, column }: BookCell): string => `${row},${column}`;

/** What has to be alike for one sheet to become another by typing alone. */
const shapeOf = (sheet: BookSheet): string => JSON.stringify([sheet.name, usedArea(sheet), sheet.tables]);

let count = 0;

async function opened(sheet: BookSheet) {
  const { rows, columns } = usedArea(sheet);
  const cellData: Record<number, Record<number, ICellData>> = {};
  for (const cell of sheet.cells) (cellData[cell.row] ??= {})[cell.column] = typedData(cell);
  const book = headless({
    // workbooks that stand open at one time must not be called alike: the engine keeps formulas by that
    id: `live-${++count}`,
    name: 'Book',
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: ['sheet'],
    sheets: { sheet: { id: 'sheet', name: sheet.name, rowCount: rows, columnCount: columns, cellData } },
  });
  for (const { name, area } of sheet.tables)
    await book.workbook.addTable(
      'sheet',
      name,
      {
        startRow: area.row,
        startColumn: area.column,
        endRow: area.row + area.rows - 1,
        endColumn: area.column + area.columns - 1,
      },
      name,
    );
  return book;
}

interface Open {
  readonly shape: string;
  readonly book: Awaited<ReturnType<typeof opened>>;
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
  const now = { shape, book: await opened(sheet), cells: cellsOf(sheet) };
  open.set(sheet.name, now);
  return now;
}

/** Types into the cells that are to hold something else. */
function typeOver({ book, cells }: Open, sheet: BookSheet): void {
  const wanted = cellsOf(sheet);
  const grid = book.workbook.getSheetByName(sheet.name);
  const type = (row: number, column: number, data: ICellData) => grid?.getRange(row, column).setValue(data);
  for (const [key, cell] of wanted) {
    const was = cells.get(key);
    if (was?.formula !== cell.formula || JSON.stringify(was?.value) !== JSON.stringify(cell.value))
      type(cell.row, cell.column, typedData(cell));
  }
  for (const [key, { row, column }] of cells)
    if (!wanted.has(key)) type(row, column, typedData({ value: null }));
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
