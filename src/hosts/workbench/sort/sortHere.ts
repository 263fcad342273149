import type { IRange } from '@univerjs/core';
import type { SortBy } from '../../../engine/sort/order';
import { sortRows } from '../../../engine/sort/sortRows';
import { columnName } from '../../../formula/address';
import { h } from '../../../pane/element';
import type { Grid } from '../grid/grid';
import { inside, unitId } from '../grid/inside';
import { nextAnswers } from '../grid/ready';
import { takeKeyboard } from '../grid/keyboard';
import { type GridTable, headingsOf, tableOfCell } from '../grid/tables';
import { ask } from '../page/dialog';
import { answersNow, changedAnswers } from './changedAnswers';
import { chartAgainst, ruleAgainst } from './objections';
import { undone } from '../grid/undoKey';

type Say = (words: string) => void;

/** Rows that can be sorted, and what their columns are called. */
interface Rows {
  readonly name: string;
  readonly sheetId: string;
  readonly range: IRange;
  readonly columns: readonly string[];
}

const NOTHING_CHOSEN = 'Choose a cell of the table that shall be sorted, or the rows.';

/** A table without its heading. */
function rowsOf(grid: Grid, table: GridTable): Rows {
  const { startRow, ...range } = table.getRange();
  return {
    name: table.getDisplayName(),
    sheetId: table.getSubunitId(),
    range: { ...range, startRow: startRow + 1 },
    columns: headingsOf(grid, table),
  };
}

/** The table of the chosen cell; else what is selected, where that is more than one row. */
function chosenRows(grid: Grid): Rows | undefined {
  const table = tableOfCell(grid);
  const workbook = grid.api.getActiveWorkbook();
  const selected = workbook?.getActiveRange();
  if (table) return rowsOf(grid, table);
  if (!workbook || !selected || selected.getHeight() < 2) return undefined;
  return {
    name: selected.getA1Notation(),
    sheetId: workbook.getActiveSheet().getSheetId(),
    range: selected.getRange(),
    columns: Array.from({ length: selected.getWidth() }, (_, i) => columnName(selected.getColumn() + i)),
  };
}

/** Asks by which column rows shall be sorted: the table that is given, or what is chosen. Then it sorts them. */
export async function sortHere(grid: Grid, say: Say, table?: GridTable): Promise<void> {
  const rows = table ? rowsOf(grid, table) : chosenRows(grid);
  if (!rows) {
    say(NOTHING_CHOSEN);
    return;
  }
  const by = await askBy(grid, rows);
  takeKeyboard(grid);
  if (!by) return;
  const { range, sheetId: subUnitId } = rows;
  const request = { unitId: unitId(grid), subUnitId, range, by: [by] };
  const unsorted = Array.from({ length: range.endRow - range.startRow + 1 }, (_, i) => i);
  const before = answersNow(grid, { subUnitId, range, from: unsorted });
  const outcome = sortRows(inside(grid), request, [ruleAgainst(grid), chartAgainst(grid)]);
  const column = rows.columns[by.column - range.startColumn] ?? '';
  if ('refused' in outcome) say(outcome.refused);
  else if (!outcome.isChanged) say(`The rows of ${rows.name} stand in that order already.`);
  else {
    const done = `${rows.name} is sorted by ${column}.`;
    say(`${done} ${undone()}`);
    await nextAnswers(grid.api);
    const changed = changedAnswers(before, answersNow(grid, { subUnitId, range, from: outcome.from }));
    if (changed.length > 0)
      say(`${done} Answers that go by the order of its rows are others now: ${listed(changed)}. ${undone()}`);
  }
}

/** So many cells are named; of more it is told how many they are. */
const NAMED = 6;

const listed = (cells: readonly string[]): string =>
  cells.slice(0, NAMED).join(', ') + (cells.length > NAMED ? ` and ${cells.length - NAMED} more` : '');

async function askBy(grid: Grid, { name, range, columns }: Rows): Promise<SortBy | undefined> {
  const cell = grid.api.getActiveWorkbook()?.getActiveCell();
  const isIn = cell && range.startRow - 1 <= cell.getRow() && cell.getRow() <= range.endRow;
  const chosen = isIn ? cell.getColumn() : range.startColumn;
  const column = h(
    'select',
    {},
    ...columns.map((words, i) => {
      const at = range.startColumn + i;
      return h('option', { value: at, ...(at === chosen ? { selected: true } : {}) }, words);
    }),
  );
  const order = h(
    'select',
    {},
    h('option', { value: 'up' }, 'Smallest first, A to Z'),
    h('option', { value: 'down' }, 'Largest first, Z to A'),
  );
  const isWanted = await ask(
    `Sort ${name}`,
    'Each row stays together, with its formulas, and formulas elsewhere go on naming the row that they named. Empty cells come last; hidden rows stay where they are.',
    'Sort',
    [h('label', {}, 'By ', column), h('label', {}, 'Order ', order)],
  );
  return isWanted ? { column: Number(column.value), largestFirst: order.value === 'down' } : undefined;
}
