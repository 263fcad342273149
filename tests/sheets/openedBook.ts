import { type ICellData, LocaleType } from '@univerjs/core';
import type { BookCell, BookSheet } from '../../src/book/book';
import { usedArea } from '../../src/book/cells';
import { gridRange } from '../../src/engine/gridRange';
import { headless } from '../../src/engine/headless';
import { typedData } from './typedData';

/** A sheet to open. Further cells may stand beside it. */
type Opened = Pick<BookSheet, 'name' | 'tables'> & {
  readonly cells: readonly Pick<BookCell, 'row' | 'column' | 'value' | 'formula'>[];
};

/** Opens sheets as one workbook of the engine, with their tables; nothing is calculated yet. */
export async function openedBook(sheets: readonly Opened[]) {
  const made = sheets.map(({ name, cells }, i) => {
    const cellData: Record<number, Record<number, ICellData>> = {};
    for (const cell of cells) (cellData[cell.row] ??= {})[cell.column] = typedData(cell);
    const { rows, columns } = usedArea({ cells: cells as readonly BookCell[] });
    return { id: String(i), name, rowCount: rows, columnCount: columns, cellData };
  });
  const book = headless({
    name: 'Book',
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: made.map(({ id }) => id),
    sheets: Object.fromEntries(made.map((sheet) => [sheet.id, sheet])),
  });
  for (const [i, { tables }] of sheets.entries())
    for (const { name, area } of tables) await book.workbook.addTable(String(i), name, gridRange(area), name);
  return book;
}
