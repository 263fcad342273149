import type { Outcome } from '../../../pane/host';
import { address } from '../../../formula/address';
import { speaksOf } from '../../../formula/speaksOf';
import { NOT_BACK, takenAway } from '../../../pane/sentences';
import type { Grid } from '../grid/grid';
import type { LaidInGrid } from './lay';
import { sheetState } from './sheetState';
import { undoKey } from '../grid/undoKey';

/** A sheet that has just been laid, as it is left. */
export interface LeftInGrid extends LaidInGrid {
  readonly name: string;
  readonly state: string | undefined;
}

export const asLeft = (grid: Grid, laid: LaidInGrid, name: string): LeftInGrid => ({
  ...laid,
  name,
  state: sheetState(grid, laid.id),
});

/** Where another sheet or a name speaks of sheets that go together: it would show #REF! without them. */
function useElsewhere({ api }: Grid, going: readonly LeftInGrid[]): Outcome | undefined {
  const workbook = api.getActiveWorkbook();
  if (!workbook) return undefined;
  const ids = new Set(going.map(({ id }) => id));
  const tables = workbook
    .getTableList()
    .filter((table) => ids.has(table.subUnitId))
    .map((table) => table.name);
  const speaks = (formula: string): boolean => going.some(({ name }) => speaksOf(formula, name, tables));
  const named = workbook
    .getDefinedNames()
    .find((each) => speaks(each.getFormulaOrRefString().replace(/^=?/, '=')));
  if (named) return NOT_BACK.named(named.getName());
  for (const sheet of workbook.getSheets()) {
    if (ids.has(sheet.getSheetId())) continue;
    const formulas = sheet.getDataRange().getFormulas();
    for (const [row, line] of formulas.entries()) {
      const column = line.findIndex(speaks);
      if (column >= 0) return NOT_BACK.usedIn(`${address({ row, column })} on “${sheet.getSheetName()}”`);
    }
  }
  return undefined;
}

/**
 * Takes sheets away that were laid in one step: as long as all of them stay as they are and nothing else needs one.
 *
 * @param done - what is said then
 */
export function takeSheetsBack(grid: Grid, left: readonly LeftInGrid[], done: string): Outcome {
  for (const { id, name, state } of left) {
    const now = sheetState(grid, id);
    if (now === undefined) return NOT_BACK.gone(name);
    if (now !== state) return NOT_BACK.changed(name);
  }
  const use = useElsewhere(grid, left);
  if (use) return use;
  // the last first, which may look up in those before it
  for (const { takeAway } of [...left].reverse()) takeAway();
  return { done };
}

/** Gives how to take a sheet back that has just been laid. */
export const takeSheetBack =
  (grid: Grid, left: LeftInGrid): (() => Promise<Outcome>) =>
  () =>
    Promise.resolve(takeSheetsBack(grid, [left], `${takenAway(left.name)} ${undoKey()} brings it back.`));
