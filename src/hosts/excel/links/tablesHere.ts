import type { TableHere } from '../../../sheets/links/tableHere';
import { isNamedLike } from '../../../sheets/links/tableHere';
import { SHORT } from '../../../sheets/offeredTemplates';
import { at } from '../../../exposure/core/at';

/** The tables of the workbook that templates may know, with all that their cells hold. */
export async function tablesHere(context: Excel.RequestContext): Promise<TableHere[]> {
  const { tables, worksheets } = context.workbook;
  tables.load('items/name');
  worksheets.load('items/name');
  await context.sync();
  const known = new Set(tables.items.map(({ name }) => name).filter((name) => isNamedLike(name, SHORT)));
  for (const { tables: own } of worksheets.items) own.load('items/name');
  await context.sync();
  const asked = worksheets.items.flatMap((sheet) =>
    sheet.tables.items
      .filter(({ name }) => known.has(name))
      .map((table) => ({
        name: table.name,
        sheet: sheet.name,
        head: table.getHeaderRowRange().load('values,rowIndex,columnIndex'),
        body: table.getDataBodyRange().load('formulas,values'),
      })),
  );
  await context.sync();
  return asked.map(({ name, sheet, head, body }) => ({
    name,
    sheet,
    at: { row: head.rowIndex, column: head.columnIndex },
    headings: at(head.values as unknown[][], 0).map(String),
    rows: (body.formulas as unknown[][]).map((line, r) =>
      line.map((formula, c) => ({
        ...(typeof formula === 'string' && formula.startsWith('=') ? { formula } : {}),
        value: at(at(body.values as (string | number | boolean)[][], r), c),
      })),
    ),
  }));
}
