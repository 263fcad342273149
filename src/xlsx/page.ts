import type { Worksheet, AddWorksheetOptions } from '@cj-tech-master/excelts';
import type { BookCell, BookPage } from '../book/book';
import { type FilePicture, picturesBeyond } from '../book/picture';
import type { Area } from '../formula/area';
import { areaText, MOST_COLUMNS } from '../formula/areaText';
import { areasAlone, areasIn } from '../formula/reference';
import { count } from './lineCount';
import { type LeftOut, PRINTED } from './notKept';
import type { XmlAttributes } from './xml';

export const PRODUCT = 'Sweeptable';
const A4 = 9;
const INCH = { side: 0.5, end: 0.7, edge: 0.35 } as const;

/** The sign & starts a code in a header. */
const plainHeader = (text: string): string => text.replaceAll('&', '&&');

/** How a sheet prints: on one page across, and pictures that stand elsewhere on pages of their own. */
export function filePage(
  { landscape, header, titleRows, titlesFrom = 0, area }: BookPage,
  pictures: readonly FilePicture[],
) {
  const areas = area ? [area, ...picturesBeyond(area, pictures).map(({ place }) => place)] : [];
  return {
    pageSetup: {
      paperSize: A4,
      orientation: landscape ? 'landscape' : 'portrait',
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
      margins: {
        left: INCH.side,
        right: INCH.side,
        top: INCH.end,
        bottom: INCH.end,
        header: INCH.edge,
        footer: INCH.edge,
      },
      ...(area ? { printArea: areas.map(areaText).join(',') } : {}),
      ...(titleRows > 0 ? { printTitlesRow: `${titlesFrom + 1}:${titlesFrom + titleRows}` } : {}),
    },
    headerFooter: {
      ...(header === '' ? {} : { oddHeader: `&L${plainHeader(header)}&R${PRODUCT}` }),
      oddFooter: '&RPage &P of &N',
    },
  } satisfies Partial<AddWorksheetOptions>;
}

/** A file names the row before a break and counts from 1: the same number as that of the row after it, counted from 0. */
export function addPageBreaks({ breaks }: BookPage, out: Worksheet): void {
  for (const row of breaks) out.getRow(row).addPageBreak();
}

/** Hears the elements of a sheet, and keeps what it says of its pages itself. */
export class PageReader {
  landscape = false;
  readonly breaks: number[] = [];
  private isOfRows = false;

  open(name: string, attributes: XmlAttributes): void {
    if (name === 'pageSetup') this.landscape = attributes.orientation === 'landscape';
    else if (name === 'rowBreaks' || name === 'colBreaks') this.isOfRows = name === 'rowBreaks';
    else if (name === 'brk' && this.isOfRows) this.breaks.push(count(attributes.id));
  }
}

const isOfRows = ({ columns }: Area): boolean => columns === MOST_COLUMNS;

/** What is printed; of several areas the one that holds something, as where pictures stand in the others. */
function printedArea(text: string, cells: readonly BookCell[]): Area | undefined {
  const areas = areasAlone(text);
  if (areas.length < 2) return areas[0];
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

/** The pages of a sheet; the file keeps what is printed, and what heads each page, among the names of the sheet. */
export function bookPage(
  { landscape, breaks }: Pick<BookPage, 'landscape' | 'breaks'>,
  header: string,
  names: ReadonlyMap<string, string>,
  cells: readonly BookCell[],
  leftOut: LeftOut,
): BookPage {
  const printArea = names.get('_xlnm.Print_Area') ?? '';
  const printed = printedArea(printArea, cells);
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
