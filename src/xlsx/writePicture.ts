import type { Workbook, Worksheet } from '@cj-tech-master/excelts';
import type { FilePicture } from '../book/picture';

/** Puts a picture over cells, with its first corner at theirs. */
export function addPicture({ place, png, width, height }: FilePicture, file: Workbook, out: Worksheet): void {
  const image = file.addImage({ buffer: png, extension: 'png' });
  out.addImage(image, {
    tl: { col: place.column, row: place.row },
    ext: { width: width, height: height },
    editAs: 'oneCell',
  });
}

const isDrawing = (name: string): boolean => /^xl\/drawings\/drawing\d+\.xml$/.test(name);
const SIGNS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** The parts of a file in which pictures stand, in the order of its sheets. */
export const drawingsIn = (names: readonly string[]): readonly string[] =>
  names.filter(isDrawing).sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));

/** A drawing whose pictures say what they show, which the writer has no place for: each takes the next of the texts. */
export const describedPart = (xml: string, texts: string[]): string =>
  xml.replace(/<xdr:nvPicPr><xdr:cNvPr\b/g, (start) => {
    const said = (texts.shift() ?? '')
      .replace(/\p{Cc}/gu, ' ')
      .replace(/[&<>"]/g, (sign) => SIGNS[sign] ?? sign);
    return `${start} descr="${said}"`;
  });
