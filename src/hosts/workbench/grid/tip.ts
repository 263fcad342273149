import { CellAlertManagerService } from '@univerjs/preset-sheets-core';
import { createElement } from 'react';
import type { Grid } from './grid';
import { inside } from './inside';
import type { KnownFailures } from '../cell/knownFailures';
import { shownValue } from './shownValue';

const FORMULA_ALERT = 'SHEET_FORMULA_ALERT';
/** Room the grid keeps free beside the cell when it places the tip. */
const SIZE = { width: 320, height: 112 };

/**
 * The grid's own tip names only the sort of error; over a cell that one of our functions refused it says our sentence.
 * Call it once a workbook is open: the grid has no tips before.
 */
export function tellFailuresInTips(grid: Grid, failures: KnownFailures): void {
  const alerts = inside(grid).get(CellAlertManagerService);
  const show = alerts.showAlert.bind(alerts);
  alerts.showAlert = (alert) => {
    if (alert.key !== FORMULA_ALERT) return show(alert);
    const { subUnitId, row, col } = alert.location;
    const failure = failures.behind(shownValue(grid, subUnitId, row, col), subUnitId, row, col);
    if (!failure) return show(alert);
    const title = `${failure.code} ${failure.name}`;
    show({ ...alert, ...SIZE, title, message: createElement('span', { className: 'tip' }, failure.message) });
  };
}
