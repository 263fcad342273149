import type { Outcome } from '../../../pane/host';
import { address } from '../../../formula/address';
import { speaksOf } from '../../../formula/speaksOf';
import { NOT_BACK, takenAway } from '../../../pane/sentences';
import type { Grid } from '../grid/grid';
import type { LaidInGrid } from './lay';
import { sheetState } from './sheetState';

/** Where another sheet or a name speaks of a sheet: it would show #REF! without it. */
function useElsewhere({ api }: Grid, id: string, name: string): Outcome | undefined {
  const workbook = api.getActiveWorkbook();
  if (!workbook) return undefined;
  const tables = workbook
    .getTableList()
    .filter((table) => table.subUnitId === id)
    .map((table) => table.name);
  const named = workbook
    .getDefinedNames()
    .find((each) => speaksOf(each.getFormulaOrRefString().replace(/^=?/, '='), name, tables));
  if (named) return NOT_BACK.named(named.getName());
  for (const sheet of workbook.getSheets()) {
    if (sheet.getSheetId() === id) continue;
    const formulas = sheet.getDataRange().getFormulas();
    for (const [row, line] of formulas.entries()) {
      const column = line.findIndex((formula) => speaksOf(formula, name, tables));
      if (column >= 0) return NOT_BACK.usedIn(`${address({ row, column })} on “${sheet.getSheetName()}”`);
    }
  }
  return undefined;
}

function backFrom(grid: Grid, { id, takeAway }: LaidInGrid, name: string, left: string | undefined): Outcome {
  const now = sheetState(grid, id);
  if (now === undefined) return NOT_BACK.gone(name);
  if (now !== left) return NOT_BACK.changed(name);
  const use = useElsewhere(grid, id, name);
  if (use) return use;
  takeAway();
  return { done: `${takenAway(name)} Ctrl+Z brings it back.` };
}

/** Gives how to take a sheet back that has just been laid: as long as it stays as it is and nothing else needs it. */
export function takeSheetBack(grid: Grid, laid: LaidInGrid, name: string): () => Promise<Outcome> {
  const left = sheetState(grid, laid.id);
  return () => Promise.resolve(backFrom(grid, laid, name, left));
}
