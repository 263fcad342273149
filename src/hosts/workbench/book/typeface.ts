import type { CustomData } from '@univerjs/core';
import type { Area } from '../../../formula/area';
import { FONT, USUAL_SIZE } from '../../../book/palette';
import type { BookCell, BookStyle } from '../../../book/book';
import type { Needed } from './measures';

/**
 * Sheets are made for Arial, which many computers lack: the letters that stand in its place are wider, and their lines higher.
 * What is known here of Arial are the advance widths in its metrics, in sizes of the type, from memory: they equal those that
 * Adobe published for Helvetica.
 */
const SAMPLES: readonly (readonly [sample: string, weight: string, inArial: number])[] = [
  ['abcdefghijklmnopqrstuvwxyz', '', 12.726],
  ['abcdefghijklmnopqrstuvwxyz', 'bold', 14.003],
  ['0123456789', '', 5.56],
];
const SAMPLE_SIZE = 100;
const POINTS_IN_PIXEL = 72 / 96;
/** Left and right of a text, and above and below its lines. */
const EDGES = 4;

type Measure = (text: string, font: string) => TextMetrics;

let measuring: Measure | undefined;
/** Measures by what the page draws with; nothing where there is no page. */
function measure(): Measure | undefined {
  if (typeof document === 'undefined') return undefined;
  if (!measuring) {
    const context = document.createElement('canvas').getContext('2d');
    if (!context) return undefined;
    measuring = (text, font) => {
      context.font = font;
      return context.measureText(text);
    };
  }
  return measuring;
}

let wider: number | undefined;
/** How much wider letters are here than in Arial; 1 where they are as wide or narrower. */
export function widerLetters(): number {
  const widthOf = measure();
  if (!widthOf) return 1;
  wider ??= Math.max(
    1,
    ...SAMPLES.map(
      ([sample, weight, inArial]) =>
        widthOf(sample, `${weight} ${SAMPLE_SIZE}px ${FONT}`).width / SAMPLE_SIZE / inArial,
    ),
  );
  return wider;
}

const KEY = 'sweeptable letters';

/** Kept with a sheet, whose columns are so much wider than they were made. */
export const lettersHere = (): CustomData => ({ [KEY]: widerLetters() });

/** How much wider than they were made the columns of a sheet are. */
export function widerThanMade(custom: CustomData | undefined): number {
  const kept: unknown = custom?.[KEY];
  return typeof kept === 'number' && kept > 0 ? kept : 1;
}

export const widePixels = (pixels: number): number => Math.round(pixels * widerLetters());

const fontOf = ({ font = FONT, size = USUAL_SIZE, bold, italic }: BookStyle): string =>
  `${italic ? 'italic ' : ''}${bold ? 'bold ' : ''}${size / POINTS_IN_PIXEL}px ${font}`;

/** Lines of a text in a column so many pixels wide: words stay whole. */
function linesOf(text: string, pixels: number, widthOf: (text: string) => number): number {
  let count = 0;
  for (const paragraph of text.split('\n')) {
    let line = '';
    count++;
    for (const word of paragraph.split(' ')) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (line !== '' && widthOf(longer) > pixels) {
        count++;
        line = word;
      } else line = longer;
    }
  }
  return count;
}

/** How high a line of a cell is on paper, in sizes of its type. */
const LINE_ON_PAPER = 1.25;

/**
 * What the rows need that words in lines stand in, by row, where the widths of columns are known in pixels. Rows that nothing
 * is broken in are left out, and so are all where there is no page.
 */
export function heightsOfLines(
  cells: readonly BookCell[],
  widthOf: (column: number) => number | undefined,
  merges: readonly Area[],
): ReadonlyMap<number, Needed> {
  const measured = measure();
  const found = new Map<number, Needed>();
  if (!measured) return found;
  const merged = new Map(merges.map((area) => [`${area.row},${area.column}`, area]));
  for (const { row, column, value, style } of cells) {
    const area = merged.get(`${row},${column}`);
    if (!style?.wrap || typeof value !== 'string' || (area && area.rows > 1)) continue;
    const columns = Array.from({ length: area?.columns ?? 1 }, (_, i) => widthOf(column + i) ?? 0);
    const width = columns.reduce((sum, each) => sum + each, -EDGES);
    if (width <= 0) continue;
    const font = fontOf(style);
    const { fontBoundingBoxAscent, fontBoundingBoxDescent } = measured(value, font);
    const lines = linesOf(value, width, (text) => measured(text, font).width);
    const before = found.get(row) ?? { pixels: 0, points: 0 };
    const pixels = Math.ceil(lines * (fontBoundingBoxAscent + fontBoundingBoxDescent)) + EDGES;
    const points = lines * (style.size ?? USUAL_SIZE) * LINE_ON_PAPER;
    found.set(row, {
      pixels: Math.max(before.pixels, pixels),
      points: Math.max(before.points, points),
    });
  }
  return found;
}
