import type { BookPage, BookSheet } from './book';
import { USUAL_HEIGHT, type Widths, widthOfColumns } from './widthsAndHeights';

/** Points of a page that hold cells: as wide as A4 upright and as high as Letter lengthwise leave, whichever is less. */
export const PAGE = {
  upright: { width: 520, height: 690 },
  lengthwise: { width: 720, height: 490 },
} as const;

/** A scale as spreadsheets print it: none makes anything larger. */
export const wholePercents = (scale: number): number => Math.min(1, Math.floor(100 * scale) / 100);

/** Points of a column that nobody has made wider or narrower. */
const USUAL_COLUMN = 48;

/**
 * How much smaller the columns that print have to be to fit on one page of either paper: 1 where they fit as they are. In whole
 * percents, which is all that spreadsheets know.
 */
export function scaleToPage(
  { landscape, area }: Pick<BookPage, 'landscape' | 'area'>,
  widths: Widths,
): number {
  const { width } = landscape ? PAGE.lengthwise : PAGE.upright;
  const { column, columns } = area ?? { column: 0, columns: Object.keys(widths).length };
  const unsized = Array.from({ length: columns }, (_, i) => widths[column + i]).filter(
    (own) => own === undefined,
  );
  const points = widthOfColumns({ column, columns }, widths) + unsized.length * USUAL_COLUMN;
  return wholePercents(width / points);
}

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
  const { height } = landscape ? PAGE.lengthwise : PAGE.upright;
  const scale = scaleToPage({ landscape, ...(area && { area }) }, widths);
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
