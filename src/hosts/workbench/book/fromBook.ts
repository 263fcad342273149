import { generateRandomId, type IWorkbookData, LocaleType, VerticalAlign } from '@univerjs/core';
import { FONT, USUAL_SIZE } from '../../../book/palette';
import type { Book, BookName } from '../../../book/book';
import { parseReference } from '../../../formula/reference';
import { decorations, RESOURCES, resources } from './besideCells';
import { snapshotSheet } from './snapshotSheet';

/** A name for cells is a reference to the grid, a name for anything else a formula. */
function storedName({ name, formula }: BookName) {
  const text = formula.replace(/^=/, '');
  const reference = parseReference(text);
  const isOfGrid = reference?.kind === 'cells' && reference.sheet !== undefined;
  return { id: generateRandomId(8), name, formulaOrRefString: isOfGrid ? text : `=${text}` };
}

/** A workbook as the grid opens it. */
export function workbookOf({ sheets, names }: Book): IWorkbookData {
  const all = sheets.map((sheet) => ({ id: generateRandomId(8), sheet }));
  const stored = names.map(storedName);
  return {
    id: generateRandomId(8),
    name: 'Sweeptable',
    appVersion: '0.25.1',
    locale: LocaleType.EN_US,
    styles: {},
    defaultStyle: { ff: FONT, fs: USUAL_SIZE, vt: VerticalAlign.MIDDLE },
    sheetOrder: all.map(({ id }) => id),
    sheets: Object.fromEntries(all.map(({ id, sheet }) => [id, snapshotSheet(sheet, id)])),
    resources: [
      ...resources(new Map(all.map(({ id, sheet }) => [id, decorations(sheet)]))),
      {
        name: RESOURCES.names,
        data: JSON.stringify(Object.fromEntries(stored.map((name) => [name.id, name]))),
      },
    ],
  };
}
