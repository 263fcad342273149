import { Workbook, type Worksheet } from '@cj-tech-master/excelts';
import { ZipEditor } from '@cj-tech-master/excelts/archive';
import { installChartSupport } from '@cj-tech-master/excelts/chart';
import { isCellError } from '../formula/errors';
import { address } from '../formula/address';
import type { Book, BookCell, BookRule, BookSheet, BookTable } from '../book/book';
import { legalBook } from '../book/legal/legalBook';
import { callsOurs } from '../formula/calls';
import { asStored } from '../formula/spelling';
import { areaText } from '../formula/areaText';
import { drawnCharts } from '../book/chart';
import { USUAL_HEIGHT } from '../book/widthsAndHeights';
import { fileCondition } from './conditions';
import { addPageBreaks, filePage, type PaperName } from './page';
import { addChart } from './writeChart';
import { addPicture, describedPart, drawingsIn } from './writePicture';
import { filteredPart, filteredTables, isTablePart } from './writeFilters';
import { fileStyle } from './writeStyles';
import { openPackage } from './zip';

const PRODUCT = 'Sweeptable';
/** Every file bears the same date, so that the same sheet gives the same bytes; its parts are dated in local time. */
const MADE = new Date(Date.UTC(2000, 0, 1));
const PACKED = new Date(2000, 0, 1);

export interface BookFile {
  readonly bytes: Uint8Array;
  /** What is otherwise in the file than in the book, in sentences. */
  readonly changed: readonly string[];
}

/** An .xlsx file of a book. What no file may hold is changed, and said: nothing of a book keeps the rest from being written. */
export async function asFile(book: Book, paper: PaperName = 'A4'): Promise<BookFile> {
  const legal = legalBook(book);
  return { bytes: await bytesOf(legal.book, paper), changed: legal.changed };
}

/** The bytes of an .xlsx file, for a book of our own making. */
export const writeXlsx = async (book: Book, paper?: PaperName): Promise<Uint8Array> =>
  (await asFile(book, paper)).bytes;

async function bytesOf(book: Book, paper: PaperName): Promise<Uint8Array> {
  installChartSupport();
  const file = new Workbook();
  Object.assign(file, { creator: PRODUCT, lastModifiedBy: PRODUCT, created: MADE, modified: MADE });
  const title = book.sheets[0]?.name;
  if (title !== undefined) file.title = title;
  for (const sheet of book.sheets) write(sheet, file, paper);
  for (const { name, formula } of book.names) file.definedNames.addFormula(name, asStored(formula));
  addSheetNames(book, file);
  return finished(await file.xlsx.writeBuffer({ zip: { modTime: PACKED, timestamps: 'dos' } }), book);
}

function addSheetNames({ sheets }: Book, file: Workbook): void {
  const own = sheets.flatMap(({ names = [] }, localSheetId) =>
    names.map(({ name, formula }) => ({
      name,
      ranges: [],
      localSheetId,
      formulaExpression: asStored(formula),
    })),
  );
  if (own.length > 0) file.definedNames.model = [...file.definedNames.model, ...own];
}

/** The version of the calculation that Excel of Microsoft 365 writes; from experience. */
const CALCULATED_BY = 191029;

/**
 * A file whose values Excel believes, and with the filters of tables. One that an older version has calculated it calculates anew on
 * opening, and without the add-in our cells would then show #NAME?. The writer always names an older one.
 */
async function finished(bytes: Uint8Array, book: Book): Promise<Uint8Array> {
  const parts = openPackage(bytes);
  const read = async (name: string): Promise<string> => new TextDecoder().decode(await parts.read(name));
  const file = await ZipEditor.open(bytes, { reproducible: true });
  const set = (name: string, xml: string) => file.set(name, xml, { modTime: PACKED });
  set(WORKBOOK, (await read(WORKBOOK)).replace(/(<calcPr calcId=")\d+/, `$1${CALCULATED_BY}`));
  const tables = filteredTables(book);
  for (const name of tables.size > 0 ? parts.names.filter(isTablePart) : []) {
    const xml = filteredPart(await read(name), tables);
    if (xml !== undefined) set(name, xml);
  }
  const texts = book.sheets.flatMap(({ pictures = [] }) => pictures.map(({ said }) => said));
  for (const name of texts.length > 0 ? drawingsIn(parts.names) : [])
    set(name, describedPart(await read(name), texts));
  return file.bytes();
}
const WORKBOOK = 'xl/workbook.xml';

/** The writer takes this width for the usual one, which it is not, and leaves it out. */
const UNSAID_WIDTH = 9;

function write(sheet: BookSheet, file: Workbook, paper: PaperName): void {
  const { freeze, gridlines } = sheet;
  const frozen = freeze.rows > 0 || freeze.columns > 0;
  const out = file.addWorksheet(sheet.name, {
    state: sheet.hidden ? 'hidden' : 'visible',
    views: [
      {
        ...(frozen ? { state: 'frozen', xSplit: freeze.columns, ySplit: freeze.rows } : {}),
        ...(gridlines === false ? { showGridLines: false } : {}),
      },
    ],
    ...filePage(sheet, paper),
  });
  for (const [column, width] of Object.entries(sheet.widths))
    out.getColumn(Number(column) + 1).width = width === UNSAID_WIDTH ? width + 0.001 : width;
  for (const [row, height] of Object.entries(sheet.heights)) out.getRow(Number(row) + 1).height = height;
  addPageBreaks(sheet, out);
  for (const table of sheet.tables) addTable(table, out);
  for (const cell of sheet.cells) addCell(cell, out);
  for (const row of [...(sheet.filteredRows ?? []), ...(sheet.hiddenRows ?? [])]) {
    const unseen = out.getRow(row + 1);
    unseen.hidden = true;
    // the writer leaves out a row that holds nothing and has no height
    if (unseen.cellCount === 0) unseen.height ??= USUAL_HEIGHT;
  }
  for (const merge of sheet.merges) out.mergeCells(areaText(merge));
  for (const rule of sheet.rules) addRule(rule, out);
  for (const [i, condition] of sheet.conditions.entries())
    out.addConditionalFormatting({
      ref: condition.areas.map(areaText).join(' '),
      rules: [fileCondition(condition, i + 1)],
    });
  for (const chart of drawnCharts(sheet)) addChart(chart, sheet.name, out);
  for (const picture of sheet.pictures ?? []) addPicture(picture, file, out);
  const asNumbers = sheet.cells.filter(
    ({ value, style }) => typeof value === 'string' && style?.format === TEXT,
  );
  out.ignoredErrors = asNumbers.map((cell) => ({ ref: address(cell), numberStoredAsText: true }));
}

const TEXT = '@';
const LIKE_A_FORMULA = /^[=+\-@]/;

function addCell({ row, column, value, formula, spill, style, note }: BookCell, out: Worksheet): void {
  const cell = out.getCell(row + 1, column + 1);
  const shown = isCellError(value) ? { error: fileError(value.error) } : value;
  if (formula === undefined) cell.value = shown;
  else {
    const answer = { formula: asStored(formula), ...(shown === null ? {} : { result: shown }) };
    // Excel puts an @ before a function of ours that is not said to spill, until its cell is entered again.
    const gives = spill ?? (callsOurs(formula) ? { row, column, rows: 1, columns: 1 } : undefined);
    cell.value = gives
      ? { ...answer, shareType: 'array', ref: areaText(gives), isDynamicArray: true }
      : answer;
  }
  if (style) cell.style = fileStyle(style);
  // A text that begins like a formula would become one when it is edited; a cell preset as text keeps it.
  if (formula === undefined && typeof value === 'string' && LIKE_A_FORMULA.test(value)) cell.numFmt = TEXT;
  if (note !== undefined) cell.note = { texts: [{ text: note }], ...noteSize(note) };
}

type FileError =
  '#N/A' | '#REF!' | '#NAME?' | '#DIV/0!' | '#NULL!' | '#VALUE!' | '#NUM!' | '#SPILL!' | '#CALC!';
/** A file has no #BUSY!: it is what a cell shows while it waits. */
const fileError = (error: string): FileError => (error === '#BUSY!' ? '#N/A' : error) as FileError;

/** Points, for the usual letters of a note. */
function noteSize(note: string): { width: number; height: number } {
  const width = 200;
  const lines = note.split('\n').reduce((sum, line) => sum + Math.ceil((line.length + 1) / 38), 0);
  return { width, height: 14 * lines + 12 };
}

/** Its cells are written like all others: the table only lies over them, in the sheet's own looks. */
function addTable({ name, area, columns }: BookTable, out: Worksheet): void {
  out.addTable({
    name,
    ref: address(area),
    headerRow: true,
    totalsRow: false,
    style: { theme: 'TableStyleLight1', showRowStripes: false },
    columns: columns.map((column) => ({
      name: column.name,
      filterButton: false,
      ...(column.formula === undefined ? {} : { calculatedColumnFormula: asStored(column.formula) }),
    })),
    rows: Array.from({ length: area.rows - 1 }, () => columns.map(() => null)),
  });
}

function addRule(
  { areas, kind, compare, bounds, blank, refusal, strict, prompt }: BookRule,
  out: Worksheet,
): void {
  const words = {
    allowBlank: blank,
    errorStyle: strict ? 'stop' : 'warning',
    showErrorMessage: true,
    ...(refusal === undefined ? {} : { error: refusal }),
    ...(prompt === undefined ? {} : { showInputMessage: true, prompt }),
  };
  const rule =
    kind === 'any'
      ? { type: kind, ...words }
      : {
          type: kind,
          ...(compare === undefined ? {} : { operator: compare }),
          formulae: bounds.map((bound) => (kind === 'list' ? bound : asStored(bound))),
          ...words,
        };
  for (const area of areas) out.dataValidations.add(`range:${areaText(area)}`, rule);
}
