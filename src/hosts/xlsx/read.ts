import type { PlanChart } from '../../sheets/plan';
import type { Book, BookName, BookSheet } from './book';
import { looksOutside, typed } from './formulas';
import { LeftOut, PROTECTION, sayParts } from './leftOut';
import { readCharts } from './readCharts';
import { readNotes, withNotes } from './readNotes';
import { type Common, readSheet } from './readSheet';
import { readStyles } from './readStyles';
import { readTables } from './readTables';
import { readTexts } from './readTexts';
import { DAMAGED, NO_WORKBOOK, Refused } from './refused';
import { areaOf } from './refs';
import { type Relation, relationsOf } from './relations';
import { child, children, isTrue, type Node, tree, words } from './xml';
import { openPackage, type Package } from './zip';

export { Refused } from './refused';

export interface Read {
  readonly book: Book;
  /** What was not kept, in sentences for the person who opened the file. */
  readonly notUnderstood: readonly string[];
}

/** Reads an .xlsx file, ours or a stranger's. Nothing in it runs. Throws `Refused` where nothing of it can be opened. */
export async function readXlsx(bytes: Uint8Array): Promise<Read> {
  const file = openPackage(bytes);
  const leftOut = new LeftOut();
  const workbook = (await relationsOf(file, '')).find(({ type }) => type === 'officeDocument')?.part;
  const content = workbook === undefined ? undefined : await file.read(workbook);
  if (workbook === undefined || !content || workbook.endsWith('.bin')) throw new Refused(NO_WORKBOOK);
  const root = tree(content);
  if (root.name !== 'workbook') throw new Refused(NO_WORKBOOK);
  sayParts(file.names, leftOut);
  if (isTrue(child(root, 'workbookPr')?.attributes.date1904))
    leftOut.say('This file counts days from 1904: its dates are shown four years and a day early.');
  if (isTrue(child(root, 'workbookProtection')?.attributes.lockStructure)) leftOut.say(PROTECTION);

  const relations = await relationsOf(file, workbook);
  const part = (type: string) => relations.find((relation) => relation.type === type)?.part;
  const treeOf = async (name: string | undefined): Promise<Node | undefined> => {
    const found = name === undefined ? undefined : await file.read(name);
    return found && tree(found);
  };
  const texts = part('sharedStrings');
  const common: Common = {
    texts: readTexts(texts === undefined ? undefined : await file.read(texts)),
    styles: readStyles(await treeOf(part('styles')), await treeOf(part('theme'))),
    leftOut,
    cells: 0,
  };
  const listed = children(child(root, 'sheets'), 'sheet');
  const names = children(child(root, 'definedNames'), 'definedName');
  const sheets: BookSheet[] = [];
  for (const [index, { attributes }] of listed.entries()) {
    const relation = relations.find(({ id }) => id === attributes.id);
    if (relation?.type !== 'worksheet' || relation.part === undefined) continue;
    sheets.push(await oneSheet(file, relation.part, attributes, localNames(names, index), common));
  }
  if (sheets.length === 0) throw new Refused(NO_WORKBOOK);
  return { book: { sheets, names: bookNames(names, leftOut) }, notUnderstood: leftOut.sentences };
}

async function oneSheet(
  file: Package,
  part: string,
  { name = '', state = 'visible' }: Node['attributes'],
  local: ReadonlyMap<string, string>,
  common: Common,
): Promise<BookSheet> {
  const content = await file.read(part);
  if (!content) throw new Refused(DAMAGED);
  const { landscape, breaks, ...body } = readSheet(content, common);
  const relations = await relationsOf(file, part);
  const notes = await readNotes(file, relations);
  const printed = areaOf((local.get('_xlnm.Print_Area') ?? '').split('!').at(-1) as string);
  const titles = areaOf(/\$\d+:\$\d+/.exec(local.get('_xlnm.Print_Titles') ?? '')?.[0] ?? '');
  return {
    ...body,
    name,
    hidden: state !== 'visible',
    cells: withNotes(body.cells, notes),
    tables: await readTables(file, relations, common.leftOut),
    charts: await sheetCharts(file, relations, name, common.leftOut),
    page: {
      landscape,
      breaks,
      header: name,
      titleRows: titles?.row === 0 ? titles.rows : 0,
      ...(printed ? { area: printed } : {}),
    },
  };
}

/** Names that hold for one sheet: the file keeps what is printed among them. */
const localNames = (names: readonly Node[], index: number): ReadonlyMap<string, string> =>
  new Map(
    names
      .filter(({ attributes }) => attributes.localSheetId === String(index))
      .map((node) => [node.attributes.name ?? '', words(node)]),
  );

function bookNames(names: readonly Node[], leftOut: LeftOut): BookName[] {
  return names.flatMap((node) => {
    const { name = '', localSheetId, hidden } = node.attributes;
    if (name.startsWith('_xl') || isTrue(hidden)) return [];
    const formula = typed(words(node));
    if (localSheetId === undefined && !looksOutside(formula)) return [{ name, formula }];
    leftOut.say('Names that hold for one sheet only, or for another file, are left out.');
    return [];
  });
}

async function sheetCharts(
  file: Package,
  relations: readonly Relation[],
  sheetName: string,
  leftOut: LeftOut,
): Promise<PlanChart[]> {
  const drawing = relations.find(({ type }) => type === 'drawing')?.part;
  return drawing === undefined ? [] : readCharts(file, drawing, sheetName, leftOut);
}
