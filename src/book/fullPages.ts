import type { Area } from '../formula/area';
import type { BookSheet, BookStyle } from './book';
import { picturesBeyond } from './picture';
import { type Line, type PageOfRows, pagesOf } from './pagesOf';
import { PAGE, scaleToPage } from './printedPages';
import { USUAL_HEIGHT } from './widthsAndHeights';

type Printed = Pick<
  BookSheet,
  | 'page'
  | 'gridlines'
  | 'widths'
  | 'heights'
  | 'cells'
  | 'charts'
  | 'pictures'
  | 'filteredRows'
  | 'hiddenRows'
>;

/** Whether an empty cell shows something: lines to write on, say. */
export const isSeen = (style: BookStyle | undefined): boolean =>
  style?.fill !== undefined || style?.edges !== undefined;

const isWithin = (at: number, { column, columns }: Area): boolean => column <= at && at < column + columns;

/** A file may say that a million rows print. */
const MOST_ROWS = 20_000;

/** The pages of a sheet that was made for paper: it says what prints, and draws all of its lines itself. */
function fullPages(sheet: Printed, breaks: readonly number[]): readonly PageOfRows[] {
  const { page, gridlines, widths, heights, cells, charts, pictures = [] } = sheet;
  const { area, landscape, titleRows, titlesFrom = 0 } = page;
  if (!area || gridlines !== false || area.rows > MOST_ROWS) return [];
  const unseen = new Set([...(sheet.filteredRows ?? []), ...(sheet.hiddenRows ?? [])]);
  const lines = (first: number, count: number): Line[] =>
    Array.from({ length: count }, (_, i) => first + i)
      .filter((row) => !unseen.has(row))
      .map((row) => ({ row, height: heights[row] ?? USUAL_HEIGHT }));
  const standing = [...charts, ...pictures];
  const beyond = picturesBeyond(area, standing);
  const blocks = standing.filter((one) => !beyond.includes(one)).map(({ place }) => place);
  const filled = new Set(
    cells.flatMap(({ row, column, value, formula, style }) =>
      isWithin(column, area) && ((value ?? formula ?? '') !== '' || isSeen(style)) ? [row] : [],
    ),
  );
  const { height } = landscape ? PAGE.lengthwise : PAGE.upright;
  return pagesOf(lines(area.row, area.rows), {
    height: height / scaleToPage(page, widths),
    titles: lines(titlesFrom, titleRows),
    breaks,
    blocks,
    isFilled: (row) =>
      filled.has(row) || blocks.some((block) => block.row <= row && row < block.row + block.rows),
  });
}

const startsOf = (pages: readonly PageOfRows[]): readonly number[] =>
  pages.slice(1).flatMap(({ lines }) => (lines[0] ? [lines[0].row] : []));

/**
 * Rows that begin a page because the one before is full, besides those that are told to. Programs that lay other letters, or
 * paper of another size, would begin it some rows later.
 */
export const fullBreaks = (sheet: Printed): readonly number[] =>
  startsOf(fullPages(sheet, sheet.page.breaks)).filter((row) => !sheet.page.breaks.includes(row));

/** Of the rows that begin a page in a file those that are told to: what was full need not be so once rows come in. */
export function withoutFull(sheet: Printed, doubtful: ReadonlySet<number>): readonly number[] {
  const told: number[] = [];
  for (const row of sheet.page.breaks)
    if (!doubtful.has(row) || !startsOf(fullPages(sheet, told)).includes(row)) told.push(row);
  return told;
}
