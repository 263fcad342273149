import type { Area } from '../formula/area';

/** A picture that stands over cells of its sheet, drawn from what the sheet holds. */
export interface BookPicture {
  /** What it shows. */
  readonly of: 'set';
  readonly place: Area;
}

/** The same with its pixels, for a file, which cannot draw it. */
export interface FilePicture {
  readonly place: Area;
  readonly png: Uint8Array;
  /** What it shows, for those who do not see it. */
  readonly said: string;
  readonly width: number;
  readonly height: number;
}

/** Pictures and charts that do not stand whole within what is printed: each has a page of its own. */
export const picturesBeyond = <T extends { readonly place: Area }>(
  printed: Area,
  pictures: readonly T[],
): readonly T[] => pictures.filter(({ place }) => !isWithin(printed, place));

const isWithin = (around: Area, { row, column, rows, columns }: Area): boolean =>
  row >= around.row &&
  column >= around.column &&
  row + rows <= around.row + around.rows &&
  column + columns <= around.column + around.columns;
