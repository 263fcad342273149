import type { IRange } from '@univerjs/core';
import {
  CellAlertManagerService,
  type ISetRangeValuesMutationParams,
  KeyCode,
  SetRangeValuesMutation,
  SetSelectionsOperation,
  SetWorksheetActiveOperation,
} from '@univerjs/preset-sheets-core';
import { createElement } from 'react';
import { address } from '../../../formula/address';
import { refusedFor, unreadIn } from '../cell/refusedFor';
import { targets } from '../tables/pasteFromElsewhere';
import { onReport } from '../worker/reports';
import { onNewWorkbook } from './changes';
import type { Grid } from './grid';
import { commands, inside } from './inside';
import { isWriting } from './keyboard';
import { onPutIn } from './putIn';
import { button, tipAt } from './refusalTip';
import { chosenPlace, isAt, onWriting, type SheetPlace, writeAgain } from './refusedInput';
import { ofNoUse, OUR_ALERTS, UNREAD_ALERT } from './tip';
import { isModifier, READS } from './typedOn';

type Written = SheetPlace & { readonly typed: string | number };
type Unread = Written & { readonly reason: string };

/** So many cells that were written before the last are still told of: their answers come in while somebody types on. */
const IN_HAND = 4;
/** More cells that are filled at once are not looked at; answers are waited for to fewer of them. */
const MOST_FILLED = 2000;
const MOST_WAITING = 100;

/** What a cell holds that nobody has worked out. */
function heldBy(grid: Grid, { sheetId, row, column }: SheetPlace): string | number | undefined {
  const sheet = grid.api.getActiveWorkbook()?.getSheetBySheetId(sheetId)?.getSheet();
  const { v, f, si } = sheet?.getCellRaw(row, column) ?? {};
  return !f && !si && (typeof v === 'string' || typeof v === 'number') ? v : undefined;
}

const isWritten = (
  { subUnitId, cellValue }: ISetRangeValuesMutationParams,
  { sheetId, row, column }: SheetPlace,
): boolean => subUnitId === sheetId && cellValue?.[row]?.[column] !== undefined;

/** What was written of late, and what of it no answer can do with, newest first. */
class Writings {
  readonly #grid: Grid;
  #written: readonly Written[] = [];
  #unread: readonly Unread[] = [];

  constructor(grid: Grid) {
    this.#grid = grid;
  }

  /** Looks at cells of one sheet that have just been written. Returns the first that holds what its format has no use for. */
  write(places: readonly SheetPlace[]): Unread | undefined {
    const isAmong = (each: SheetPlace): boolean => places.some((place) => isAt(place, each));
    const written = places.flatMap((place) => {
      const typed = heldBy(this.#grid, place);
      return typed === undefined || typed === '' ? [] : [{ ...place, typed }];
    });
    const [first] = written;
    const target = first && targets(this.#grid, first.sheetId).target;
    const unread = written.flatMap((each) => {
      const { format = '', isNumber = true } = target?.(each.row, each.column) ?? {};
      const reason = typeof each.typed === 'string' && !isNumber ? unreadIn(format, each.typed) : undefined;
      return reason === undefined ? [] : [{ ...each, reason }];
    });
    this.#unread = [...unread, ...this.#unread.filter((each) => !isAmong(each))];
    this.#written = [
      ...written.filter((each) => !unread.some((other) => isAt(each, other))).slice(0, MOST_WAITING),
      ...this.#written.filter((each) => !isAmong(each)).slice(0, IN_HAND),
    ];
    return unread[0];
  }

  /** An answer was refused. Returns the cell that is known by it, and was not before, to hold what cannot be used. */
  refuse(message: string): Unread | undefined {
    const isMeant = (each: Written): boolean =>
      refusedFor(message, each.typed) !== undefined && this.#holds(each);
    if (this.#unread.some(isMeant)) return undefined;
    const found = this.#written.find(isMeant);
    const reason = found && refusedFor(message, found.typed);
    if (!found || reason === undefined) return undefined;
    this.#written = this.#written.filter((each) => each !== found);
    const unread = { ...found, reason };
    this.#unread = [unread, ...this.#unread];
    return unread;
  }

  /** All of a sheet that still holds what cannot be used. */
  unread(sheetId: string | undefined): readonly Unread[] {
    this.#unread = this.#unread.filter((each) => this.#holds(each));
    return this.#unread.filter((each) => each.sheetId === sheetId);
  }

  forget(): void {
    [this.#written, this.#unread] = [[], []];
  }

  #holds = (each: Written): boolean => heldBy(this.#grid, each) === each.typed;
}

/** Others of the same kind, each by its name. */
function andOthers(others: readonly Unread[]): string {
  const names = others.map(address);
  return names.length === 1
    ? `Nor can ${names[0]}.`
    : `Nor can ${names.slice(0, -1).join(', ')} and ${names.at(-1)}.`;
}

const placesIn = (sheetId: string, areas: readonly IRange[]): SheetPlace[] => {
  const places: SheetPlace[] = [];
  for (const { startRow, endRow, startColumn, endColumn } of areas)
    for (let row = startRow; row <= endRow; row++)
      for (let column = startColumn; column <= endColumn && places.length < MOST_FILLED; column++)
        places.push({ sheetId, row, column });
  return places;
};

/**
 * A cell that takes marks has no rule: elf comes into a cell of f-numbers, and the answers that read it are refused, rows
 * further on. What was typed or pasted stays, and the reason is told at its cell too: at once where the cell's format says what it
 * holds, else as soon as an answer is refused because of it. The tip waits for a pause of somebody who types on, and for our other
 * tips; it leaves with the first click, or key by somebody who can have read it, and is back when its cell is chosen again. Call it
 * once a workbook is open.
 */
export function tellUnread(grid: Grid, worker: Worker): void {
  const tip = tipAt(grid, UNREAD_ALERT);
  const alerts = inside(grid).get(CellAlertManagerService);
  const writings = new Writings(grid);
  let writesIn: SheetPlace | undefined;
  /** What waits to be told, and what is. */
  let due: Unread | undefined;
  let told: Unread | undefined;
  let readAt = 0;
  let pause: ReturnType<typeof setTimeout> | undefined;

  const isTold = (): boolean => told !== undefined && alerts.currentAlert.has(UNREAD_ALERT);
  const hide = (): void => {
    told = undefined;
    tip.hide();
  };
  const show = (): void => {
    if (!due || isWriting(grid) || OUR_ALERTS.some((key) => alerts.currentAlert.has(key))) return;
    const all = writings.unread(grid.api.getActiveWorkbook()?.getActiveSheet().getSheetId());
    const of = all.find((each) => due && isAt(each, due));
    due = undefined;
    if (!of) return;
    const others = all.filter((each) => each !== of);
    [told, readAt] = [of, performance.now() + READS];
    tip.show(
      of,
      ofNoUse(of),
      of.reason,
      ...(others.length > 0 ? [createElement('p', { key: 'others' }, andOthers(others))] : []),
      button(() => writeAgain(grid, { ...of, typed: String(of.typed) }), `Back to ${address(of)}`),
    );
  };
  const showInPause = (): void => {
    clearTimeout(pause);
    pause = setTimeout(show, READS);
  };
  const tell = (unread: Unread | undefined): void => {
    if (!unread) return;
    if (isTold()) hide();
    due = unread;
    show();
    if (due) showInPause();
  };

  onWriting(grid, ({ visible, keycode }) => {
    if (!visible) {
      if (keycode === KeyCode.ESC) writesIn = undefined;
      return;
    }
    writesIn = chosenPlace(grid);
    // whoever types on could not read it
    if (isTold() && performance.now() < readAt) due = told;
    if (due && writesIn && isAt(due, writesIn)) due = undefined;
    hide();
  });
  commands(grid).onCommandExecuted(({ id, params }) => {
    if (id === SetWorksheetActiveOperation.id) hide();
    if (id === SetSelectionsOperation.id) {
      const at = chosenPlace(grid);
      const again = at && writings.unread(at.sheetId).find((each) => isAt(each, at));
      if (again && !(isTold() && told && isAt(told, again))) due = again;
      if (due) showInPause();
    }
    // a step was taken back, or a rule has taken it out again
    if (id === SetRangeValuesMutation.id && told && heldBy(grid, told) !== told.typed) hide();
    if (id !== SetRangeValuesMutation.id || !writesIn) return;
    const place = writesIn;
    // answers come in while somebody writes
    if (!isWritten(params as ISetRangeValuesMutationParams, place)) return;
    writesIn = undefined;
    tell(writings.write([place]));
  });
  onPutIn(grid, 'sweeptable-tell-unread', (areas) => {
    const sheetId = grid.api.getActiveWorkbook()?.getActiveSheet().getSheetId();
    if (sheetId !== undefined) tell(writings.write(placesIn(sheetId, areas)));
  });
  // a rule may have taken it out again
  onReport(worker, (report) => void ('cleared' in report || tell(writings.refuse(report.message))));
  onNewWorkbook(grid, () => {
    writings.forget();
    due = undefined;
    hide();
  });

  const isInTip = ({ target }: Event): boolean =>
    target instanceof Element && target.closest('.tip') !== null;
  addEventListener(
    'pointerdown',
    (event) => {
      if (told && !isInTip(event)) hide();
      if (due) showInPause();
    },
    { capture: true },
  );
  addEventListener(
    'keydown',
    (event) => {
      if (told && !isModifier(event) && event.timeStamp > readAt) hide();
      if (due) showInPause();
    },
    { capture: true },
  );
}
