import type { Area } from '../formula/area';
import type { BookCell } from '../book/book';
import { unescaped } from './readTexts';
import { parseArea } from '../formula/areaText';
import type { Relation } from './relations';
import { below, child, children, treeOf, words } from './xml';
import type { Package } from './zip';

type Notes = ReadonlyMap<string, string>;

/** The notes of a sheet, by the cell they belong to. */
export async function readNotes(file: Package, relations: readonly Relation[]): Promise<Notes> {
  const part = relations.find(({ type }) => type === 'comments')?.part;
  const root = await treeOf(file, part);
  if (!root) return new Map();
  const authors = children(child(root, 'authors'), 'author').map(words);
  const notes = children(child(root, 'commentList'), 'comment')
    // A thread leaves a stand-in among the notes, under an author of this form.
    .filter(({ attributes }) => !authors[Number(attributes.authorId)]?.startsWith('tc='))
    .map((comment) => {
      const text = below(child(comment, 'text'), 't').map(words).join('');
      return [comment.attributes.ref ?? '', unescaped(text).replaceAll('\r\n', '\n')] as const;
    });
  return new Map(notes);
}

/** Cells with their notes; a note on an empty cell makes a cell of it. */
export function withNotes(cells: readonly BookCell[], notes: Notes): readonly BookCell[] {
  if (notes.size === 0) return cells;
  const waiting = new Map<string, { readonly at: Area; readonly note: string }>(
    [...notes].flatMap(([ref, note]) => {
      const at = parseArea(ref);
      return at ? [[`${at.row},${at.column}`, { at, note }] as const] : [];
    }),
  );
  const noted = cells.map((cell) => {
    const key = `${cell.row},${cell.column}`;
    const found = waiting.get(key);
    waiting.delete(key);
    return found ? { ...cell, note: found.note } : cell;
  });
  const empty = [...waiting.values()].map(({ at: { row, column }, note }) => ({
    row,
    column,
    value: null,
    note,
  }));
  return [...noted, ...empty];
}
