import type { IWorkbookData } from '@univerjs/core';
import type { Grid } from '../grid/grid';
import { takeKeyboard } from '../grid/keyboard';
import { openFirst, replaceWorkbook } from '../state/session';
import type { Saving } from '../state/saving';
import type { Command } from './bar';
import { ask } from './dialog';
import type { Notice } from './notice';

export interface Desk {
  readonly grid: Grid;
  readonly notice: Notice;
  readonly saving: Saving;
}

/** Offers to go back to the workbook that another has taken the place of. */
export function offerBack(desk: Desk, before: IWorkbookData, said: string): void {
  const { saving } = desk;
  const forget = () => void saving.before(undefined);
  desk.notice.say(said, {
    label: 'Take back',
    run() {
      replaceWorkbook(desk.grid, before);
      takeKeyboard(desk.grid);
      saving.changed();
      void saving.now();
      forget();
      desk.notice.say('The workbook from before is back.');
    },
    declined: forget,
  });
}

/**
 * Opens another workbook, and keeps the present one so that it can be taken back once. Where the other cannot be opened it says
 * so, and the present one stays. Gives whether the other is open.
 */
export async function replace(
  desk: Desk,
  open: (grid: Grid) => IWorkbookData | undefined,
  said: string,
): Promise<boolean> {
  // What is in view is stored first: whatever the other one does to the page, it is there when the page is loaded anew.
  await desk.saving.now();
  let before: IWorkbookData | undefined;
  try {
    before = open(desk.grid);
  } catch (reason) {
    desk.notice.say(
      `That workbook could not be opened, and this one is as it was: ${reason instanceof Error ? reason.message : String(reason)}`,
    );
    return false;
  }
  // The button that was pressed for it has it: what is typed next is meant for the new workbook.
  takeKeyboard(desk.grid);
  if (before) offerBack(desk, before, said);
  else desk.notice.say(said);
  desk.saving.changed();
  await desk.saving.before(before);
  await desk.saving.now();
  return true;
}

export const startOver = (desk: Desk): Command => ({
  label: 'Start over',
  about: 'A new workbook with one demo sheet',
  async run() {
    const yes = await ask(
      'Start over?',
      'A new workbook with the demo job takes the place of this one. You can take this one back once.',
      'Start over',
    );
    if (yes) await replace(desk, openFirst, 'This is a new workbook.');
  },
});
