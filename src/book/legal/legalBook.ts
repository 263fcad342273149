import type { Book } from '../book';
import { Changes } from './changes';
import { legalSheet } from './legalSheet';
import { legalNamesOf, Renaming, sayRenamed } from './renames';

export interface LegalBook {
  readonly book: Book;
  /** What is otherwise than in the book given, in sentences. */
  readonly changed: readonly string[];
}

/**
 * A book as spreadsheet programs take it from a file: they refuse a whole file for one name that may not be. Formulas follow
 * what is renamed. A book that is legal comes back with nothing changed.
 */
export function legalBook(book: Book): LegalBook {
  const changes = new Changes();
  const legal = legalNamesOf(book);
  const renaming = new Renaming(book, legal);
  sayRenamed(book, legal, changes);
  const isVisible = book.sheets.some(({ hidden }) => !hidden);
  if (!isVisible && book.sheets.length > 0)
    changes.say('The first sheet is shown in the file: one of them has to be.');
  const sheets = book.sheets.map((sheet, i) => {
    const made = legalSheet(sheet, legal, renaming, changes);
    const name = legal.sheets[i]?.name ?? sheet.name;
    return {
      ...made,
      name,
      hidden: sheet.hidden && (isVisible || i > 0),
      ...(sheet.names && {
        names: sheet.names.map((each) => ({ name: each.name, formula: renaming.formula(each.formula) })),
      }),
      ...(sheet.page.header === sheet.name ? { page: { ...made.page, header: name } } : {}),
    };
  });
  const names = book.names.flatMap(({ formula }, i) => {
    const name = legal.names[i]?.name ?? '';
    if (formula.replace(/^=/, '').trim() !== '') return [{ name, formula: renaming.formula(formula) }];
    changes.say(`The name “${name}” stands for nothing, and is left out of the file.`);
    return [];
  });
  return { book: { sheets, names }, changed: changes.sentences };
}
