import { bigType, bigTypeCheck, type BigTypeWish } from './bigType';
import { colourMap, colourMapCheck, type ColourMapWish, type ColourScale } from './colourMap';
import { CONSTANT_LINE, constantLine, constantLineCheck, type ConstantLineWish } from './constantLine';
import type { Check, Kind } from './kind';
import { lookedUp, lookedUpCheck, type LookedUpWish } from './lookedUp';
import { MARKED_POINT, markedPoint, markedPointCheck, type MarkedPointWish } from './markedPoint';
import { NAMED_POINTS, namedPoints, namedPointsCheck, type NamedPointsWish } from './namedPoints';
import { pageBreak, pageBreakCheck, type PageBreakWish, type WithPageBreaks } from './pageBreak';
import { pictureSlot, pictureSlotCheck, type PictureSlotWish } from './pictureSlot';
import { printArea, printAreaCheck, type PrintAreaWish, type WithPrintArea } from './printArea';
import { severalColumns, severalColumnsCheck, type SeveralColumnsWish } from './severalColumns';
import { wordsInLines, wordsInLinesCheck, type WordsInLinesWish } from './wordsInLines';

/** Every kind. Of two sizes of a cell the later one holds, and the series of a chart stand in this order. */
export const KINDS: readonly Kind[] = [
  lookedUp,
  colourMap,
  wordsInLines,
  bigType,
  constantLine,
  markedPoint,
  namedPoints,
  pageBreak,
  printArea,
  pictureSlot,
  severalColumns,
];

/** How each is asked for: by themselves, since no page needs to have them. */
export const CHECKS: readonly Check[] = [
  lookedUpCheck,
  colourMapCheck,
  wordsInLinesCheck,
  bigTypeCheck,
  constantLineCheck,
  markedPointCheck,
  namedPointsCheck,
  pageBreakCheck,
  printAreaCheck,
  pictureSlotCheck,
  severalColumnsCheck,
];

/** What the parts of a template may ask for. */
export type OfTemplate = PrintAreaWish & BigTypeWish & PictureSlotWish;
export type OfBlock = PageBreakWish;
export type OfTable = ColourMapWish;
/** A field of a form, or a column. */
export type OfCell = BigTypeWish & LookedUpWish;
export type OfField = SeveralColumnsWish;
export type OfColumn = WordsInLinesWish;
export type OfChart = ConstantLineWish & MarkedPointWish & NamedPointsWish;

/** What comes of it in a book, where that is more than other cells, styles and charts have. */
export type ConditionOfKinds = ColourScale;
export type PageOfKinds = WithPageBreaks & WithPrintArea;
/** Looks of the series that kinds add to charts, by their roles there. */
export const ROLE_LOOKS = { limit: CONSTANT_LINE, point: MARKED_POINT, named: NAMED_POINTS };
export type Role = keyof typeof ROLE_LOOKS;
