import type { Area } from '../formula/area';
import type { BookCell, BookStyle } from './book';
import { USUAL_SIZE } from './palette';
import { textLines } from './wordLines';

/** A spreadsheet's file counts a column in digits of 7 pixels and 5 for its edges. */
const DIGIT = 7;
const GAP = 5;
const POINTS_IN_PIXEL = 72 / 96;

export const columnPixels = (characters: number): number => Math.round(characters * DIGIT + GAP);
export const columnPoints = (characters: number): number => columnPixels(characters) * POINTS_IN_PIXEL;
export const charactersOf = (pixels: number): number => Math.round(((pixels - GAP) / DIGIT) * 100) / 100;

/** Points of a row that nothing makes higher. */
export const USUAL_HEIGHT = 15;
/**
 * How wide a letter and how high a line is, in sizes of the type. Both are a shade too large: a row with a line too many
 * does less harm than one that cuts its words.
 */
const LETTER = 0.55;
const LINE = 1.3;
const EDGES = 2;

/** Programs draw rows in whole pixels: a page that is full to the last point would be too full with rows that they round up. */
const wholePixels = (points: number): number => Math.floor(points / POINTS_IN_PIXEL) * POINTS_IN_PIXEL;

/** Widths in characters, by column. */
export type Widths = Readonly<Record<number, number>>;
/** Heights in points, by row. */
export type Heights = Readonly<Record<number, number>>;

/** Points that the columns of an area are wide together; columns without a width of their own are not counted. */
export function widthOfColumns(
  { column, columns }: Pick<Area, 'column' | 'columns'>,
  widths: Widths,
): number {
  let sum = 0;
  for (let c = column; c < column + columns; c++) {
    const characters = widths[c];
    if (characters !== undefined) sum += columnPoints(characters);
  }
  return sum;
}

/** How many letters a line of a cell takes that is as wide as those columns. */
export const lettersIn = (
  span: Pick<Area, 'column' | 'columns'>,
  widths: Widths,
  { size = USUAL_SIZE }: Pick<BookStyle, 'size'> = {},
): number => (widthOfColumns(span, widths) - EDGES) / (size * LETTER);

/**
 * Heights in points of every row with words: not every program works out the one that large or broken words need, and none
 * lets a row grow with a merged cell.
 */
export function rowHeights(
  cells: readonly BookCell[],
  widths: Widths,
  merges: readonly Area[],
): Record<number, number> {
  const merged = new Map(merges.map((area) => [`${area.row},${area.column}`, area]));
  const found: Record<number, number> = {};
  for (const { row, column, value, style } of cells) {
    const { size = USUAL_SIZE, wrap } = style ?? {};
    const span = merged.get(`${row},${column}`) ?? { column, columns: 1 };
    const lines = wrap && typeof value === 'string' ? textLines(value, lettersIn(span, widths, style)) : 1;
    found[row] = Math.max(found[row] ?? USUAL_HEIGHT, wholePixels(Math.ceil(lines * size * LINE) + EDGES));
  }
  return found;
}
