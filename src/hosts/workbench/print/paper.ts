import type { BookPage, BookSheet } from '../../../book/book';
import { extentOf } from '../charts/inReach';
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { Area } from '../../../formula/area';
import { isSeen } from '../../../book/fullPages';
import { picturesBeyond } from '../../../book/picture';
import { PAGE, wholePercents } from '../../../book/printedPages';
import { h } from '../../../pane/element';
import { keptWith } from '../book/keptWithSheet';
import { pageNow, pageOfOwn } from '../book/printedPage';
import { widerLetters } from '../book/typeface';
import { type OnSheet, shownAs, standingOn } from '../charts/onSheet/standing';
import { tableShapes } from '../charts/tableShapes';
import type { Grid } from '../grid/grid';
import { cellFace, POINT, type PrintedSheet, printedSheet, type ShownCell } from './cellFace';
import { cutBeside, type Span } from './freeBeside';
import { viewOf } from './viewOf';
import { type Line, type PageOfRows, pagesOf } from '../../../book/pagesOf';

/** The charts are drawn so many times as fine as on the screen: a printer has smaller dots. */
const FINE = 3;
/** Stays free around what is printed: so a page lengthwise of Letter is just as wide as it has to be. */
const LEFT_FREE = '0.5in';

/** What of a sheet is printed: what its page says, else all that holds something, and the charts. */
function printedArea({ area }: BookPage, { used }: PrintedSheet, charts: readonly OnSheet[]): Area {
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

const widened = ({ left, right }: Span, by: number): Span => ({ left: left * by, right: right * by });

/** A chart or picture that does not stand whole within what is printed, as large as a page of its own has room for it. */
function chartAlone(
  { rows, columns }: PrintedSheet,
  chart: OnSheet,
  size: { readonly width: number; readonly height: number },
): [HTMLElement, () => void] {
  const { place } = chart;
  const width = starts(columns(place.column, place.columns)).whole;
  const height = starts(rows(place.row, place.rows)).whole;
  const scale = Math.min(
    1,
    (size.width * POINT) / Math.max(1, width),
    (size.height * POINT) / Math.max(1, height),
  );
  const [face, draw] = chartOn(chart, width, height, scale);
  const inner = h('div', { class: 'charts inks' }, face);
  pixels(inner, { width, height });
  pixels(face, { top: 0, left: 0 });
  inner.style.setProperty('zoom', String(scale));
  return [inner, draw];
}

/** A chart or picture as large as its cells, and a function that draws it once it lies on the page. */
function chartOn(one: OnSheet, width: number, height: number, scale: number): [HTMLElement, () => void] {
  const { face, tell } = shownAs(one.kind);
  tell(one);
  pixels(face.element, { width: width * FINE, height: height * FINE });
  face.element.style.setProperty('zoom', String(1 / FINE));
  // its words are as large as on a page that is printed at full size
  return [face.element, () => face.fit(width * FINE, height * FINE, FINE / scale)];
}

export interface Paper {
  readonly element: HTMLElement;
  /** Draws what has no size before it lies on the page. */
  draw(): void;
}

/** The pages of one sheet. */
interface Pages {
  readonly landscape: boolean;
  readonly sections: readonly HTMLElement[];
  draw(): void;
}

/** Sheets of the workbook as they are printed, one after the other. */
export const paperOf = (grid: Grid, sheets: readonly FWorksheet[]): Paper =>
  bound(
    sheets.map((sheet) => pagesOfSheet(grid, sheet)),
    LEFT_FREE,
  );

function pagesOfSheet(grid: Grid, sheet: FWorksheet): Pages {
  const view = printedSheet(grid, sheet);
  const kept = keptWith(sheet.getSheet().getConfig());
  const page: BookPage = kept
    ? pageNow(kept.page, { name: view.name, tables: tableShapes(sheet), cells: view.cells })
    : pageOfOwn(view.name);
  return laidOut(view, page, standingOn(sheet), page.header || view.name);
}

/**
 * A sheet that goes to somebody: with nothing around it but the number of a page where there are several. Its pages leave no
 * margin in which a browser would print its address.
 */
export const paperAlone = (sheet: BookSheet): Paper => bound([laidOut(viewOf(sheet), sheet.page, [])], '0');

/** Each page as its own sheet wants it. A browser that does not tell pages apart prints all like the first. */
function bound(all: readonly Pages[], margin: '0' | typeof LEFT_FREE): Paper {
  const turned = (landscape: boolean): string => (landscape ? 'landscape' : 'portrait');
  const sheetOfPaper = (name: string, landscape: boolean): string =>
    `@page ${name} { size: ${turned(landscape)}; margin: ${margin}; }`;
  const rules = [
    sheetOfPaper('', all[0]?.landscape ?? false),
    sheetOfPaper('upright', false),
    sheetOfPaper('lengthwise', true),
  ];
  const element = h(
    'div',
    { class: margin === '0' ? 'paper alone' : 'paper', 'data-theme': 'light', 'aria-hidden': 'true' },
    h('style', {}, rules.join('\n')),
  );
  for (const { landscape, sections } of all)
    for (const section of sections) {
      section.style.setProperty('page', landscape ? 'lengthwise' : 'upright');
      element.append(section);
    }
  return { element, draw: () => all.forEach(({ draw }) => draw()) };
}

/** Cells and charts on pages, as wide as the paper, each page under the title rows and a line that numbers it. */
function laidOut(view: PrintedSheet, page: BookPage, charts: readonly OnSheet[], header?: string): Pages {
  const area = printedArea(page, view, charts);
  const beyond = picturesBeyond(area, charts);
  const within = charts.filter((chart) => !beyond.includes(chart));
  const columns = starts(view.columns(area.column, area.columns));
  const size = page.landscape ? PAGE.lengthwise : PAGE.upright;
  const scale = wholePercents((size.width * POINT) / Math.max(1, columns.whole));
  const titles = view.rows(page.titlesFrom ?? 0, page.titleRows);
  const pages = pagesOf(view.rows(area.row, area.rows), {
    height: (size.height * POINT) / scale,
    titles,
    breaks: page.breaks,
    blocks: within.map(({ place }) => place),
    isFilled: (row) =>
      within.some(({ place }) => place.row <= row && row < place.row + place.rows) ||
      view
        .inRow(row)
        .some(
          ({ text, style, column }) => (text !== '' || isSeen(style)) && columns.at(column) !== undefined,
        ),
  });
  const wider = widerLetters();
  // where no area ends, words in the last columns run on to the edge of the paper
  const widthOfBody = page.area ? columns.whole : Math.max(columns.whole, (size.width * POINT) / scale);
  const spanOf = ({ column, columns: count }: ShownCell): Span | undefined => {
    const left = columns.at(column);
    return left === undefined ? undefined : { left, right: left + starts(view.columns(column, count)).whole };
  };
  const drawings: (() => void)[] = [];
  const body = ({ lines, isTitled }: PageOfRows): HTMLElement => {
    const rows = starts([...(isTitled ? titles : []), ...lines]);
    const inner = h('div', { class: 'charts inks' });
    pixels(inner, { width: widthOfBody, height: rows.whole });
    inner.style.setProperty('zoom', String(scale));
    const cells = h('div', { class: 'cells' });
    cells.style.setProperty('transform', `scaleX(${1 / wider})`);
    inner.append(cells);
    const shown = [...(isTitled ? titles : []), ...lines];
    for (const { row } of shown) {
      // words run on over empty cells, whose fills lie under them
      const inRow = view
        .inRow(row)
        .map((cell) => ({ cell, span: spanOf(cell) }))
        .sort((one, other) => Number(one.cell.text !== '') - Number(other.cell.text !== ''));
      const filled = inRow.flatMap(({ cell, span }) =>
        span && cell.text !== '' ? [widened(span, wider)] : [],
      );
      for (const { cell, span } of inRow) {
        const top = rows.at(cell.row);
        if (top === undefined || span === undefined) continue;
        const { left, right } = widened(span, wider);
        const height = starts(view.rows(cell.row, cell.rows)).whole;
        const face = cellFace(cell, right - left);
        pixels(face, { top, left, width: right - left, height });
        if (cell.text !== '') face.style.setProperty('clip-path', cutBeside({ left, right }, filled));
        cells.append(face);
      }
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
      const [face, draw] = chartOn(chart, width, height, scale);
      // its own measures are made smaller with it
      pixels(face, { top: top * FINE, left: left * FINE });
      drawings.push(draw);
      inner.append(face);
    }
    return inner;
  };
  const bodies = [
    ...pages.map(body),
    ...beyond.map((chart) => {
      const [inner, draw] = chartAlone(view, chart, size);
      drawings.push(draw);
      return inner;
    }),
  ];
  const number = (i: number): string =>
    header === undefined && bodies.length === 1 ? '' : `Page ${i + 1} of ${bodies.length}`;
  const sections = bodies.map((inner, i) =>
    h('section', {}, h('p', {}, h('span', {}, header ?? ''), h('span', {}, number(i))), inner),
  );
  return { landscape: page.landscape, sections, draw: () => drawings.forEach((draw) => draw()) };
}
