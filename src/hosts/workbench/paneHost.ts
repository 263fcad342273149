import { TableManager } from '@univerjs/preset-sheets-table';
import type { LiveChart, Outcome, PaneHost } from '../../pane/host';
import { makePlan } from '../../sheets/makePlan';
import { TEMPLATES } from '../../sheets/templates';
import type { Grid } from './grid';
import type { KnownFailures } from './knownFailures';
import { lay } from './lay';
import { liveCharts } from './liveCharts';
import { onEveryChange } from './onEveryChange';
import { chooseFirstInput } from './session';
import { watchCell } from './watchCell';

/** What the pane may ask of the embedded grid. */
export const paneHost = (grid: Grid, failures: KnownFailures): PaneHost => ({
  insertSheet: (id, filled) => Promise.resolve(insertSheet(grid, id, filled)),
  putFormula: (formula) => Promise.resolve(putFormula(grid, formula)),
  watchCharts: (tell) => watchCharts(grid, tell),
  watchCell: watchCell(grid, failures),
  help: 'help.html',
});

function insertSheet(grid: Grid, id: string, filled: boolean): Outcome {
  const template = TEMPLATES.find((each) => each.id === id);
  const workbook = grid.api.getActiveWorkbook();
  if (!template || !workbook) return { refused: 'There is no such sheet. Reload the page and try again.' };
  const plan = makePlan(template, {
    filled,
    sheets: workbook.getSheets().map((sheet) => sheet.getSheetName()),
    tables: [
      ...grid.univer
        .__getInjector()
        .get(TableManager)
        .getTableList(workbook.getId())
        .map(({ name }) => name),
      ...workbook.getDefinedNames().map((name) => name.getName()),
    ],
  });
  try {
    const sheetId = lay(grid, plan);
    workbook.setActiveSheet(sheetId);
    chooseFirstInput(grid, plan);
  } catch (reason) {
    const why = reason instanceof Error ? reason.message : String(reason);
    return { refused: `“${plan.name}” could not be inserted, and nothing of it was left behind. ${why}` };
  }
  return {
    done: `“${plan.name}” is inserted${filled ? ' with the demo job' : ''}. Ctrl+Z takes it away again.`,
  };
}

function putFormula({ api }: Grid, formula: string): Outcome {
  const workbook = api.getActiveWorkbook();
  const range = workbook?.getActiveRange();
  if (!workbook || !range)
    return { refused: 'Choose the cell that the formula shall go to, then try again.' };
  if (!/^=\s*\S/.test(formula)) return { refused: 'This is no formula: a formula begins with =.' };
  const cell = workbook.getActiveSheet().getRange(range.getRow(), range.getColumn());
  const held = cell.getCellData();
  const at = cell.getA1Notation();
  if ((held?.v ?? '') !== '' || held?.f || held?.si)
    return { refused: `${at} holds something already. Choose an empty cell, then try again.` };
  cell.setValue({ f: formula });
  return { done: `The formula is in ${at}.` };
}

/** Charts follow every change of the workbook. */
function watchCharts(grid: Grid, tell: (charts: readonly LiveChart[]) => void): () => void {
  let told = '';
  const look = (): void => {
    const charts = liveCharts(grid);
    const now = JSON.stringify(charts);
    if (now === told) return;
    told = now;
    tell(charts);
  };
  look();
  return onEveryChange(grid, look);
}
