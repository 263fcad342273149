import type { BookPage, BookSheet } from '../../../book/book';
import { extentOf } from '../charts/inReach';
import type { Area } from '../../../formula/area';
import { picturesBeyond } from '../../../book/picture';
import { PAGE } from '../../../book/printedPages';
import { h } from '../../../pane/element';
import { keptWith } from '../book/keptWithSheet';
import { pageNow } from '../book/printedPage';
import { type OnSheet, shownAs, standingOn } from '../charts/onSheet/standing';
import { tableShapes } from '../charts/tableShapes';
import type { Grid } from '../grid/grid';
import { cellFace, type SheetInView, sheetInView, type ShownCell } from './cellFace';
import { viewOf } from './viewOf';
import { type Line, type PageOfRows, pagesOf } from './pagesOf';

/** Pixels of a point. */
const POINT = 96 / 72;
/** The charts are drawn so many times as fine as on the screen: a printer has smaller dots. */
const FINE = 3;
/** Millimetres that stay free around what is printed. */
const LEFT_FREE = 13;

/** What of a sheet is printed: what its page says, else all that holds something, and the charts. */
function printedArea({ area }: BookPage, { used }: SheetInView, charts: readonly OnSheet[]): Area {
  if (area) return area;
  const under = extentOf(charts);
  const [rows, columns] = [Math.max(used.rows, under.rows), Math.max(used.columns, under.columns)];
  return { row: 0, column: 0, rows, columns };
}

/** Where rows or columns begin that follow each other on a page. */
function starts(lines: readonly Line[]): { at(row: number): number | undefined; readonly whole: number } {
  const from = new Map<number, number>();
  let whole = 0;
  for (const { row, height } of lines) {
    from.set(row, whole);
    whole += height;
  }
  return { at: (row) => from.get(row), whole };
}

const pixels = (element: HTMLElement, box: Readonly<Record<string, number>>): void => {
  for (const [side, size] of Object.entries(box)) element.style.setProperty(side, `${size}px`);
};

/** A picture that stands outside of what is printed, as large as a page of its own has room for it. */
function pictureAlone(
  { rows, columns }: SheetInView,
  picture: OnSheet,
  size: { readonly width: number; readonly height: number },
): [HTMLElement, () => void] {
  const { place } = picture;
  const width = starts(columns(place.column, place.columns)).whole;
  const height = starts(rows(place.row, place.rows)).whole;
  const [face, draw] = chartOn(picture, width, height);
  const scale = Math.min(
    1,
    (size.width * POINT) / Math.max(1, width),
    (size.height * POINT) / Math.max(1, height),
  );
  const inner = h('div', { class: 'charts inks' }, face);
  pixels(inner, { width, height });
  pixels(face, { top: 0, left: 0 });
  inner.style.setProperty('zoom', String(scale));
  return [inner, draw];
}

/** A chart or picture as large as its cells, and a function that draws it once it lies on the page. */
function chartOn(one: OnSheet, width: number, height: number): [HTMLElement, () => void] {
  const { face, tell } = shownAs(one.kind);
  tell(one);
  pixels(face.element, { width: width * FINE, height: height * FINE });
  face.element.style.setProperty('zoom', String(1 / FINE));
  return [face.element, () => face.fit(width * FINE, height * FINE, FINE)];
}

export interface Paper {
  readonly element: HTMLElement;
  /** Draws what has no size before it lies on the page. */
  draw(): void;
}

/** The sheet in view as it is printed. */
export function paperOf(grid: Grid): Paper | undefined {
  const view = sheetInView(grid);
  const sheet = grid.api.getActiveWorkbook()?.getActiveSheet();
  if (!view || !sheet) return undefined;
  const kept = keptWith(sheet.getSheet().getConfig());
  const page: BookPage = kept
    ? pageNow(kept.page, tableShapes(sheet), view.cells)
    : { landscape: true, header: view.name, titleRows: 0, breaks: [] };
  return laidOut(view, page, standingOn(grid), `${LEFT_FREE}mm`);
}

/**
 * A sheet that goes to somebody: with nothing around it but the number of a page where there are several. Its pages leave no
 * margin in which a browser would print its address.
 */
export const paperAlone = (sheet: BookSheet): Paper => laidOut(viewOf(sheet), sheet.page, [], '0');

/** Cells and charts on pages, as wide as the paper, each page under the title rows. */
function laidOut(
  view: SheetInView,
  page: BookPage,
  charts: readonly OnSheet[],
  margin: '0' | `${number}mm`,
): Paper {
  const area = printedArea(page, view, charts);
  const beyond = picturesBeyond(
    area,
    charts.filter(({ kind }) => kind === 'picture'),
  );
  const columns = starts(view.columns(area.column, area.columns));
  const size = page.landscape ? PAGE.lengthwise : PAGE.upright;
  const scale = Math.min(1, (size.width * POINT) / Math.max(1, columns.whole));
  const titles = view.rows(page.titlesFrom ?? 0, page.titleRows);
  const laid = pagesOf(view.rows(area.row, area.rows), {
    height: (size.height * POINT) / scale,
    titles,
    breaks: page.breaks,
    blocks: charts.filter((chart) => !beyond.includes(chart)).map(({ place }) => place),
  });
  const isAlone = (place: Area): boolean => beyond.some((picture) => picture.place === place);
  const isSeen = ({ column, text, style }: ShownCell): boolean =>
    columns.at(column) !== undefined &&
    (text.trim() !== '' || style.fill !== undefined || Object.keys(style.edges ?? {}).length > 0);
  /** Nobody prints a page of rows that show nothing, such as the last ones of a table that is not full. */
  const isWorthPaper = ({ lines }: PageOfRows): boolean =>
    lines.some(
      ({ row }) =>
        view.inRow(row).some(isSeen) ||
        charts.some(({ place }) => row >= place.row && row < place.row + place.rows && !isAlone(place)),
    );
  const drawings: (() => void)[] = [];
  const body = ({ lines, isTitled }: PageOfRows): HTMLElement => {
    const rows = starts([...(isTitled ? titles : []), ...lines]);
    const inner = h('div', { class: 'charts inks' });
    pixels(inner, { width: columns.whole, height: rows.whole });
    inner.style.setProperty('zoom', String(scale));
    const shown = [...(isTitled ? titles : []), ...lines];
    for (const { row } of shown)
      for (const cell of view.inRow(row)) {
        const [top, left] = [rows.at(cell.row), columns.at(cell.column)];
        if (top === undefined || left === undefined) continue;
        const width = starts(view.columns(cell.column, cell.columns)).whole;
        const height = starts(view.rows(cell.row, cell.rows)).whole;
        const face = cellFace(cell);
        pixels(face, { top, left, width, height });
        inner.append(face);
      }
    for (const chart of charts) {
      const { place } = chart;
      if (beyond.includes(chart)) continue;
      const [under, beside] = [view.rows(place.row, place.rows), view.columns(place.column, place.columns)];
      const [first] = under;
      const isHere = first !== undefined && lines.some(({ row }) => row === first.row);
      const [top, left] = [rows.at(first?.row ?? -1), columns.at(beside[0]?.row ?? -1)];
      if (!isHere || top === undefined || left === undefined) continue;
      const [width, height] = [starts(beside).whole, starts(under).whole];
      const [face, draw] = chartOn(chart, width, height);
      // its own measures are made smaller with it
      pixels(face, { top: top * FINE, left: left * FINE });
      drawings.push(draw);
      inner.append(face);
    }
    return inner;
  };
  const pages = laid.filter(isWorthPaper);
  const bodies = [
    ...(pages.length > 0 ? pages : laid.slice(0, 1)).map(body),
    ...beyond.map((picture) => {
      const [inner, draw] = pictureAlone(view, picture, size);
      drawings.push(draw);
      return inner;
    }),
  ];
  const element = h(
    'div',
    { class: margin === '0' ? 'paper alone' : 'paper', 'data-theme': 'light', 'aria-hidden': 'true' },
    h('style', {}, `@page { size: ${page.landscape ? 'landscape' : 'portrait'}; margin: ${margin}; }`),
    ...bodies.map((inner, i) =>
      h(
        'section',
        {},
        h(
          'p',
          {},
          h('span', {}, margin === '0' ? '' : page.header || view.name),
          h('span', {}, margin === '0' && bodies.length === 1 ? '' : `Page ${i + 1} of ${bodies.length}`),
        ),
        inner,
      ),
    ),
  );
  return { element, draw: () => drawings.forEach((draw) => draw()) };
}
