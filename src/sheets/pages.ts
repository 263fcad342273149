import type { SheetPlan } from './plan';
import { THEME } from './theme';
import { wordLines } from './wordLines';

type Heights = Readonly<Record<number, number>>;

/** Of a screen's dots that files count widths in: a digit of the usual font, and the space around a column. */
const DIGIT = 7;
const GAP = 5;
const DOTS_IN_POINT = 96 / 72;
/** A letter's mean width and a line's height, against the size of the font. */
const LETTER = { plain: 0.48, bold: 0.52 } as const;
const LEADING = 1.3;
const ROOM = 2;
const USUAL_HEIGHT = 15;

const columnDots = (characters: number): number => characters * DIGIT + GAP;
const dots = (columns: readonly number[]): number =>
  columns.reduce((sum, width) => sum + columnDots(width), 0);

/** Every row with words gets its height here: not every program works out the one that large or broken words need. */
export function rowHeights({ cells, columns, merges }: SheetPlan): Record<number, number> {
  const spans = new Map(merges.map((area) => [`${area.row},${area.column}`, area.columns]));
  const found: Record<number, number> = {};
  for (const { row, column, part, value, wrap } of cells) {
    const { size, bold } = THEME[part];
    const span = spans.get(`${row},${column}`);
    const width = dots(columns.slice(column, column + (span ?? 1))) - 2 * GAP;
    const letter = size * DOTS_IN_POINT * (bold ? LETTER.bold : LETTER.plain);
    const lines = wrap || span !== undefined ? wordLines(String(value ?? ''), width / letter) : 1;
    found[row] = Math.max(found[row] ?? 0, Math.ceil(lines * size * LEADING + ROOM));
  }
  return found;
}

/** Points of a page that hold cells: as wide as A4 upright and as high as Letter lengthwise leave, whichever is less. */
const PAGE = { upright: { width: 520, height: 690 }, lengthwise: { width: 720, height: 490 } } as const;

/** Rows that start a page: a chart that does not fit below what comes before it goes whole onto the next. */
export function pageBreaks({ charts, columns, page }: SheetPlan, heights: Heights): number[] {
  const { width, height } = page.landscape ? PAGE.lengthwise : PAGE.upright;
  const scale = Math.min(1, (width * DOTS_IN_POINT) / dots(columns));
  const points = (from: number, to: number): number => {
    let sum = 0;
    for (let row = from; row < to; row++) sum += heights[row] ?? USUAL_HEIGHT;
    return sum;
  };
  const breaks: number[] = [];
  let start = 0;
  for (const { place } of [...charts].sort((a, b) => a.place.row - b.place.row)) {
    const titles = start === 0 ? 0 : points(0, page.titleRows);
    if (titles + points(start, place.row + place.rows) <= height / scale) continue;
    // An empty row before the chart goes with it: the chart's edge would be left behind on the page before.
    start = heights[place.row - 1] === undefined ? place.row - 1 : place.row;
    breaks.push(start);
  }
  return breaks;
}
