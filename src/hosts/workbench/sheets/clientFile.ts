import type { Outcome } from '../../../pane/host';
import { clientPageNotReady, LOOK_IT_OVER, NO_CLIENT_PAGE } from '../../../pane/sentences';
import { CLIENT_NAME, clientBook, isClientPage } from '../../../sheets/clientPage';
import { toBook } from '../book/toBook';
import type { Grid } from '../grid/grid';
import { download } from '../page/download';
import { XLSX } from '../page/files';

/** The page that clients read, as a file in the downloads: the one in view, or else the first. */
export async function clientFile(grid: Grid): Promise<Outcome> {
  const name = grid.api.getActiveWorkbook()?.getActiveSheet().getSheetName();
  const pages = toBook(grid).book.sheets.filter(isClientPage);
  const page = pages.find((sheet) => sheet.name === name) ?? pages[0];
  if (!page) return NO_CLIENT_PAGE;
  const made = clientBook(page);
  if ('refused' in made) return clientPageNotReady(page.name, made.refused);
  const { writeXlsx } = await import('../../../xlsx/write');
  const file = `${CLIENT_NAME}.xlsx`;
  download(await writeXlsx(made.book), file, XLSX);
  return { done: `“${file}” is in your downloads. ${LOOK_IT_OVER}` };
}
