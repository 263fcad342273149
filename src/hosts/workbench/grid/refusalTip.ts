import { type IRange } from '@univerjs/core';
import {
  AutoFillCommand,
  CellAlertManagerService,
  CellAlertType,
  MoveRangeCommand,
  RefillCommand,
  SetSelectionsOperation,
  SheetsSelectionsService,
} from '@univerjs/preset-sheets-core';
import { createElement, type MouseEvent, type ReactNode } from 'react';
import type { Place } from '../../../formula/address';
import { brokenRules } from './brokenRules';
import type { Grid } from './grid';
import { NOTHING } from '../tables/newTableRows';
import { clipboard, commands, inside, unitId } from './inside';
import { takeKeyboard } from './keyboard';
import { giveUpWriting, onRefusedInput, onWriting, type RefusedInput, writeAgain } from './refusedInput';
import { notAllowedIn, REFUSAL_ALERT, TIP_SIZE } from './tip';

/** What fills cells that are chosen afterwards. */
const FILLS: readonly string[] = [AutoFillCommand.id, RefillCommand.id, MoveRangeCommand.id];

type SheetPlace = Place & { readonly sheetId: string };

/** Our tip at a cell, read out as it comes. */
function tipAt(grid: Grid) {
  const alerts = inside(grid).get(CellAlertManagerService);
  return {
    show({ sheetId, row, column }: SheetPlace, title: string, ...content: ReactNode[]): void {
      alerts.showAlert({
        key: REFUSAL_ALERT,
        type: CellAlertType.ERROR,
        ...TIP_SIZE,
        title,
        message: createElement(
          'div',
          { className: 'tip', role: 'alert' },
          createElement('span', { className: 'heard' }, `${title}. `),
          ...content,
        ),
        location: { unitId: unitId(grid), subUnitId: sheetId, row, col: column },
      });
    },
    hide: (): void => alerts.removeAlert(REFUSAL_ALERT),
  };
}

/** What gives the former value back, for a hand and for a key. */
function wayBack(grid: Grid, { sheetId, row, column }: SheetPlace): ReactNode {
  const had = grid.api
    .getActiveWorkbook()
    ?.getSheetBySheetId(sheetId)
    ?.getRange(row, column)
    .getDisplayValue();
  const run = (): void => {
    giveUpWriting(grid);
    takeKeyboard(grid);
  };
  return createElement(
    'button',
    // the editor keeps the keyboard
    { type: 'button', onMouseDown: (event: MouseEvent) => event.preventDefault(), onClick: run },
    had ? `Back to ${had}` : 'Leave it empty',
    createElement('kbd', null, 'Esc'),
  );
}

const moreText = (count: number): string =>
  count === 0
    ? ''
    : count === 1
      ? ' So is one more of these cells.'
      : ` So are ${count} more of these cells.`;

/**
 * Where a rule refuses what was typed, the cell stays open with it, and the reason stands beside it until another value is
 * taken or Escape gives the former one back. What comes by a paste or a fill stays in the cells, which are marked; the reason is
 * told at the first of them. Call it once a workbook is open.
 */
export function tellRefusals(grid: Grid): void {
  const tip = tipAt(grid);
  onWriting(grid, tip.hide);
  onRefusedInput(grid, (input: RefusedInput) => {
    writeAgain(grid, input);
    tip.show(input, 'Not taken', input.reason, wayBack(grid, input));
  });

  const look = async (areas: readonly IRange[]): Promise<void> => {
    const sheetId = grid.api.getActiveWorkbook()?.getActiveSheet().getSheetId();
    const [first, ...more] = sheetId === undefined ? [] : await brokenRules(grid, sheetId, areas);
    if (!first || sheetId === undefined) return;
    const told = `${first.reason} It is marked.${moreText(more.length)} Ctrl+Z takes all of it back.`;
    tip.show({ sheetId, ...first }, notAllowedIn(first), told);
  };
  const lookAtChosen = (): void =>
    void look(
      inside(grid)
        .get(SheetsSelectionsService)
        .getCurrentSelections()
        .map(({ range }) => range),
    );
  clipboard(grid).addClipboardHook({
    id: 'sweeptable-tell-refusals',
    onAfterPaste(success) {
      if (success) lookAtChosen();
    },
    // one text is pasted right behind this, and nobody is told when
    onPastePlainText() {
      setTimeout(lookAtChosen);
      return NOTHING;
    },
  });
  commands(grid).onCommandExecuted(({ id }) => {
    if (FILLS.includes(id)) lookAtChosen();
    else if (id === SetSelectionsOperation.id) tip.hide();
  });
}
