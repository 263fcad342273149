import { CellValueType, type ICellData, LocaleType } from '@univerjs/core';
import { address } from '../../formula/address';
import { isCellError } from '../../formula/errors';
import type { Area } from '../../formula/area';
import type { BookCell, BookSheet } from '../../book/book';
import { usedArea } from '../../book/cells';
import { headless, type EngineValue } from '../../engine/headless';

/** What each cell holds, by row and column. */
export type SheetValues = (row: number, column: number) => EngineValue;

const range = ({ row, column, rows, columns }: Area) => ({
  startRow: row,
  startColumn: column,
  endRow: row + rows - 1,
  endColumn: column + columns - 1,
});

/** A text says that it is one: the engine reads "1/60" as a date otherwise. */
function stored({ formula, value }: Pick<BookCell, 'formula' | 'value'>): ICellData {
  if (formula !== undefined) return { f: formula };
  if (typeof value === 'string') return { v: value, t: CellValueType.STRING };
  return { v: isCellError(value) ? value.error : value };
}

/** Calculates the formulas of one sheet. */
export async function sheetValues(sheet: BookSheet): Promise<SheetValues> {
  const { rows, columns } = usedArea(sheet);
  const cellData: Record<number, Record<number, ICellData>> = {};
  for (const cell of sheet.cells) (cellData[cell.row] ??= {})[cell.column] = stored(cell);
  const book = headless({
    id: 'book',
    name: sheet.name,
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: ['sheet'],
    sheets: {
      sheet: {
        id: 'sheet',
        name: sheet.name,
        rowCount: rows,
        columnCount: columns,
        cellData,
      },
    },
  });
  for (const { name, area: where } of sheet.tables)
    await book.workbook.addTable('sheet', name, range(where), name);
  await book.calculate();
  const last = address({ row: rows - 1, column: columns - 1 });
  const values = book.read(sheet.name, `A1:${last}`);
  book.dispose();
  return (row, column) => values[row]?.[column] ?? null;
}
