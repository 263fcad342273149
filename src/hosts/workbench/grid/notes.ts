import { SheetsNoteModel } from '@univerjs/preset-sheets-note';
import type { Grid } from './grid';
import { inside, unitId } from './inside';

export const notesOn = (grid: Grid, sheetId: string) => [
  ...(inside(grid).get(SheetsNoteModel).getSheetNotes(unitId(grid), sheetId)?.values() ?? []),
];
