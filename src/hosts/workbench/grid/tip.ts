import { ErrorType } from '@univerjs/engine-formula';
import { CellAlertManagerService } from '@univerjs/preset-sheets-core';
import { createElement } from 'react';
import type { Grid } from './grid';
import { inside } from './inside';
import type { KnownFailures } from '../cell/knownFailures';
import { shownValue } from './shownValue';
import { sayMeant } from '../../../formula/meantNames';

const FORMULA_ALERT = 'SHEET_FORMULA_ALERT';
/** Room the grid keeps free beside the cell when it places the tip. */
const SIZE = { width: 320, height: 112 };

/**
 * The grid's own tip names only the sort of error; over a cell that one of our functions refused it says our sentence, and
 * over one with a name that nobody knows which of our functions may be meant.
 * Call it once a workbook is open: the grid has no tips before.
 */
export function tellFailuresInTips(grid: Grid, failures: KnownFailures): void {
  const alerts = inside(grid).get(CellAlertManagerService);
  const show = alerts.showAlert.bind(alerts);
  alerts.showAlert = (alert) => {
    if (alert.key !== FORMULA_ALERT) return show(alert);
    const { subUnitId, row, col } = alert.location;
    const value = shownValue(grid, subUnitId, row, col);
    const failure = failures.behind(value, subUnitId, row, col);
    const say = (title: string, message: string): void =>
      show({ ...alert, ...SIZE, title, message: createElement('span', { className: 'tip' }, message) });
    if (failure) return say(`${failure.code} ${failure.name}`, failure.message);
    const formula = grid.api
      .getActiveWorkbook()
      ?.getSheetBySheetId(subUnitId)
      ?.getRange(row, col)
      .getFormula();
    const meant = value === ErrorType.NAME && formula ? sayMeant(formula) : undefined;
    if (meant !== undefined) say(ErrorType.NAME, meant);
    else show(alert);
  };
}
