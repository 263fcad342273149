import type { Book, BookSheet } from '../../../book/book';
import { DOES_NOT_FOLLOW, setImage } from '../../../set/setImage';
import { ON_PAPER } from '../../../set/svg';
import { inLines } from '../../../set/sheetAsRead';
import { FILE_WIDTH, pngOf } from '../../../pane/set/images';
import type { Area } from '../../../formula/area';

/** A book with the pictures of its sheets in pixels, black on white: a file cannot draw them. */
export async function withPictures(book: Book, places: readonly (readonly Area[])[]): Promise<Book> {
  const sheets = await Promise.all(
    book.sheets.map(async (sheet, i): Promise<BookSheet> => {
      const own = places[i] ?? [];
      const made =
        own.length > 0 ? setImage(inLines(sheet), FILE_WIDTH, ON_PAPER, [DOES_NOT_FOLLOW]) : undefined;
      if (!made) return sheet;
      const { svg, said, width, height } = made;
      const png = new Uint8Array(await (await pngOf(svg, width, height)).arrayBuffer());
      return { ...sheet, pictures: own.map((place) => ({ place, png, said, width, height })) };
    }),
  );
  return { ...book, sheets };
}
