import type { BookChart } from '../book/chart';
import type { Book, BookName, BookSheet } from '../book/book';
import type { Area } from '../formula/area';
import { MOST_COLUMNS } from '../formula/areas';
import { looksOutside } from '../formula/outside';
import { areaIn, areasIn } from '../formula/reference';
import { asTyped, isTooLong } from '../formula/spelling';
import { LeftOut, PRINTED, PROTECTION, sayParts, TOO_LONG } from './leftOut';
import { type ChartSheet, readCharts } from './readCharts';
import { readNotes, withNotes } from './readNotes';
import { type Common, readSheet } from './readSheet';
import { readStyles } from './readStyles';
import { readTables } from './readTables';
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
  if (isTrue(child(root, 'workbookPr')?.attributes.date1904))
    leftOut.say('This file counts days from 1904: its dates are shown four years and a day early.');
  if (isTrue(child(root, 'workbookProtection')?.attributes.lockStructure)) leftOut.say(PROTECTION);

  const relations = await relationsOf(file, workbook);
  const part = (type: string) => relations.find((relation) => relation.type === type)?.part;
  const texts = part('sharedStrings');
  const common: Common = {
    texts: readTexts(texts === undefined ? undefined : await file.read(texts)),
    styles: readStyles(await treeOf(file, part('styles')), await treeOf(file, part('theme'))),
    leftOut,
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

const isOfRows = ({ columns }: Area): boolean => columns === MOST_COLUMNS;

async function oneSheet(
  file: Package,
  part: string,
  { name = '', state = 'visible' }: XmlNode['attributes'],
  local: ReadonlyMap<string, string>,
  common: Common,
): Promise<BookSheet> {
  const content = await file.read(part);
  if (!content) throw new UnreadableFile(DAMAGED);
  const { landscape, breaks, ...body } = readSheet(content, common);
  const relations = await relationsOf(file, part);
  const notes = await readNotes(file, relations);
  const printArea = local.get('_xlnm.Print_Area') ?? '';
  const printed = areaIn(printArea);
  if (printArea !== '' && !printed) common.leftOut.say(PRINTED);
  const tables = await readTables(file, relations, common.leftOut);
  const titles = areasIn(local.get('_xlnm.Print_Titles') ?? '').find(isOfRows);
  return {
    ...body,
    name,
    hidden: state !== 'visible',
    cells: withNotes(body.cells, notes),
    tables,
    charts: await sheetCharts(file, relations, { name, tables, cells: body.cells }, common.leftOut),
    page: {
      landscape,
      breaks,
      header: name,
      titleRows: titles?.rows ?? 0,
      ...(titles && titles.row > 0 ? { titlesFrom: titles.row } : {}),
      ...(printed ? { area: printed } : {}),
    },
  };
}

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
