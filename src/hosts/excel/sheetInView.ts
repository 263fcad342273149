import type { BookTable } from '../../book/book';

/** A sheet of the workbook, and its tables. */
export interface SheetWithTables {
  readonly sheet: Excel.Worksheet;
  readonly tables: Excel.TableCollection;
}

/** Of the sheets that are wanted for the names of their tables the one in view, or else the first; undefined where none is. */
export async function sheetInView(
  context: Excel.RequestContext,
  isWanted: (sheet: { readonly tables: readonly BookTable[] }) => boolean,
): Promise<SheetWithTables | undefined> {
  const { worksheets } = context.workbook;
  worksheets.load('items/name');
  const inView = worksheets.getActiveWorksheet().load('name');
  await context.sync();
  const sheets = worksheets.items.map((sheet) => ({ sheet, tables: sheet.tables.load('items/name') }));
  await context.sync();
  const all = sheets.filter(({ tables }) =>
    isWanted({ tables: tables.items.map(({ name }) => ({ name }) as BookTable) }),
  );
  return all.find(({ sheet }) => sheet.name === inView.name) ?? all[0];
}
