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
