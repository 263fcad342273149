import { ErrorType } from '@univerjs/engine-formula';
import { CellAlertManagerService } from '@univerjs/preset-sheets-core';
import { createElement, type ReactNode } from 'react';
import { address, type Place } from '../../../formula/address';
import type { Grid } from './grid';
import { ENGINE_FUNCTIONS } from '../../../engine/natives';
import { inside } from './inside';
import type { KnownFailures } from '../cell/knownFailures';
import { shownValue } from './shownValue';
import { sayMeant } from '../../../formula/meantNames';

const FORMULA_ALERT = 'SHEET_FORMULA_ALERT';
/** Of the grid's own tip over a cell that holds what its rule does not allow. */
const RULE_ALERT = 'SHEET_DATA_VALIDATION_ALERT';
/** Room the grid keeps free beside the cell when it places the tip. */
export const TIP_SIZE = { width: 320, height: 112 };
/** Of ours, told where somebody has typed what is refused, and where something else has put it in. */
export const REFUSAL_ALERT = 'SWEEPTABLE_REFUSAL';
export const PUT_IN_ALERT = 'SWEEPTABLE_PUT_IN';
/** Of ours, told where somebody has typed what no answer can do with. */
export const UNREAD_ALERT = 'SWEEPTABLE_UNREAD';
/** Of these one stands at a time. */
export const OUR_ALERTS: readonly string[] = [REFUSAL_ALERT, PUT_IN_ALERT, UNREAD_ALERT];

/** What a formula may call besides our functions; the grid reads the last two by ways of its own. */
const CALLED_HERE = [...ENGINE_FUNCTIONS, 'LET', 'LAMBDA'];

export const ofNoUse = (place: Place): string => `${address(place)} cannot be used as it is`;
export const notAllowedIn = (place: Place): string => `Not allowed in ${address(place)}`;

/**
 * The grid's own tip names only the sort of error; over a cell that one of our functions refused it says our sentence, and
 * over one with a name that nobody knows which of our functions may be meant. Over one that a rule refuses it says which cell.
 * Call it once a workbook is open: the grid has no tips before.
 */
export function tellFailuresInTips(grid: Grid, failures: KnownFailures): void {
  const alerts = inside(grid).get(CellAlertManagerService);
  const show = alerts.showAlert.bind(alerts);
  alerts.showAlert = (alert) => {
    const { subUnitId, row, col } = alert.location;
    const say = (title: string, message: ReactNode): void =>
      show({ ...alert, ...TIP_SIZE, title, message: createElement('span', { className: 'tip' }, message) });
    if (alert.key === RULE_ALERT) {
      // where the reason stands there already
      const { currentAlert: told } = alerts;
      if (!told.has(REFUSAL_ALERT) && !told.has(PUT_IN_ALERT))
        say(notAllowedIn({ row, column: col }), alert.message);
      return;
    }
    if (alert.key !== FORMULA_ALERT) return show(alert);
    const value = shownValue(grid, subUnitId, row, col);
    const failure = failures.behind(value, subUnitId, row, col);
    if (failure) return say(`${failure.code} ${failure.name}`, failure.message);
    const workbook = grid.api.getActiveWorkbook();
    const formula = workbook?.getSheetBySheetId(subUnitId)?.getRange(row, col).getFormula();
    const own = workbook?.getDefinedNames().map((name) => name.getName().toUpperCase()) ?? [];
    const meant =
      value === ErrorType.NAME && formula ? sayMeant(formula, [...CALLED_HERE, ...own]) : undefined;
    if (meant !== undefined) say(ErrorType.NAME, meant);
    else show(alert);
  };
}
