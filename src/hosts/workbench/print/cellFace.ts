import type { IRange } from '@univerjs/core';
import type { BookCell, BookStyle, EdgeSide } from '../../../book/book';
import { FONT, USUAL_SIZE } from '../../../book/palette';
import { h } from '../../../pane/element';
import { bookStyle } from '../book/styles';
import type { Grid } from '../grid/grid';
import { shownTexts } from '../grid/shownTexts';
import { spilledCells } from '../grid/spills';
import type { Line } from './pagesOf';

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

/** What prints of the sheet in view. */
export interface SheetInView {
  readonly name: string;
  /** So many rows and columns hold something. */
  readonly used: { readonly rows: number; readonly columns: number };
  readonly cells: readonly BookCell[];
  /** Rows and columns that are shown, with their heights and widths in pixels. */
  rows(first: number, count: number): readonly Line[];
  columns(first: number, count: number): readonly Line[];
  inRow(row: number): readonly ShownCell[];
}

/** The first of some places that is shown. */
function firstFrom(first: number, last: number, isShown: (at: number) => boolean): number | undefined {
  for (let at = first; at <= last; at++) if (isShown(at)) return at;
  return undefined;
}

export function sheetInView(grid: Grid): SheetInView | undefined {
  const sheet = grid.api.getActiveWorkbook()?.getActiveSheet();
  if (!sheet) return undefined;
  const inner = sheet.getSheet();
  const styles = sheet.getWorkbook().getStyles();
  const textAt = shownTexts(grid, sheet.getSheetId());
  const spilled = spilledCells(grid, sheet.getSheetId());
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
        (row) => inner.getRowHeight(row),
      ),
    columns: (first, count) =>
      lines(
        first,
        count,
        (column) => inner.getColVisible(column),
        (column) => inner.getColumnWidth(column),
      ),
    inRow(row) {
      const single = (byRow.get(row) ?? []).filter((column) => !inner.getMergedCell(row, column));
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

/** A cell as it is printed, without its place. */
export function cellFace({ text, isNumber, style }: ShownCell): HTMLElement {
  const face = h('div', { class: style.wrap ? 'cell wraps' : 'cell' }, h('span', {}, text));
  const align = style.align ?? (isNumber ? 'right' : 'left');
  const set = (name: string, value: string): void => face.style.setProperty(name, value);
  set(
    'font',
    `${style.italic ? 'italic ' : ''}${style.bold ? 'bold ' : ''}${style.size ?? USUAL_SIZE}pt ${style.font ?? FONT}, sans-serif`,
  );
  set('justify-content', ALONG[align]);
  set('align-items', UPRIGHT[style.vertical ?? 'middle']);
  set('text-align', align);
  // as in the grid, a number never touches the words beside it
  if (align === 'right') set('padding-right', '7px');
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
