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
