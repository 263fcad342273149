import type { IRange } from '@univerjs/core';
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { BookCell, BookStyle, EdgeSide } from '../../../book/book';
import { isSeen } from '../../../book/fullPages';
import { FONT, USUAL_SIZE } from '../../../book/palette';
import { h } from '../../../pane/element';
import { fitted } from '../cell/fitted';
import { general } from '../cell/general';
import { madePoints, pointsOf } from '../book/measures';
import { bookStyle } from '../book/styles';
import { widerThanMade } from '../book/typeface';
import type { Grid } from '../grid/grid';
import { conditions } from '../grid/rules';
import { shownTexts } from '../grid/shownTexts';
import { spilledCells } from '../grid/spills';
import type { Line } from '../../../book/pagesOf';

/** Pixels of a point. */
export const POINT = 96 / 72;

/** A cell that shows something, or several that are merged, from the first row and column of them that are shown. */
export interface ShownCell {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
  readonly text: string;
  readonly isNumber: boolean;
  readonly style: BookStyle;
}

/** What prints of a sheet. */
export interface PrintedSheet {
  readonly name: string;
  /** So many rows and columns hold something. */
  readonly used: { readonly rows: number; readonly columns: number };
  readonly cells: readonly BookCell[];
  /** Rows and columns that are shown, with their heights and widths in pixels, as a file has them. */
  rows(first: number, count: number): readonly Line[];
  columns(first: number, count: number): readonly Line[];
  inRow(row: number): readonly ShownCell[];
}

/** The first of some places that is shown. */
function firstFrom(first: number, last: number, isShown: (at: number) => boolean): number | undefined {
  for (let at = first; at <= last; at++) if (isShown(at)) return at;
  return undefined;
}

/** A sheet as it prints: its letters are as wide on paper as it was made for, whatever they are on this screen. */
export function printedSheet(grid: Grid, sheet: FWorksheet): PrintedSheet {
  const inner = sheet.getSheet();
  const styles = sheet.getWorkbook().getStyles();
  const textAt = shownTexts(grid, sheet.getSheetId());
  const spilled = spilledCells(grid, sheet.getSheetId());
  const wider = widerThanMade(inner.getConfig().custom);
  const used = { rows: 0, columns: 0 };
  const cells: BookCell[] = [];
  const byRow = new Map<number, number[]>();
  const note = (row: number, column: number): void => {
    used.rows = Math.max(used.rows, row + 1);
    used.columns = Math.max(used.columns, column + 1);
    byRow.set(row, [...(byRow.get(row) ?? []), column]);
    cells.push({ row, column, value: null });
  };
  inner.getCellMatrix().forValue((row, column, cell) => {
    if (cell) note(row, column);
  });
  for (const [row, line] of Object.entries(spilled))
    for (const column of Object.keys(line))
      if (!inner.getCellMatrix().getValue(Number(row), Number(column))) note(Number(row), Number(column));
  const merged = new Map<number, { readonly of: IRange; readonly column: number }[]>();
  for (const of of inner.getMergeData()) {
    const row = firstFrom(of.startRow, of.endRow, (at) => inner.getRowVisible(at));
    const column = firstFrom(of.startColumn, of.endColumn, (at) => inner.getColVisible(at));
    const isNoted = byRow.get(of.startRow)?.includes(of.startColumn) ?? false;
    if (isNoted && row !== undefined && column !== undefined)
      merged.set(row, [...(merged.get(row) ?? []), { of, column }]);
  }
  /** What the cell in a place shows. */
  const face = (row: number, column: number): Pick<ShownCell, 'text' | 'isNumber' | 'style'> => {
    const value = inner.getCellRaw(row, column)?.v ?? spilled[row]?.[column]?.v;
    return {
      text: textAt(row, column) || String(spilled[row]?.[column]?.v ?? ''),
      isNumber: typeof value === 'number',
      // with what its conditions add
      style: bookStyle(styles.getStyleByCell(inner.getCell(row, column))),
    };
  };
  const watched = conditions(grid, sheet.getSheetId()).flatMap(({ ranges }) => ranges);
  /** Cells of a row that hold nothing and show something all the same: a warning goes on under all of its words. */
  const marked = (row: number): readonly number[] => {
    const found = new Set<number>();
    for (const { startRow, endRow, startColumn, endColumn } of watched)
      if (startRow <= row && row <= endRow)
        for (let column = startColumn; column <= Math.min(endColumn, used.columns - 1); column++)
          if (isSeen(bookStyle(styles.getStyleByCell(inner.getCell(row, column))))) found.add(column);
    return [...found];
  };
  const lines = (
    first: number,
    count: number,
    isShown: (at: number) => boolean,
    size: (at: number) => number,
  ) =>
    Array.from({ length: count }, (_, i) => first + i)
      .filter(isShown)
      .map((row) => ({ row, height: size(row) }));
  return {
    name: sheet.getSheetName(),
    used,
    cells,
    rows: (first, count) =>
      lines(
        first,
        count,
        (row) => inner.getRowVisible(row),
        (row) => (madePoints(inner.getRowManager().getRow(row)) ?? pointsOf(inner.getRowHeight(row))) * POINT,
      ),
    columns: (first, count) =>
      lines(
        first,
        count,
        (column) => inner.getColVisible(column),
        (column) => Math.round(inner.getColumnWidth(column) / wider),
      ),
    inRow(row) {
      const single = [...new Set([...(byRow.get(row) ?? []), ...marked(row)])].filter(
        (column) => !inner.getMergedCell(row, column),
      );
      return [
        ...single.map((column) => ({ row, column, rows: 1, columns: 1, ...face(row, column) })),
        ...(merged.get(row) ?? []).map(({ of, column }) => ({
          row,
          column,
          rows: of.endRow - row + 1,
          columns: of.endColumn - column + 1,
          ...face(of.startRow, of.startColumn),
        })),
      ];
    },
  };
}

const STROKES = {
  thin: '1px solid',
  medium: '2px solid',
  thick: '3px solid',
  dotted: '1px dotted',
  dashed: '1px dashed',
  double: '3px double',
  hair: '1px dotted',
} as const;
const ALONG = { left: 'flex-start', center: 'center', right: 'flex-end' } as const;
const UPRIGHT = { top: 'flex-start', middle: 'center', bottom: 'flex-end' } as const;

/** Pixels of a cell left and right of its words; a number stands further from the words beside it. */
const EDGES = { plain: 3, number: 7 } as const;
/** Between one cell and the next. */
const LINE = 2;

/** Formats that say nothing of a number: with the second it stands in a cell of texts. */
const SAY_NOTHING: readonly string[] = ['General', '@'];
const isGeneral = ({ format = 'General' }: BookStyle): boolean => SAY_NOTHING.includes(format);

let measuring: CanvasRenderingContext2D | null | undefined;
/**
 * What prints of a number: as many digits as there is room for, and how far it stays from the edge then: less than others where it
 * would be signs instead. One that is cut would be another number.
 */
function numberIn(
  text: string,
  style: BookStyle,
  font: string,
  width: number,
): { readonly text: string; readonly edge: number } {
  const value = Number(text);
  const full = isGeneral(style) && text !== '' && Number.isFinite(value) ? general(value) : text;
  measuring ??= document.createElement('canvas').getContext('2d');
  const context = measuring;
  if (!context) return { text: full, edge: EDGES.number };
  context.font = font;
  const widthOf = (each: string): number => context.measureText(each).width;
  const shown = fitted(full, width - EDGES.number - LINE / 2, widthOf);
  if (!shown.startsWith('#')) return { text: shown, edge: EDGES.number };
  const closer = fitted(full, width - LINE, widthOf);
  return { text: closer, edge: Math.min(EDGES.number, width - LINE / 2 - widthOf(closer)) };
}

/** A cell as it is printed, so many pixels wide and without its place. */
export function cellFace({ text, isNumber, style }: ShownCell, width: number): HTMLElement {
  const font = `${style.italic ? 'italic ' : ''}${style.bold ? 'bold ' : ''}${style.size ?? USUAL_SIZE}pt ${style.font ?? FONT}, sans-serif`;
  const { text: shown, edge: free } = isNumber
    ? numberIn(text, style, font, width)
    : { text, edge: EDGES.number };
  const face = h('div', { class: style.wrap ? 'cell wraps' : 'cell' }, h('span', {}, shown));
  const align = style.align ?? (isNumber ? 'right' : 'left');
  const set = (name: string, value: string): void => face.style.setProperty(name, value);
  set('font', font);
  set('justify-content', ALONG[align]);
  set('align-items', UPRIGHT[style.vertical ?? 'middle']);
  set('text-align', align);
  // as in the grid, a number never touches the words beside it
  if (align === 'right') set('padding-right', `${free}px`);
  if (style.ink) set('color', style.ink);
  if (style.fill) set('background', style.fill);
  if (style.underline || style.strike)
    set(
      'text-decoration',
      [style.underline && 'underline', style.strike && 'line-through'].filter(Boolean).join(' '),
    );
  for (const [side, edge] of Object.entries(style.edges ?? {}) as [
    EdgeSide,
    NonNullable<BookStyle['edges']>[EdgeSide],
  ][])
    if (edge) set(`border-${side}`, `${STROKES[edge.line]} ${edge.ink}`);
  return face;
}
