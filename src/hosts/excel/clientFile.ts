import type { Outcome } from '../../pane/host';
import { errorFromText } from '../../formula/errors';
import type { BookCell } from '../../book/book';
import { clientPageNotReady, LOOK_IT_OVER, NO_CLIENT_PAGE, noSheet } from '../../pane/sentences';
import { asLaid, clientBook, isClientPage } from '../../sheets/clientPage';
import { planAlone } from '../../sheets/makePlan';
import type { Template } from '../../sheets/template';
import { templateToLay } from '../../sheets/templateToLay';
import { base64 } from './base64';
import { WHEN_READY } from './lay';
import { excelRange } from './ranges';
import { sheetInView } from './sheetInView';
import { AREA } from './usedCells';

const ID = 'client-page';

/** What a client page shows, and where the headings of its table stand. */
interface Shown {
  readonly sheet: string;
  readonly values: readonly (readonly BookCell['value'][])[];
  readonly headings: number;
  readonly hiddenRows: readonly number[];
  readonly hiddenColumns: readonly number[];
}

/** The page in view, or else the first that there is. */
async function shown(context: Excel.RequestContext, columns: number): Promise<Shown | undefined> {
  const page = await sheetInView(context, isClientPage);
  const table = page?.tables.items.find((one) => isClientPage({ tables: [one] }));
  if (!page || !table) return undefined;
  const { sheet } = page;
  const shots = table.getDataBodyRange().load(AREA);
  await context.sync();
  const all = { row: 0, column: 0, rows: shots.rowIndex + shots.rowCount, columns };
  const range = excelRange(sheet, all).load('values');
  const rowAt = Array.from({ length: all.rows }, (_, row) =>
    excelRange(sheet, { ...all, row, rows: 1 }).load('rowHidden'),
  );
  const columnAt = Array.from({ length: columns }, (_, column) =>
    excelRange(sheet, { ...all, column, columns: 1 }).load('columnHidden'),
  );
  await context.sync();
  const values = range.values.map((line: unknown[]) => line.map(errorFromText)) as BookCell['value'][][];
  return {
    sheet: sheet.name,
    values,
    headings: shots.rowIndex - 1,
    hiddenRows: [...rowAt.keys()].filter((i) => rowAt[i]?.rowHidden),
    hiddenColumns: [...columnAt.keys()].filter((i) => columnAt[i]?.columnHidden),
  };
}

/** Opens the page that clients read as a workbook of its own. This one is read, never written. */
export async function clientFile(excel: typeof Excel): Promise<Outcome> {
  const template = await templateToLay(ID);
  if (!template) return noSheet(ID);
  if ('refused' in template) return template;
  return opened(excel, template);
}

async function opened(excel: typeof Excel, template: Template): Promise<Outcome> {
  const plan = planAlone(template, false).sheet;
  const columns = plan.page.area?.columns ?? 1;
  const page = await excel.run(WHEN_READY, (context) => shown(context, columns));
  if (!page) return NO_CLIENT_PAGE;
  const { hiddenRows, hiddenColumns } = page;
  const made = clientBook({ ...asLaid(plan, page.values, page.headings), hiddenRows }, hiddenColumns);
  if ('refused' in made) return clientPageNotReady(page.sheet, made.refused);
  const { writeXlsx } = await import(/* webpackChunkName: "write-file" */ '../../xlsx/write');
  await excel.createWorkbook(base64(await writeXlsx(made.book)));
  return { done: `The client page is open in a new workbook. ${LOOK_IT_OVER} Save it, and send that file.` };
}
