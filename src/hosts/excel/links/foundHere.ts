import { formHere, type Here, sheetsWithForms } from '../../../sheets/links/formHere';
import { type Held, isNamedLike, type TableHere } from '../../../sheets/links/tableHere';
import { SHORT } from '../../../sheets/offeredTemplates';
import { at } from '../../../exposure/core/at';

/** Cells as they are read of a range. */
const cellsOf = ({ formulas, values }: { readonly formulas: unknown; readonly values: unknown }): Held[][] =>
  (formulas as unknown[][]).map((line, r) =>
    line.map((formula, c) => ({
      ...(typeof formula === 'string' && formula.startsWith('=') ? { formula } : {}),
      value: at(at(values as (string | number | boolean)[][], r), c),
    })),
  );

/** The tables and forms of the workbook that templates may know, with all that their cells hold. */
export async function foundHere(context: Excel.RequestContext): Promise<Here> {
  const tables = await tablesHere(context);
  const asked = sheetsWithForms(SHORT, tables).map((form) => ({
    form,
    used: context.workbook.worksheets
      .getItem(form.sheet)
      .getUsedRangeOrNullObject(true)
      .load('formulas,values,rowIndex,columnIndex'),
  }));
  if (asked.length > 0) await context.sync();
  return {
    tables,
    forms: asked.map(({ form, used }) =>
      formHere(form, { at: { row: used.rowIndex, column: used.columnIndex }, rows: cellsOf(used) }),
    ),
  };
}

async function tablesHere(context: Excel.RequestContext): Promise<TableHere[]> {
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
    rows: cellsOf(body),
  }));
}
