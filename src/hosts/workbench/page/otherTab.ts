import { replaceWorkbook } from '../state/session';
import { remembered } from '../state/memory';
import type { Found } from '../state/stored';
import type { Turn } from '../state/turn';
import { type Desk, offerBack } from './commands';
import { type Notice, standingNotice } from './notice';

const ELSEWHERE =
  'This workbook is open in another tab, and only that one is stored. What you do here is not: go on there, or save this one as .xlsx.';

/** Lets one tab at a time store the workbook, and says so in the others. Nothing that was done in any of them is lost. */
export function shareWithTabs(desk: Desk, turn: Turn): void {
  const notice = standingNotice();
  const others = () => void waitForTurn(desk, turn, notice);
  turn.onAsked(() => {
    void desk.saving.now().finally(() => {
      desk.saving.leave();
      turn.giveUp();
      others();
    });
  });
  if (!desk.saving.isMine) others();
}

async function waitForTurn(desk: Desk, turn: Turn, notice: Notice): Promise<void> {
  notice.say(ELSEWHERE, turn.canAsk ? { label: 'Go on here', run: () => turn.ask() } : undefined);
  await turn.wait();
  await takeOver(desk);
  notice.clear();
}

/** Goes on with what the other tab has left. Where both have worked, this tab's workbook stays and the other can be had. */
async function takeOver(desk: Desk): Promise<void> {
  const { grid, saving } = desk;
  // Where nothing can be read nothing can be stored either, and that is told then.
  const left: Found = await remembered().catch(() => ({ kind: 'nothing' }));
  if (left.kind !== 'workbook' || left.saved === saving.known) return saving.takeOver();
  const hasOwnWork = saving.holdsWork;
  saving.known = left.saved;
  if (!hasOwnWork) {
    replaceWorkbook(grid, left.snapshot);
    desk.notice.say('This is the workbook as the other tab left it.');
    return saving.takeOver();
  }
  saving.takeOver();
  await saving.before(left.snapshot);
  offerBack(
    desk,
    left.snapshot,
    'The workbook here is stored again. The one from the other tab can be taken back.',
  );
}
