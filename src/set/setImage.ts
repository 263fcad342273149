import { drawSet } from './drawSet';
import { readSet } from './readSet';
import type { SheetAsRead } from './sheetAsRead';
import { type Inks, svgText } from './svg';

/** The picture of a set as an SVG text, and the same in words. */
export interface SetImage {
  readonly svg: string;
  readonly said: string;
  readonly width: number;
  readonly height: number;
}

/** Draws the set that a sheet has written down, for a width in pixels; undefined where it knows no places. */
export function setImage(sheet: SheetAsRead, width: number, inks: Inks): SetImage | undefined {
  const read = readSet(sheet);
  if (!read) return undefined;
  const { picture, said } = drawSet(read.setUp, width, read.unread);
  return { svg: svgText(picture, said, inks), said, width: picture.width, height: picture.height };
}
