import type { Worksheet, AddWorksheetOptions } from '@cj-tech-master/excelts';
import type { BookPage } from '../book/book';
import type { Area } from '../formula/area';
import { areaText, MOST_COLUMNS } from '../formula/areaText';
import { areaIn, areasIn } from '../formula/reference';
import { count } from './lineCount';
import { type LeftOut, PRINTED } from './notKept';
import type { XmlAttributes } from './xml';

export const PRODUCT = 'Sweeptable';
const A4 = 9;
const INCH = { side: 0.5, end: 0.7, edge: 0.35 } as const;

/** The sign & starts a code in a header. */
const plainHeader = (text: string): string => text.replaceAll('&', '&&');

/** How a sheet prints: on one page across. */
export function filePage({ landscape, header, titleRows, titlesFrom = 0, area }: BookPage) {
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
      ...(area ? { printArea: areaText(area) } : {}),
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

/** The pages of a sheet; the file keeps what is printed, and what heads each page, among the names of the sheet. */
export function bookPage(
  { landscape, breaks }: Pick<BookPage, 'landscape' | 'breaks'>,
  header: string,
  names: ReadonlyMap<string, string>,
  leftOut: LeftOut,
): BookPage {
  const printArea = names.get('_xlnm.Print_Area') ?? '';
  const printed = areaIn(printArea);
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
