import { drawSet } from './drawSet';
import { type ReadSet, readSet } from './readSet';
import type { SheetAsRead } from './sheetAsRead';
import { type Inks, svgText } from './svg';

/** The picture of a set as an SVG text, and the same in words. */
export interface SetImage {
  readonly svg: string;
  readonly said: string;
  readonly width: number;
  readonly height: number;
}

/** Whether nothing is known of where anything stands. */
const isPlaceless = ({ setUp: { lights, camera, subject, surface }, unread }: ReadSet): boolean =>
  unread.length === 0 && !camera && !subject && !surface && lights.every((light) => light.at === undefined);

/** Is said in a picture of pixels that stands on a sheet, as in Excel and in files. */
export const DOES_NOT_FOLLOW =
  'Drawn from the cells as they were: put it here anew when one of them has changed, since it does not follow them.';

/**
 * Draws the set that a sheet has written down, for a width in pixels; undefined where it has no places yet.
 *
 * @param more - sentences that are to stand below it as well.
 */
export function setImage(
  sheet: SheetAsRead,
  width: number,
  inks: Inks,
  more: readonly string[] = [],
): SetImage | undefined {
  const read = readSet(sheet);
  if (!read || isPlaceless(read)) return undefined;
  const { picture, said } = drawSet(read.setUp, width, [...read.unread, ...more]);
  return { svg: svgText(picture, said, inks), said, width: picture.width, height: picture.height };
}
