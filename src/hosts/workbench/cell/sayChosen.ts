import { h } from '../../../pane/element';
import { onEveryChange } from '../grid/changes';
import { chosenRange } from '../grid/choosing';
import type { Grid } from '../grid/grid';
import { isWriting } from '../grid/keyboard';
import { notesOn } from '../grid/notes';
import { shownValue } from '../grid/shownValue';
import type { KnownFailures } from './knownFailures';
import { SelectedCellReader } from './selectedCell';

/** What a person sees who looks at the chosen cells: where they are, what the cell shows, why it refuses, and its note. */
function wordsOf(grid: Grid, failures: KnownFailures, reader: SelectedCellReader): string {
  const workbook = grid.api.getActiveWorkbook();
  const [range, cell, read] = [chosenRange(grid), workbook?.getActiveCell(), reader.selected()];
  if (!workbook || !range || !cell || !read) return '';
  const place = [workbook.getActiveSheet().getSheetId(), cell.getRow(), cell.getColumn()] as const;
  const [sheetId, row, column] = place;
  const failure = failures.behind(shownValue(grid, ...place), ...place);
  const note = notesOn(grid, sheetId).find((each) => each.row === row && each.col === column)?.note;
  const at = range.getA1Notation();
  const isOne = !at.includes(':') || range.isMerged();
  return [
    isOne ? `${read.address}: ${read.shown || 'empty'}` : at.replace(':', ' to '),
    ...(isOne && failure ? [failure.message] : []),
    ...(isOne && note ? [`Note: ${note}`] : []),
  ].join('. ');
}

/** From now on says what is chosen, which the grid draws and leaves unsaid. */
export function sayChosen(grid: Grid, failures: KnownFailures): void {
  const said = h('div', { class: 'heard', role: 'status', id: 'chosen' });
  document.body.append(said);
  const reader = new SelectedCellReader(grid, failures);
  onEveryChange(grid, () => {
    // what is typed is heard from the keyboard
    if (isWriting(grid)) return;
    const words = wordsOf(grid, failures, reader);
    if (words !== said.textContent) said.textContent = words;
  });
}
