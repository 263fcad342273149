import type { IWorkbookData } from '@univerjs/core';
import type { Grid } from '../grid';
import { openFirst, replaceWorkbook, snapshotOf } from '../session';
import { remember, rememberBefore } from '../state/memory';
import type { Command } from './bar';
import { ask } from './dialog';
import type { Notice } from './notice';

export interface Desk {
  readonly grid: Grid;
  readonly notice: Notice;
  /** Tells, once, that nothing is stored. */
  readonly notStored: (reason: unknown) => void;
}

/** Offers to go back to the workbook that another has taken the place of. */
export function offerBack(desk: Desk, before: IWorkbookData, said: string): void {
  const forget = () => void rememberBefore(undefined).catch(desk.notStored);
  desk.notice.say(said, {
    label: 'Take back',
    run() {
      replaceWorkbook(desk.grid, before);
      void remember(before).catch(desk.notStored);
      forget();
      desk.notice.say('The workbook from before is back.');
    },
    declined: forget,
  });
}

/** Opens another workbook, and keeps the present one so that it can be taken back once. */
export async function replace(
  desk: Desk,
  open: (grid: Grid) => IWorkbookData | undefined,
  said: string,
): Promise<void> {
  const before = open(desk.grid);
  if (before) offerBack(desk, before, said);
  else desk.notice.say(said);
  const now = snapshotOf(desk.grid);
  try {
    await rememberBefore(before);
    if (now) await remember(now);
  } catch (reason) {
    desk.notStored(reason);
  }
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
