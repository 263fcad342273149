import { CellValueType, type ICellData, type IRange, isFormulaString } from '@univerjs/core';
import { SetRangeValuesCommand } from '@univerjs/preset-sheets-core';
import type { Grid } from '../grid/grid';
import { commands, undoList, unitId } from '../grid/inside';
import { headingsOf, tablesOn } from '../grid/tables';
import { type GridCells, sheetOf } from '../tables/newTableRows';
import { targets } from '../tables/pasteFromElsewhere';
import { type Held, type Match, replaced, type Wanted } from './search';

/** Why a cell is left as it is. */
export type Left = Exclude<Held, 'typed'> | 'formula' | 'heading';

export interface Replaced {
  /** Where other words stand now. */
  readonly at: readonly Match[];
  readonly left: readonly Left[];
}

const NO_MATTER = { startRow: 0, endRow: 0, startColumn: 0, endColumn: 0 };

/** How cells of a sheet take words that are written into them: as if they came from elsewhere, but that a number kept as text stays one. */
function taking(grid: Grid, sheetId: string): (words: string, row: number, column: number) => ICellData {
  const { value } = targets(grid, sheetId);
  const present = sheetOf(grid, sheetId).getSheet().getCellMatrix();
  return (words, row, column) =>
    present.getValue(row, column)?.t === CellValueType.FORCE_STRING && words !== ''
      ? { v: words, t: CellValueType.FORCE_STRING, p: null }
      : value(words, row, column);
}

/** Tells whether a cell may hold other words as the heading of a table: it needs some, and no other column may have them. */
function headings(grid: Grid): (words: string, at: Match) => boolean {
  const tables = new Map<string, readonly { readonly range: IRange; readonly texts: string[] }[]>();
  const tablesOf = (sheetId: string) => {
    const known =
      tables.get(sheetId) ??
      tablesOn(grid, sheetId).map((table) => ({
        range: table.getRange(),
        texts: headingsOf(grid, table).map((text) => text.trim().toLowerCase()),
      }));
    tables.set(sheetId, known);
    return known;
  };
  return (words, { sheetId, row, column }) => {
    const table = tablesOf(sheetId).find(
      ({ range }) => range.startRow === row && range.startColumn <= column && column <= range.endColumn,
    );
    if (!table) return true;
    const text = words.trim().toLowerCase();
    const index = column - table.range.startColumn;
    if (text === '' || table.texts.some((other, i) => i !== index && other === text)) return false;
    table.texts[index] = text;
    return true;
  };
}

/**
 * Writes other words in the place of those that were found, where they were typed, as one step. What a formula answers, what a
 * format writes around a number, and words with looks of their own are left, and so is what would become a formula, or a heading
 * of a table without words or like another of it.
 */
export function replaceIn(grid: Grid, matches: readonly Match[], wanted: Wanted, by: string): Replaced {
  const left: Left[] = [];
  const mayHead = headings(grid);
  const bySheet = new Map<string, { readonly cells: GridCells; readonly taken: ReturnType<typeof taking> }>();
  const at: Match[] = [];
  for (const match of matches) {
    const { sheetId, row, column, held } = match;
    const words = replaced(match, wanted, by);
    const why = held === 'typed' ? whyNot(words, match) : held;
    if (why !== undefined) {
      left.push(why);
      continue;
    }
    const sheet = bySheet.get(sheetId) ?? { cells: {}, taken: taking(grid, sheetId) };
    bySheet.set(sheetId, sheet);
    (sheet.cells[row] ??= {})[column] = sheet.taken(words, row, column);
    at.push(match);
  }
  if (at.length > 0) {
    const oneStep = undoList(grid).__tempBatchingUndoRedo(unitId(grid));
    for (const [subUnitId, { cells: value }] of bySheet)
      commands(grid).syncExecuteCommand(SetRangeValuesCommand.id, {
        unitId: unitId(grid),
        subUnitId,
        value,
        // it asks for one, or for what is selected in the sheet in view, though the cells have their places
        range: NO_MATTER,
      });
    oneStep.dispose();
  }
  return { at, left };

  function whyNot(words: string, match: Match): Left | undefined {
    if (isFormulaString(words)) return 'formula';
    return mayHead(words, match) ? undefined : 'heading';
  }
}
