import { type IRange, UndoCommand } from '@univerjs/core';
import {
  CellAlertManagerService,
  CellAlertType,
  SetSelectionsOperation,
  SetWorksheetActiveOperation,
} from '@univerjs/preset-sheets-core';
import { createElement, Fragment, type MouseEvent, type ReactNode } from 'react';
import { address } from '../../../formula/address';
import { brokenRules, sayBroken } from './brokenRules';
import { onNewWorkbook } from './changes';
import type { Grid } from './grid';
import { commands, inside, unitId } from './inside';
import { isWriting, takeKeyboard } from './keyboard';
import { onPutIn } from './putIn';
import {
  chosenPlace,
  giveUpWriting,
  isAt,
  onRefusedInput,
  onWriting,
  type RefusedInput,
  type SheetPlace,
  writeAgain,
} from './refusedInput';
import { notAllowedIn, OUR_ALERTS, PUT_IN_ALERT, REFUSAL_ALERT, TIP_SIZE } from './tip';
import type { TypingOn } from './typedOn';
import { undoKey } from './undoKey';

/** Our tip at a cell, read out as it comes: in the place of any other of ours, which would lie over it. */
export function tipAt(grid: Grid, key: string) {
  const alerts = inside(grid).get(CellAlertManagerService);
  return {
    show({ sheetId, row, column }: SheetPlace, title: string, ...content: ReactNode[]): void {
      // it keeps what it says for as long as it stands
      for (const each of OUR_ALERTS) alerts.removeAlert(each);
      alerts.showAlert({
        key,
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
    hide: (): void => alerts.removeAlert(key),
  };
}

export const button = (run: () => void, ...content: ReactNode[]): ReactNode =>
  createElement(
    'button',
    // the editor keeps the keyboard
    { type: 'button', onMouseDown: (event: MouseEvent) => event.preventDefault(), onClick: run },
    ...content,
  );

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
  return button(run, had ? `Back to ${had}` : 'Leave it empty', createElement('kbd', null, 'Esc'));
}

/**
 * What was refused: the cell that is open with it, and those whose writer had typed on before anybody could have read why. They
 * have their former values, and what was typed into them stands in the tip until it is typed again or let go.
 */
class Refusals {
  readonly #grid: Grid;
  readonly #tip: ReturnType<typeof tipAt>;
  readonly #typing: TypingOn;
  #open: RefusedInput | undefined;
  #left: readonly RefusedInput[] = [];
  #shown: readonly (RefusedInput | undefined)[] = [undefined];

  constructor(grid: Grid, tip: ReturnType<typeof tipAt>, typing: TypingOn) {
    this.#grid = grid;
    this.#tip = tip;
    this.#typing = typing;
  }

  refuse(input: RefusedInput): void {
    if (isWriting(this.#grid)) {
      // whoever has begun anew goes on
      this.#left = [...this.#left, input];
      this.show();
      return;
    }
    this.#again(input);
  }

  /** Somebody begins to write into the chosen cell, or ends it. */
  wrote(begins: boolean): void {
    this.#typing.rest();
    this.#open = undefined;
    const at = begins ? chosenPlace(this.#grid) : undefined;
    if (at) this.#left = this.#left.filter((each) => !isAt(each, at));
    this.show();
  }

  forget(): void {
    this.#open = undefined;
    this.#left = [];
    this.show();
  }

  /** Where one of a sheet in view was refused. */
  show(): void {
    const sheetId = this.#grid.api.getActiveWorkbook()?.getActiveSheet().getSheetId();
    const left = this.#left.filter((each) => each.sheetId === sheetId);
    const told = [this.#open, ...left];
    // what is told already is not read out anew
    if (told.length === this.#shown.length && told.every((each, i) => each === this.#shown[i])) return;
    this.#shown = told;
    const at = this.#open ?? left.at(-1);
    if (!at) return this.#tip.hide();
    const others = left.map((each) =>
      createElement(
        Fragment,
        { key: `${each.row} ${each.column} ${each.typed}` },
        createElement('p', null, `${address(each)}: “${each.typed}”. ${each.reason}`),
        button(() => this.#typeAgain(each), `Back to ${address(each)}`),
      ),
    );
    const close = left.length > 0 ? [button(() => this.#letGo(), 'Leave as it was')] : [];
    const open = this.#open ? [this.#open.reason, wayBack(this.#grid, this.#open)] : [];
    this.#tip.show(at, 'Not taken', ...open, ...others, ...close);
  }

  /** Opens the cell with what was typed, and the reason beside it. */
  #again(input: RefusedInput): void {
    writeAgain(this.#grid, input);
    this.#open = input;
    this.show();
    if (input.goOn) this.#typing.watch(() => this.#typedOn());
  }

  #typedOn(): void {
    const input = this.#open;
    if (!input) return;
    this.#left = [...this.#left, input];
    giveUpWriting(this.#grid);
    takeKeyboard(this.#grid);
    input.goOn?.();
  }

  #typeAgain(input: RefusedInput): void {
    giveUpWriting(this.#grid);
    this.#left = this.#left.filter((each) => each !== input);
    takeKeyboard(this.#grid);
    this.#again(input);
  }

  #letGo(): void {
    this.#left = [];
    this.show();
    takeKeyboard(this.#grid);
  }
}

/**
 * Where a rule refuses what was typed, the cell stays open with it, and the reason stands beside it until another value is
 * taken or Escape gives the former one back. Whoever types on before that can be read is not held up: what is typed goes where it
 * would have gone, and the tip stays. What comes by a paste or a fill stays in the cells, which are marked; the reason is told at
 * the first of them. Call it once a workbook is open.
 */
export function tellRefusals(grid: Grid, typing: TypingOn): void {
  const refusals = new Refusals(grid, tipAt(grid, REFUSAL_ALERT), typing);
  onWriting(grid, ({ visible }) => refusals.wrote(visible));
  onRefusedInput(grid, (input) => refusals.refuse(input));
  onNewWorkbook(grid, () => refusals.forget());

  const tip = tipAt(grid, PUT_IN_ALERT);
  onWriting(grid, tip.hide);
  const look = async (areas: readonly IRange[]): Promise<void> => {
    const sheetId = grid.api.getActiveWorkbook()?.getActiveSheet().getSheetId();
    const [first, ...more] = sheetId === undefined ? [] : await brokenRules(grid, sheetId, areas);
    if (!first || sheetId === undefined) return;
    tip.show(
      { sheetId, ...first },
      notAllowedIn(first),
      `${sayBroken([first, ...more])} ${undoKey()} takes all of it back.`,
    );
  };
  onPutIn(grid, 'sweeptable-tell-refusals', (areas) => void look(areas));
  commands(grid).onCommandExecuted(({ id }) => {
    if (id === SetSelectionsOperation.id || id === UndoCommand.id) tip.hide();
    else if (id === SetWorksheetActiveOperation.id) refusals.show();
  });
}
