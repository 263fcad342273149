import type { Book } from '../../../book/book';
import type { Outcome } from '../../../pane/host';
import { clientPageNotReady, LOOK_IT_OVER, NO_CLIENT_PAGE } from '../../../pane/sentences';
import { CLIENT_NAME, clientBook, isClientPage } from '../../../sheets/clientPage';
import { toBook } from '../book/toBook';
import type { Grid } from '../grid/grid';
import { hiddenColumns } from './hiddenColumns';
import { download } from '../../../pane/download';
import { XLSX } from '../page/files';

/** The page that clients read, alone in a book: the one in view, or else the first. */
function ofClient(grid: Grid): { readonly book: Book } | { readonly refused: string } {
  const name = grid.api.getActiveWorkbook()?.getActiveSheet().getSheetName();
  const pages = toBook(grid).book.sheets.filter(isClientPage);
  const page = pages.find((sheet) => sheet.name === name) ?? pages[0];
  if (!page) return NO_CLIENT_PAGE;
  const made = clientBook(page, hiddenColumns(grid, page.name));
  return 'refused' in made ? clientPageNotReady(page.name, made.refused) : made;
}

/** The page as a file in the downloads. */
export async function clientFile(grid: Grid): Promise<Outcome> {
  const made = ofClient(grid);
  if ('refused' in made) return made;
  const { writeXlsx } = await import('../../../xlsx/write');
  const file = `${CLIENT_NAME}.xlsx`;
  download(await writeXlsx(made.book), file, XLSX);
  return { done: `“${file}” is in your downloads. ${LOOK_IT_OVER}` };
}

/** The page on paper, or in a PDF where the browser prints into one. */
export async function printClientPage(grid: Grid): Promise<Outcome> {
  const made = ofClient(grid);
  if ('refused' in made) return made;
  const [sheet] = made.book.sheets;
  if (!sheet) return NO_CLIENT_PAGE;
  const { printAlone } = await import(/* webpackChunkName: "pane" */ '../print/onPaper');
  printAlone(sheet, CLIENT_NAME);
  return {
    done: 'The client page went to the browser’s print, where a PDF can be made of it. It has no logo: for one, prepare the page, put it in there and print that. Look it over before you send it.',
  };
}
