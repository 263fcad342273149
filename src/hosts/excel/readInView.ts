import type { BookCell, BookTable } from '../../book/book';
import { errorFromText } from '../../formula/errors';
import type { NamedSheet, SheetRead } from '../../sheets/sheetRead';
import { excelRange } from './ranges';
import { sheetInView, type SheetWithTables } from './sheetInView';
import { AREA, areaOfRange, slices } from './usedCells';

/** What of a sheet is in use: known after the next sync. */
export const askUsed = (sheet: Excel.Worksheet): Excel.Range =>
  sheet.getUsedRangeOrNullObject(true).load(AREA);

async function cellsOf(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  used: Excel.Range,
): Promise<BookCell[]> {
  if (used.isNullObject) return [];
  const parts = slices(areaOfRange(used)).map((area) => ({
    area,
    range: excelRange(sheet, area).load('values'),
  }));
  await context.sync();
  return parts.flatMap(({ area, range }) =>
    range.values.flatMap((line: unknown[], r) =>
      line.map((value, c) => ({
        row: area.row + r,
        column: area.column + c,
        value: errorFromText(value) as BookCell['value'],
      })),
    ),
  );
}

/** What a sheet shows, and where its tables lie. Name, tables and what is in use are loaded. */
export async function readUsed(
  context: Excel.RequestContext,
  { sheet, tables: { items } }: SheetWithTables,
  used: Excel.Range,
): Promise<NamedSheet> {
  const bodies = items.map((table) => ({
    name: table.name,
    range: table.getDataBodyRange().load(AREA),
  }));
  const cells = await cellsOf(context, sheet, used);
  const texts = new Map(cells.map(({ row, column, value }) => [`${row},${column}`, String(value)]));
  const tables = bodies.map(({ name, range }): BookTable => {
    const body = areaOfRange(range);
    const area = { ...body, row: body.row - 1, rows: body.rows + 1 };
    const headings = Array.from(
      { length: area.columns },
      (_, i) => texts.get(`${area.row},${area.column + i}`) ?? '',
    );
    return { name, area, columns: headings.map((heading) => ({ name: heading })) };
  });
  return { name: sheet.name, cells, tables };
}

/** The same, where name and tables are loaded. */
export async function readSheet(context: Excel.RequestContext, found: SheetWithTables): Promise<NamedSheet> {
  const used = askUsed(found.sheet);
  await context.sync();
  return readUsed(context, found, used);
}

/** Of the sheets that are wanted for the headings of their tables the one in view, or else the first; undefined where none is. */
export async function readInView(
  context: Excel.RequestContext,
  isWanted: (sheet: Pick<SheetRead, 'tables'>) => boolean,
): Promise<NamedSheet | undefined> {
  const found = await sheetInView(context, isWanted);
  return found && readSheet(context, found);
}
