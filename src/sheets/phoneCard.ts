import type { BookCell, BookSheet, BookStyle, BookTable } from '../book/book';
import { FONT, NIGHT } from '../book/palette';
import { charactersOf, rowHeights } from '../book/widthsAndHeights';
import type { Area } from '../formula/area';
import { isCellError } from '../formula/errors';
import { type SheetRead, tableCalled } from './sheetRead';

/** Pixels of the four columns: together a phone of 390, less the numbers of the rows and the bar for scrolling. */
const COLUMNS = [92, 70, 52, 114] as const;
const HALF = 2;
/** Points of words and of figures: 16 and 18.7 pixels. */
const WORDS = 12;
const FIGURES = 14;
/** Letters of a value that stand beside its label. */
const BESIDE = 18;
/** Dark rows below the last line, so that nothing lights up where a phone is long. */
const BELOW = 60;

/** The sentence of a copy: on its sheet something would have to be typed, and would be followed. */
export const FOLLOWS_NOTHING = 'The values as they were when this copy was made. Nothing here calculates.';

/** A part of a line: what it says, and over how many columns. */
interface Piece {
  readonly text: string;
  readonly columns: number;
  readonly isFigure: boolean;
}
type Line = readonly Piece[];

const words = (text: string, columns: number = COLUMNS.length): Piece => ({ text, columns, isFigure: false });
const figures = (text: string, columns: number = COLUMNS.length): Piece => ({
  text,
  columns,
  isFigure: true,
});

function shown(value: BookCell['value'] | undefined): string {
  if (value === null || value === undefined) return '';
  if (isCellError(value)) return value.error;
  return typeof value === 'boolean' ? String(value).toUpperCase() : String(value).trim();
}

type TextAt = (row: number, column: number) => string;

/** Texts side by side, the first of them a label. */
interface Run {
  readonly column: number;
  readonly texts: readonly string[];
}

function runsOf(row: number, columns: number, at: TextAt): Run[] {
  const runs: Run[] = [];
  for (let column = 0; column < columns; column++) {
    const text = at(row, column);
    const before = runs.at(-1);
    if (text === '') continue;
    if (before && before.column + before.texts.length === column)
      runs.splice(-1, 1, { ...before, texts: [...before.texts, text] });
    else runs.push({ column, texts: [text] });
  }
  return runs;
}

/** A label with its value beside it, or below it where that is long. What stands alone first is a title. */
function runLines({ texts: [label = '', ...values] }: Run, isFirst: boolean): Line[] {
  const value = values.join(' ');
  if (label === '') return [[figures(value)]];
  if (value === '') return [[isFirst ? figures(label) : words(label)]];
  if (value.length > BESIDE) return [[words(label)], [figures(value)]];
  return [[words(label, HALF), figures(value, HALF)]];
}

/** A value without a label belongs to the label of a row above it. */
function withLabels(band: readonly (readonly Run[])[]): Run[] {
  const labels = new Set<number>();
  return band.flat().map((run) => {
    if (run.texts.length === 1 && labels.has(run.column - 1))
      return { column: run.column - 1, texts: ['', ...run.texts] };
    labels.add(run.column);
    return run;
  });
}

/** Blocks that stand side by side, one below the other: rows without a gap, by the column in which they begin. */
function bandLines(band: readonly (readonly Run[])[]): Line[] {
  const runs = withLabels(band);
  const starts = [...new Set(runs.map(({ column }) => column))].sort((a, b) => a - b);
  return starts.flatMap((start) => [
    ...runs.filter(({ column }) => column === start).flatMap((run, i) => runLines(run, i === 0)),
    [],
  ]);
}

function formLines(rows: readonly number[], columns: number, at: TextAt): Line[] {
  const lines: Line[] = [];
  let band: Run[][] = [];
  for (const runs of [...rows.map((row) => runsOf(row, columns, at)), []]) {
    if (runs.length > 0) band.push(runs);
    else {
      lines.push(...bandLines(band));
      band = [];
    }
  }
  return lines;
}

/** The number of a row of the card, which only says where the row looks up. */
const ROW = 'Row';

/** A light is its name across, and below it what is set and read, under headings that stand once above them all. */
function lightLines({ area, columns }: BookTable, printed: number, at: TextAt): Line[] {
  const told = columns
    .map(({ name }, i) => ({ name, column: area.column + i }))
    .filter(({ name, column }) => column < printed && name !== ROW);
  const [first, ...others] = told;
  if (!first) return [];
  const inLines = (textOf: (one: (typeof told)[number]) => string, piece: typeof words): Line[] =>
    Array.from({ length: Math.ceil(others.length / COLUMNS.length) }, (_, i) =>
      others.slice(i * COLUMNS.length, (i + 1) * COLUMNS.length).map((one) => piece(textOf(one), 1)),
    );
  const lines = [[words(first.name)], ...inLines(({ name }) => name, words), []];
  for (let row = area.row + 1; row < area.row + area.rows; row++) {
    if (told.every(({ column }) => at(row, column) === '')) continue;
    const values = inLines(({ column }) => at(row, column), figures);
    lines.push([words(at(row, first.column))], ...values.filter((line) => line.some(({ text }) => text)), []);
  }
  return lines;
}

const STYLE: BookStyle = {
  font: FONT,
  size: WORDS,
  ink: NIGHT.ink,
  fill: NIGHT.paper,
  format: '@',
  align: 'left',
  vertical: 'middle',
  wrap: true,
};
const FIGURE: BookStyle = { ...STYLE, size: FIGURES, bold: true };

const cellsOf = (line: Line, row: number): BookCell[] => {
  const starts = line.flatMap((piece) => [piece, ...Array.from({ length: piece.columns - 1 }, () => undefined)]);
  return COLUMNS.map((_, column) => {
    const piece = starts[column];
    return { row, column, value: piece?.text || null, style: piece?.isFigure ? FIGURE : STYLE };
  });
}; // prettier-ignore

function mergesOf(line: Line, row: number): Area[] {
  let column = 0;
  return line.flatMap(({ columns }) => {
    const area = { row, column, rows: 1, columns };
    column += columns;
    return columns > 1 ? [area] : [];
  });
}

/**
 * A card for a phone in a dark room: what its printed part shows, one below the other, grey on black and no wider than the
 * phone. Nothing on it calculates.
 *
 * @param sheet - the card as it stands in a workbook, wherever its rows were moved.
 * @param printed - how many of its columns are printed; the working stands right of them.
 */
export function phoneCard(sheet: SheetRead, printed: number, name: string): BookSheet {
  const texts = new Map(sheet.cells.map(({ row, column, value }) => [`${row},${column}`, shown(value)]));
  const at: TextAt = (row, column) => texts.get(`${row},${column}`) ?? '';
  const rows = [...Array(Math.max(0, ...sheet.cells.map(({ row }) => row + 1))).keys()];
  const card = tableCalled('Card', sheet.tables);
  const [top, end] = card ? [card.area.row, card.area.row + card.area.rows] : [rows.length, rows.length];
  const [title = [], ...others] = [
    ...formLines(rows.slice(0, top), printed, at),
    ...(card ? lightLines(card, printed, at) : []),
    ...formLines(rows.slice(end), printed, at),
  ];
  // in the place of what would have to be done on the card, by which that is known: a copy is none
  const lines = [title, [words(FOLLOWS_NOTHING)], ...others];
  const dark: Line[] = Array.from({ length: BELOW }, () => []);
  const cells = [...lines, ...dark].flatMap(cellsOf);
  const widths = Object.fromEntries(COLUMNS.map((pixels, i) => [i, charactersOf(pixels)]));
  const merges = lines.flatMap(mergesOf);
  return {
    name,
    hidden: false,
    widths,
    heights: rowHeights(cells, widths, merges),
    cells,
    merges,
    freeze: { rows: 0, columns: 0 },
    gridlines: false,
    tables: [],
    rules: [],
    conditions: [],
    charts: [],
    page: {
      landscape: false,
      header: name,
      titleRows: 0,
      breaks: [],
      area: { row: 0, column: 0, rows: lines.length, columns: COLUMNS.length },
    },
  };
}
