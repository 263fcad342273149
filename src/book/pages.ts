import type { BookPage, BookSheet } from './book';
import { USUAL_HEIGHT, widthOfColumns } from './measures';

/** Points of a page that hold cells: as wide as A4 upright and as high as Letter lengthwise leave, whichever is less. */
export const PAGE = {
  upright: { width: 520, height: 690 },
  lengthwise: { width: 720, height: 490 },
} as const;

/**
 * Rows that start a page: those that are told to, and a chart that does not fit below what comes before it goes whole onto
 * the next.
 */
export function pageBreaks(
  { charts, widths, heights }: Pick<BookSheet, 'charts' | 'widths' | 'heights'>,
  {
    landscape,
    titleRows,
    titlesFrom = 0,
    area,
  }: Pick<BookPage, 'landscape' | 'titleRows' | 'titlesFrom' | 'area'>,
  told: readonly number[] = [],
): number[] {
  const { width, height } = landscape ? PAGE.lengthwise : PAGE.upright;
  const across = area ?? { column: 0, columns: Object.keys(widths).length };
  const scale = Math.min(1, width / widthOfColumns(across, widths));
  const points = (from: number, to: number): number => {
    let sum = 0;
    for (let row = from; row < to; row++) sum += heights[row] ?? USUAL_HEIGHT;
    return sum;
  };
  const breaks = new Set(told);
  for (const { place } of [...charts].sort((a, b) => a.place.row - b.place.row)) {
    const start = Math.max(0, ...[...breaks].filter((row) => row <= place.row));
    const titles = start <= titlesFrom ? 0 : points(titlesFrom, titlesFrom + titleRows);
    if (titles + points(start, place.row + place.rows) <= height / scale) continue;
    // An empty row before the chart goes with it: the chart's edge would be left behind on the page before.
    breaks.add(heights[place.row - 1] === undefined ? place.row - 1 : place.row);
  }
  return [...breaks].sort((a, b) => a - b);
}
