import { hideRows, showRows } from '../../../engine/filter/hideRows';
import { isByHand } from '../../../engine/filter/byHand';
import { areaOfGridRange } from '../../../engine/gridRange';
import type { Grid } from '../grid/grid';
import { inside, unitId } from '../grid/inside';
import { takeKeyboard } from '../grid/keyboard';
import { shownTexts } from '../grid/shownTexts';
import { type GridTable, headingsOf, tableOfCell } from '../grid/tables';
import { sheetOf } from '../tables/newTableRows';
import { askWhich } from './filterDialog';
import { bodyRows } from './tableFilters';
import { undone } from '../grid/undoKey';

type Say = (words: string) => void;

const STILL_COUNT = 'Formulas and charts still count them, all but SUBTOTAL and AGGREGATE.';

/** The rows of a table below its heading: those in view, and those that are hidden. */
function rowsOf(grid: Grid, table: GridTable): { readonly shown: number[]; readonly hidden: number[] } {
  const sheet = sheetOf(grid, table.getSubunitId()).getSheet();
  const rows = bodyRows(areaOfGridRange(table.getRange()));
  return {
    shown: rows.filter((row) => sheet.getRowRawVisible(row)),
    hidden: rows.filter((row) => !sheet.getRowRawVisible(row)),
  };
}

/** How many rows of a table are hidden, and how many of them by hand. */
export interface Hidden {
  readonly all: number;
  readonly byHand: number;
}
export function hiddenRows(grid: Grid, table: GridTable): Hidden {
  const { hidden } = rowsOf(grid, table);
  const known = sheetOf(grid, table.getSubunitId()).getSheet().getRowManager();
  return { all: hidden.length, byHand: hidden.filter((row) => isByHand(known.getRow(row))).length };
}

const rowsInWords = (count: number): string => (count === 1 ? '1 row' : `${count} rows`);
const are = (count: number): string => (count === 1 ? 'is' : 'are');

/** What stands at the foot of a table with hidden rows. */
export function hiddenInWords({ all, byHand }: Hidden): string {
  const hand = byHand === 0 ? '' : byHand === all ? ' by hand' : `, ${byHand} by hand`;
  return `${rowsInWords(all)} ${are(all)} hidden${hand}: show`;
}

/** Shows all rows of a table. */
export function showAll(grid: Grid, say: Say, table: GridTable): void {
  const { hidden } = rowsOf(grid, table);
  if (hidden.length === 0) return;
  showRows(inside(grid), { unitId: unitId(grid), subUnitId: table.getSubunitId(), rows: hidden });
  say(`All rows of ${table.getDisplayName()} are shown. ${undone()}`);
}

/** What is typed must not go into a cell that nobody sees. */
function chooseShownCell(grid: Grid, table: GridTable, shown: readonly number[]): void {
  const sheet = sheetOf(grid, table.getSubunitId());
  const cell = grid.api.getActiveWorkbook()?.getActiveCell();
  const [first] = shown;
  if (cell && first !== undefined && !sheet.getSheet().getRowRawVisible(cell.getRow()))
    sheet.getRange(first, cell.getColumn()).activate();
}

/** Asks which rows of a table shall stay in view, and hides the others: of those that are in view, so that a second filter narrows. */
export async function filterHere(grid: Grid, say: Say, chosen?: GridTable): Promise<void> {
  const table = chosen ?? tableOfCell(grid);
  if (!table) {
    say('Choose a cell of the table that shall be filtered.');
    return;
  }
  const { startColumn, endColumn } = table.getRange();
  const { shown } = rowsOf(grid, table);
  const [name, sheetId] = [table.getDisplayName(), table.getSubunitId()];
  const textAt = shownTexts(grid, sheetId);
  const texts = (column: number): readonly string[] => shown.map((row) => textAt(row, startColumn + column));
  const at = grid.api.getActiveWorkbook()?.getActiveCell()?.getColumn() ?? startColumn;
  const answer = await askWhich({
    name,
    columns: headingsOf(grid, table),
    first: startColumn <= at && at <= endColumn ? at - startColumn : 0,
    texts,
  });
  takeKeyboard(grid);
  if (!answer) return;
  const now = texts(answer.column);
  const out = shown.filter((_, i) => answer.without.has(now[i] ?? ''));
  if (out.length === 0) say('All of them are ticked: no row is hidden by that.');
  else if (out.length === shown.length)
    say('None is ticked: nothing of the table would be left in view, and no row was hidden.');
  else {
    hideRows(inside(grid), { unitId: unitId(grid), subUnitId: sheetId, rows: out });
    const { shown: left, hidden } = rowsOf(grid, table);
    chooseShownCell(grid, table, left);
    say(`${rowsInWords(hidden.length)} of ${name} ${are(hidden.length)} hidden. ${STILL_COUNT} ${undone()}`);
  }
}
