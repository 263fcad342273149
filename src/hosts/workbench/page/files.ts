import type { Book } from '../../../book/book';
import type { Area } from '../../../formula/area';
import { fitted } from '../../../book/fitForGrid';
import { sayUnknownFunctions } from '../../../engine/unknownFunctions';
import { workbookOf } from '../book/fromBook';
import { replaceWorkbook } from '../state/session';
import { toBook } from '../book/toBook';
import type { Command } from './bar';
import { type Desk, replace } from './commands';
import { ask, tell } from './dialog';
import { chooseFile } from '../../../pane/chooseFile';
import { download } from '../../../pane/download';

export const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

const fileName = ({ sheets }: Book): string =>
  `${(sheets[0]?.name ?? 'Sweeptable').replace(/[\\/:*?"<>|]/g, ' ').trim() || 'Sweeptable'}.xlsx`;

export const saveFile = ({ grid, notice, saving }: Desk): Command => ({
  label: 'Save as .xlsx',
  about: 'The whole workbook as a file for any spreadsheet program. Ctrl+S does so too',
  key: 's',
  async run() {
    const { book: cells, notWritten, pictures } = toBook(grid);
    const book = pictures.some((places) => places.length > 0) ? await drawn(cells, pictures) : cells;
    const { asFile } = await import('../../../xlsx/write');
    const { bytes, changed } = await asFile(book);
    const name = fileName(book);
    download(bytes, name, XLSX);
    saving.keptInFile();
    notice.say(`“${name}” is saved to your downloads.`);
    const otherwise = [...notWritten, ...changed];
    if (otherwise.length > 0)
      await tell('Not all of it is in the file', 'The file is saved. Left out or changed in it:', otherwise);
  },
});

async function drawn(book: Book, pictures: readonly (readonly Area[])[]): Promise<Book> {
  const { withPictures } = await import(/* webpackChunkName: "set-picture" */ '../pictures/withPictures');
  return withPictures(book, pictures);
}

export const openFile = (desk: Desk): Command => ({
  label: 'Open .xlsx',
  about: 'A workbook from a file, in the place of this one',
  async run() {
    const file = await chooseFile('.xlsx');
    if (!file) return;
    const { readXlsx, UnreadableFile } = await import('../../../xlsx/read');
    const opened = await readXlsx(new Uint8Array(await file.arrayBuffer())).catch((reason: unknown) => {
      if (reason instanceof UnreadableFile) return reason;
      throw reason;
    });
    if (opened instanceof UnreadableFile) {
      await tell(`“${file.name}” was not opened`, opened.message);
      return;
    }
    const yes = await ask(
      `Open “${file.name}”?`,
      'It takes the place of the workbook in view. You can take that one back once.',
      'Open',
    );
    if (!yes) return;
    const { book, changed } = fitted(opened.book);
    const isOpen = await replace(
      desk,
      (grid) => replaceWorkbook(grid, workbookOf(book)),
      `“${file.name}” is open.`,
    );
    if (!isOpen) return;
    const said = [...opened.notUnderstood, ...changed, ...sayUnknownFunctions(opened.book)];
    if (said.length > 0)
      await tell('Not all of it was understood', 'The file is open. Left out or changed:', said);
  },
});
