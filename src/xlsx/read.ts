import type { BookChart } from '../book/chart';
import type { Book, BookCell, BookName, BookSheet, BookTable } from '../book/book';
import { looksOutside } from '../formula/looksOutside';
import { asTyped, isTooLong } from '../formula/spelling';
import { FROM_1904 } from './daysFrom1904';
import { HIDDEN_BELOW, LeftOut, PROTECTION, sayParts, TOO_LONG } from './notKept';
import { withoutFull } from '../book/fullPages';
import { bookPage } from './page';
import { type ChartSheet, readCharts } from './readCharts';
import { readNotes, withNotes } from './readNotes';
import { type Common, readSheet } from './readSheet';
import { readStyles } from './readStyles';
import { readTables, type TableRead } from './readTables';
import { readTexts } from './readTexts';
import { DAMAGED, NO_WORKBOOK, UnreadableFile } from './refused';
import { type Relation, relationsOf } from './relations';
import { child, children, isTrue, type XmlNode, treeOf, words } from './xml';
import { openPackage, type Package } from './zip';

export { UnreadableFile } from './refused';

export interface OpenedFile {
  readonly book: Book;
  /** What was not kept, in sentences for the person who opened the file. */
  readonly notUnderstood: readonly string[];
}

/** Reads an .xlsx file, ours or a stranger's. Nothing in it runs. Throws `UnreadableFile` where nothing of it can be opened. */
export async function readXlsx(bytes: Uint8Array): Promise<OpenedFile> {
  const file = openPackage(bytes);
  const leftOut = new LeftOut();
  const workbook = (await relationsOf(file, '')).find(({ type }) => type === 'officeDocument')?.part;
  const root = workbook?.endsWith('.bin') ? undefined : await treeOf(file, workbook);
  if (workbook === undefined || root?.name !== 'workbook') throw new UnreadableFile(NO_WORKBOOK);
  sayParts(file.names, leftOut);
  const isFrom1904 = isTrue(child(root, 'workbookPr')?.attributes.date1904);
  if (isFrom1904) leftOut.say(FROM_1904);
  if (isTrue(child(root, 'workbookProtection')?.attributes.lockStructure)) leftOut.say(PROTECTION);

  const relations = await relationsOf(file, workbook);
  const part = (type: string) => relations.find((relation) => relation.type === type)?.part;
  const texts = part('sharedStrings');
  const common: Common = {
    texts: readTexts(texts === undefined ? undefined : await file.read(texts), leftOut),
    styles: readStyles(await treeOf(file, part('styles')), await treeOf(file, part('theme'))),
    leftOut,
    isFrom1904,
    cells: 0,
    spilled: 0,
    sharedLetters: 0,
    areaLetters: 0,
  };
  const listed = children(child(root, 'sheets'), 'sheet');
  const names = children(child(root, 'definedNames'), 'definedName');
  const local = namesBySheet(names);
  const byId = new Map(relations.map((relation) => [relation.id, relation]));
  const sheets: BookSheet[] = [];
  for (const [index, { attributes }] of listed.entries()) {
    const relation = byId.get(attributes.id ?? '');
    if (relation?.type !== 'worksheet' || relation.part === undefined) continue;
    sheets.push(
      await oneSheet(file, relation.part, attributes, local.get(String(index)) ?? new Map(), common),
    );
  }
  if (sheets.length === 0) throw new UnreadableFile(NO_WORKBOOK);
  return { book: { sheets, names: bookNames(names, leftOut) }, notUnderstood: leftOut.sentences };
}

async function oneSheet(
  file: Package,
  part: string,
  { name = '', state = 'visible' }: XmlNode['attributes'],
  local: ReadonlyMap<string, string>,
  common: Common,
): Promise<BookSheet> {
  const content = await file.read(part);
  if (!content) throw new UnreadableFile(DAMAGED);
  const { pages, unseen, ...body } = readSheet(content, common);
  const relations = await relationsOf(file, part);
  const notes = await readNotes(file, relations);
  const read = await readTables(file, relations, common.leftOut);
  const tables = read.map(({ table }) => table);
  const { filteredRows, hiddenRows } = rowsUnseen(unseen, read, body.cells);
  if (filteredRows.length + hiddenRows.length < unseen.length) common.leftOut.say(HIDDEN_BELOW);
  const charts = await sheetCharts(file, relations, { name, tables, cells: body.cells }, common.leftOut);
  const page = bookPage(pages, name, local, { cells: body.cells, charts }, common.leftOut);
  const sheet: BookSheet = {
    ...body,
    name,
    hidden: state !== 'visible',
    ...(filteredRows.length > 0 ? { filteredRows } : {}),
    ...(hiddenRows.length > 0 ? { hiddenRows } : {}),
    cells: withNotes(body.cells, notes),
    tables,
    charts,
    page,
  };
  return { ...sheet, page: { ...page, breaks: withoutFull(sheet, pages.short) } };
}

/** What hides each row, down to the last cell: a file may hide all rows that there can be below it. */
function rowsUnseen(unseen: readonly number[], read: readonly TableRead[], cells: readonly BookCell[]) {
  const filtered = read.filter(({ isFiltered }) => isFiltered);
  const isFilteredOut = (row: number): boolean =>
    filtered.some(({ table: { area } }) => isBelowHeading(row, area));
  const last = cells.reduce((most, { row }) => Math.max(most, row), -1);
  return {
    filteredRows: unseen.filter(isFilteredOut),
    hiddenRows: unseen.filter((row) => !isFilteredOut(row) && row <= last),
  };
}

const isBelowHeading = (at: number, { row, rows }: BookTable['area']): boolean => row < at && at < row + rows;

/** Names that hold for one sheet, by its number: the file keeps what is printed among them. */
function namesBySheet(names: readonly XmlNode[]): ReadonlyMap<string, ReadonlyMap<string, string>> {
  const found = new Map<string, Map<string, string>>();
  for (const node of names) {
    const { localSheetId, name = '' } = node.attributes;
    if (localSheetId === undefined) continue;
    const own = found.get(localSheetId) ?? new Map<string, string>();
    found.set(localSheetId, own.set(name, words(node)));
  }
  return found;
}

function bookNames(names: readonly XmlNode[], leftOut: LeftOut): BookName[] {
  return names.flatMap((node) => {
    const { name = '', localSheetId, hidden } = node.attributes;
    if (name.startsWith('_xl') || isTrue(hidden)) return [];
    if (isTooLong(words(node))) {
      leftOut.say(TOO_LONG);
      return [];
    }
    const formula = asTyped(words(node));
    if (localSheetId === undefined && !looksOutside(formula)) return [{ name, formula }];
    leftOut.say('Names that hold for one sheet only, or for another file, are left out.');
    return [];
  });
}

async function sheetCharts(
  file: Package,
  relations: readonly Relation[],
  sheet: ChartSheet,
  leftOut: LeftOut,
): Promise<BookChart[]> {
  const drawing = relations.find(({ type }) => type === 'drawing')?.part;
  return drawing === undefined ? [] : readCharts(file, drawing, sheet, leftOut);
}
