import { KeyCode, SetRangeValuesMutation, SetWorksheetActiveOperation } from '@univerjs/preset-sheets-core';
import { address } from '../../../formula/address';
import { refusedFor, unreadIn } from '../cell/refusedFor';
import { targets } from '../tables/pasteFromElsewhere';
import { onReport } from '../worker/reports';
import { onNewWorkbook } from './changes';
import type { Grid } from './grid';
import { commands } from './inside';
import { button, tipAt } from './refusalTip';
import { chosenPlace, isAt, onWriting, type SheetPlace, writeAgain } from './refusedInput';
import { ofNoUse, UNREAD_ALERT } from './tip';
import { isModifier, READS } from './typedOn';

type Written = SheetPlace & { readonly typed: string | number };

/**
 * A cell that takes marks has no rule: elf comes into a cell of f-numbers, and the answers that read it are refused, rows
 * further on. What was typed stays, and the reason is told at its cell too: at once where the cell's format says what it holds,
 * else as soon as an answer is refused because of it. The tip leaves with the first click, or key by somebody who can have read
 * it. Call it once a workbook is open.
 */
export function tellUnread(grid: Grid, worker: Worker): void {
  const tip = tipAt(grid, UNREAD_ALERT);
  let writesIn: SheetPlace | undefined;
  /** What was written last, until something is told of it. */
  let last: Written | undefined;
  let told: Written | undefined;
  let readAt = 0;

  const hide = (): void => {
    told = undefined;
    tip.hide();
  };
  const tell = (reason: string | undefined): void => {
    if (!last || reason === undefined) return;
    const [of, typed] = [last, String(last.typed)];
    [told, last, readAt] = [of, undefined, performance.now() + READS];
    tip.show(
      of,
      ofNoUse(of),
      reason,
      button(() => writeAgain(grid, { ...of, typed }), `Back to ${address(of)}`),
    );
  };

  function heldBy({ sheetId, row, column }: SheetPlace): string | number | undefined {
    const sheet = grid.api.getActiveWorkbook()?.getSheetBySheetId(sheetId)?.getSheet();
    const { v, f, si } = sheet?.getCellRaw(row, column) ?? {};
    return !f && !si && (typeof v === 'string' || typeof v === 'number') ? v : undefined;
  }

  onWriting(grid, ({ visible, keycode }) => {
    if (!visible) {
      if (keycode === KeyCode.ESC) writesIn = undefined;
      return;
    }
    writesIn = chosenPlace(grid);
    last = undefined;
    if (told && writesIn && isAt(told, writesIn)) hide();
  });
  commands(grid).onCommandExecuted(({ id }) => {
    if (id === SetWorksheetActiveOperation.id) hide();
    if (id !== SetRangeValuesMutation.id || !writesIn) return;
    const typed = heldBy(writesIn);
    if (typed === undefined) return;
    last = { ...writesIn, typed };
    writesIn = undefined;
    const { format = '', isNumber } = targets(grid, last.sheetId).target(last.row, last.column);
    if (typeof typed === 'string' && !isNumber) tell(unreadIn(format, typed));
  });
  onReport(worker, (report) => {
    // a rule may have taken it out again
    if (last && !('cleared' in report) && heldBy(last) === last.typed)
      tell(refusedFor(report.message, last.typed));
  });
  onNewWorkbook(grid, hide);

  const isInTip = ({ target }: Event): boolean =>
    target instanceof Element && target.closest('.tip') !== null;
  addEventListener('pointerdown', (event) => void (told && !isInTip(event) && hide()), { capture: true });
  addEventListener(
    'keydown',
    (event) => void (told && !isModifier(event) && event.timeStamp > readAt && hide()),
    { capture: true },
  );
}
