import { RemoveNoteMutation, UpdateNoteMutation } from '@univerjs/preset-sheets-note';
import { holdsCell } from '../../../engine/gridRange';
import { rowsSortedBy } from '../../../engine/sort/rowsSorted';
import type { Grid } from '../grid/grid';
import { interceptors } from '../grid/inside';
import { notesOn } from '../grid/notes';
import { NOTHING } from '../tables/newTableRows';

/** Notes go with the cells of rows that are sorted, in the same step. */
export function letNotesFollow(grid: Grid): void {
  interceptors(grid).interceptCommand({
    getMutations(command) {
      const sorted = rowsSortedBy(command);
      if (!sorted) return NOTHING;
      const { unitId, subUnitId: sheetId, range, from } = sorted;
      const notes = notesOn(grid, sheetId)
        .filter(({ row, col }) => holdsCell(range, row, col))
        .map((note) => ({ ...note }));
      const taken = notes.map(({ id }) => ({
        id: RemoveNoteMutation.id,
        params: { unitId, sheetId, noteId: id },
      }));
      const put = (rowOf: (row: number) => number) =>
        notes.map((note) => {
          const row = rowOf(note.row);
          return {
            id: UpdateNoteMutation.id,
            params: { unitId, sheetId, row, col: note.col, note: { ...note, row } },
          };
        });
      const now = (row: number): number => range.startRow + from.indexOf(row - range.startRow);
      return { redos: [...taken, ...put(now)], undos: [...taken, ...put((row) => row)] };
    },
  });
}
