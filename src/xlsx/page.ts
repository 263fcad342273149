import type { Worksheet, AddWorksheetOptions } from '@cj-tech-master/excelts';
import type { BookPage, BookSheet } from '../book/book';
import { fullBreaks } from '../book/fullPages';
import { picturesBeyond } from '../book/picture';
import { PAGE } from '../book/printedPages';
import type { Area } from '../formula/area';
import { areaText, MOST_COLUMNS } from '../formula/areaText';
import { areasAlone, areasIn } from '../formula/reference';
import { count } from './lineCount';
import { type LeftOut, PRINTED } from './notKept';
import type { XmlAttributes } from './xml';

export type PaperName = 'A4' | 'Letter';
interface PaperSize {
  /** What a file calls it. */
  readonly number: number;
  readonly width: number;
  readonly height: number;
}
/** Kinds of paper that files are made for, upright, in points. */
const PAPERS: Readonly<Record<PaperName, PaperSize>> = {
  A4: { number: 9, width: 595.3, height: 841.9 },
  Letter: { number: 1, width: 612, height: 792 },
};

const INCH = 72;
/** From the edge of the paper to the line above the cells, in points. */
const EDGE = 0.35 * INCH;
/** Columns are rounded to dots by whoever prints them: where they come out a little wider they still fit. */
const SLACK = 2;

/** Leaves the same room for cells on either paper, so that the same rows come to stand on each page. */
function margins(landscape: boolean, { width, height }: PaperSize) {
  const [wide, high] = landscape ? [height, width] : [width, height];
  const room = landscape ? PAGE.lengthwise : PAGE.upright;
  const side = (wide - room.width - SLACK) / 2 / INCH;
  const end = (high - room.height) / 2 / INCH;
  return { left: side, right: side, top: end, bottom: end, header: EDGE / INCH, footer: EDGE / INCH };
}

/** The sign & starts a code in a header, such as that for the name of the tab, whatever it will be. */
const plainHeader = (text: string): string => text.replaceAll('&', '&&');
const TAB = '&A';

/** How a sheet prints: on one page across, and charts and pictures that stand elsewhere on pages of their own. */
export function filePage(
  { name, page, charts, pictures = [] }: Pick<BookSheet, 'name' | 'page' | 'charts' | 'pictures'>,
  paper: PaperName,
) {
  const { landscape, header, titleRows, titlesFrom = 0, area } = page;
  const beyond = area ? picturesBeyond(area, [...charts, ...pictures]) : [];
  const areas = area ? [area, ...beyond.map(({ place }) => place)] : [];
  const title = header === name ? TAB : plainHeader(header);
  return {
    pageSetup: {
      paperSize: PAPERS[paper].number,
      orientation: landscape ? 'landscape' : 'portrait',
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
      margins: margins(landscape, PAPERS[paper]),
      ...(area ? { printArea: areas.map(areaText).join(',') } : {}),
      ...(titleRows > 0 ? { printTitlesRow: `${titlesFrom + 1}:${titlesFrom + titleRows}` } : {}),
    },
    headerFooter: { oddHeader: `${header === '' ? '' : `&L${title}`}&RPage &P of &N` },
  } satisfies Partial<AddWorksheetOptions>;
}

/**
 * A file names the row before a break and counts from 1: the same number as that of the row after it, counted from 0. A break
 * behind a full page reaches over the columns that print alone, which no program minds, and by which it is known again.
 */
export function addPageBreaks(sheet: BookSheet, out: Worksheet): void {
  const { area, breaks } = sheet.page;
  for (const row of breaks) out.getRow(row).addPageBreak();
  for (const row of fullBreaks(sheet)) out.getRow(row).addPageBreak(0, area?.columns);
}

/** Hears the elements of a sheet, and keeps what it says of its pages itself. */
export class PageReader {
  landscape = false;
  readonly breaks: number[] = [];
  /** Those of them that do not reach over all columns. */
  readonly short = new Set<number>();
  private isOfRows = false;

  open(name: string, attributes: XmlAttributes): void {
    if (name === 'pageSetup') this.landscape = attributes.orientation === 'landscape';
    else if (name === 'rowBreaks' || name === 'colBreaks') this.isOfRows = name === 'rowBreaks';
    else if (name === 'brk' && this.isOfRows) {
      const row = count(attributes.id);
      this.breaks.push(row);
      if (count(attributes.max) < MOST_COLUMNS - 1) this.short.add(row);
    }
  }
}

const isOfRows = ({ columns }: Area): boolean => columns === MOST_COLUMNS;

const isSame = (one: Area, other: Area): boolean => areaText(one) === areaText(other);

/**
 * What is printed; of several areas the one that no chart stands in and that holds something, as where pictures stand in the
 * others.
 */
function printedArea(text: string, { cells, charts }: Held): Area | undefined {
  const all = areasAlone(text);
  if (all.length < 2) return all[0];
  const areas = all.filter((area) => !charts.some(({ place }) => isSame(area, place)));
  const isHere = ({ row, column, rows, columns }: Area): boolean =>
    cells.some(
      (cell) =>
        cell.value !== null &&
        cell.row >= row &&
        cell.row < row + rows &&
        cell.column >= column &&
        cell.column < column + columns,
    );
  const held = areas.filter(isHere);
  return held.length === 1 ? held[0] : undefined;
}

type Held = Pick<BookSheet, 'cells' | 'charts'>;

/** The pages of a sheet; the file keeps what is printed, and what heads each page, among the names of the sheet. */
export function bookPage(
  { landscape, breaks }: Pick<BookPage, 'landscape' | 'breaks'>,
  header: string,
  names: ReadonlyMap<string, string>,
  held: Held,
  leftOut: LeftOut,
): BookPage {
  const printArea = names.get('_xlnm.Print_Area') ?? '';
  const printed = printedArea(printArea, held);
  if (printArea !== '' && !printed) leftOut.say(PRINTED);
  const titles = areasIn(names.get('_xlnm.Print_Titles') ?? '').find(isOfRows);
  return {
    landscape,
    breaks,
    header,
    titleRows: titles?.rows ?? 0,
    ...(titles && titles.row > 0 ? { titlesFrom: titles.row } : {}),
    ...(printed ? { area: printed } : {}),
  };
}
