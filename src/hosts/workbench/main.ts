import type { IWorkbookData } from '@univerjs/core';
import { filterByTables } from './grid/filterByTables';
import { drawAnswersInTexts } from './grid/answersInTexts';
import { showEarlyDialogs } from './grid/earlyDialogs';
import { listByKeys } from './grid/listByKeys';
import { menuByKeys } from './grid/menuByKeys';
import { createGrid } from './grid/grid';
import { whenGridGone } from './grid/gridGone';
import { followRules } from './tables/followRules';
import { addRowByTab } from './tables/addRowByTab';
import { growTables } from './tables/growTables';
import { letChartsFollow } from './charts/followEdits';
import { pasteFromElsewhere } from './tables/pasteFromElsewhere';
import { readTyped } from './tables/typedCells';
import { KnownFailures } from './cell/knownFailures';
import { dropLateAnswers } from './grid/lateAnswers';
import { clearBar, fillBar, placeBar } from './page/bar';
import { keepColours } from './page/colours';
import { asideCommand, showAside } from './page/aside';
import { type Desk, offerBack, startOver } from './page/commands';
import { openFile, saveFile } from './page/files';
import { keepSaved } from './page/keepSaved';
import { leaveGridByKey } from './page/leaveGrid';
import { Notice } from './page/notice';
import { shareWithTabs } from './page/otherTab';
import { helpByKey, printAll, printSheet } from './page/keys';
import { leadToFunctions } from './page/leadToFunctions';
import { paneFrame } from './page/paneFrame';
import { chooseAllWritten } from './grid/wholeText';
import { chooseNameWhole } from './grid/nameBox';
import { nameParts } from './grid/names';
import { keepTabInView } from './grid/tabInView';
import { settleWriting } from './grid/keyboard';
import { keepWriting } from './grid/keepWriting';
import { letEditorFollow } from './grid/letEditorFollow';
import type { Done, Outcome } from '../../pane/host';
import { elementById } from './page/elementById';
import { showFocusByKeys } from './page/showFocus';
import { storageNotice } from './page/storageNotice';
import { letHandsIn } from './touch/hands';
import { toBarByKey } from './page/toBar';
import { troubleNotice } from './page/troubleNotice';
import { paneHost } from './paneHost';
import { firstAnswersShown, firstDrawn } from './grid/ready';
import { keepKeyboardInBar, leaveBarWithWriting } from './grid/formulaBar';
import { dangerousLast } from './grid/menus';
import { offerShownAs } from './grid/shownAs';
import { revealSelected } from './grid/reveal';
import { letNotesFollow } from './sort/letNotesFollow';
import { readout } from './readout';
import { onReport } from './worker/reports';
import { openFirst, openWorkbook, snapshotOf } from './state/session';
import * as attempts from './state/attempts';
import { allAside, putAside, remembered, rememberedBefore } from './state/memory';
import { Saving } from './state/saving';
import { selectAgain } from './state/selectedPlace';
import type { Found } from './state/stored';
import { Turn } from './state/turn';
import { sheetsByKey } from './grid/sheetKeys';
import { leaveNameByKey, typeBelowName } from './grid/sheetNames';
import { sumWhatCanBeSummed } from './grid/statusBar';
import { fitNumbers } from './grid/wideNumbers';
import { letTextsRunOn } from './grid/wideTexts';
import { offerFunctions } from './grid/suggestions';
import { insertWholeRows } from './grid/tableRowCommands';
import { tellFailuresInTips } from './grid/tip';
import { tellRefusals } from './grid/refusalTip';
import { tellUnread } from './grid/unreadTip';
import { tellReplacedRules } from './grid/replacedRules';
import { TypingOn } from './grid/typedOn';
import { backByKey } from './grid/backByKey';
import { WorkerWatch } from './worker/workerWatch';
import './grid/focus.css';
import './workbench.css';
import './touch/targets.css';

const UNREADABLE = {
  newer: 'Your last workbook was stored by a newer version of this page.',
  damaged: 'Your last workbook could not be read.',
  unopened: 'Your last workbook could not be opened.',
} as const;
const ASIDE = 'It was put aside in this browser, unchanged; this is a new one.';
/** How long the grid takes to draw itself in another size, in milliseconds. */
const SETTLED = 300;
/** What a page that is loaded anew because of it has to say. */
const UNOPENED = 'unopened';

placeBar();
const notice = new Notice(elementById('notice'));
const storage = storageNotice();
const saving = new Saving(() => snapshotOf(grid), storage);

interface LastVisit {
  readonly found: Found;
  /** What may still be taken back. */
  readonly before: IWorkbookData | undefined;
}

/** Whether pages before this one could not open the workbook of the last visit. */
async function isUnopened(): Promise<boolean> {
  const isToldSo = history.state === UNOPENED;
  if (isToldSo) history.replaceState(null, '');
  if (!saving.isMine || !attempts.hasFailed()) return isToldSo;
  await putAside();
  attempts.end();
  return true;
}

async function lastVisit(): Promise<LastVisit> {
  try {
    if (await isUnopened())
      return { found: { kind: 'unreadable', why: 'unopened' }, before: await rememberedBefore() };
    return { found: await remembered(), before: saving.isMine ? await rememberedBefore() : undefined };
  } catch (reason) {
    storage.failed(reason);
    return { found: { kind: 'nothing' }, before: undefined };
  }
}

const worker = new Worker(/* webpackChunkName: "worker" */ new URL('./worker/worker.ts', import.meta.url));
const failures = new KnownFailures();
onReport(worker, (report) => failures.take(report));
const calculation = new WorkerWatch(worker, troubleNotice(saving));

const frame = paneFrame();
const turn = new Turn();
if (!(await turn.take())) saving.leave();
const last = await lastVisit();
const typing = new TypingOn();
listByKeys(() => grid);
menuByKeys(() => grid);
keepKeyboardInBar();
chooseAllWritten();
const grid = createGrid('grid', worker);
const tellGone = troubleNotice(saving);
whenGridGone(elementById('grid'), () => tellGone('gone'));
const desk: Desk = { grid, notice, saving };
keepColours(grid);
insertWholeRows();
fitNumbers();
letTextsRunOn();
showEarlyDialogs(grid);
letHandsIn(grid);
showFocusByKeys();
toBarByKey(grid);
sheetsByKey(grid);
typeBelowName(grid);
leaveNameByKey(grid);
chooseNameWhole();
let footNear = (): HTMLElement | undefined => undefined;
leaveGridByKey(grid, frame, () => footNear());
helpByKey();

function open(found: Found): void {
  if (found.kind !== 'workbook') {
    openFirst(grid);
    return;
  }
  saving.known = found.saved;
  if (saving.isMine) attempts.begin();
  try {
    openWorkbook(grid, found.snapshot);
  } catch (reason) {
    // Half-opened, the grid is of no more use: the next load finds nothing to open, and says why.
    const loadAnew = (): void => {
      history.replaceState(UNOPENED, '');
      location.reload();
    };
    void putAside().then(loadAnew, () => notice.say(`${UNREADABLE.unopened} It is stored as it was.`));
    throw reason;
  }
  selectAgain(grid);
}
open(last.found);
filterByTables(grid);
drawAnswersInTexts(grid);
if (last.found.kind === 'unreadable')
  notice.say(`${UNREADABLE[last.found.why]} ${ASIDE}`, {
    label: 'Show what was put aside',
    run: () => void showAside(desk),
  });
const aside = await allAside().catch(() => []);

tellFailuresInTips(grid, failures);
tellRefusals(grid, typing);
tellUnread(grid, worker);
tellReplacedRules(grid, (words) => notice.say(words));
backByKey(grid);
keepWriting(grid);
leaveBarWithWriting(grid);
letEditorFollow(grid);
sumWhatCanBeSummed(grid);
offerFunctions(grid);
followRules(grid);
growTables(grid);
addRowByTab(grid, (words) => notice.say(words));
letChartsFollow(grid);
letNotesFollow(grid);
pasteFromElsewhere(grid, (words) => notice.say(words));
readTyped(grid);
dropLateAnswers(grid);
const putAsideBefore = aside.length > 0 ? [asideCommand(desk)] : [];
fillBar(
  [openFile(desk), saveFile(desk), printSheet, printAll(grid), startOver(desk), ...putAsideBefore],
  () => settleWriting(grid),
  (reason) => {
    notice.say(`That did not work: ${reason instanceof Error ? reason.message : String(reason)}`);
  },
);
window.sweeptable = readout(grid, failures);

/** What was done from a pane that lies over the sheet is told where it can be seen once the pane has left. */
function tellOverSheet({ done, takeBack }: Done): void {
  if (!frame.leave()) return;
  const tell = (outcome: Outcome): void =>
    notice.say('done' in outcome ? outcome.done : `Not done. ${outcome.refused}`);
  notice.say(done, takeBack && { label: 'Take back', run: () => void takeBack().then(tell) });
  // the notice leaves less room to the cells, as of a moment later
  setTimeout(() => revealSelected(grid), SETTLED);
}

calculation.watch(grid);

const drawn = firstDrawn(grid.api);
await Promise.race([firstAnswersShown(grid.api), calculation.trouble]);
attempts.end();
document.documentElement.dataset['ready'] = 'true';
dangerousLast(grid);
offerShownAs(grid);
nameParts(grid);
keepTabInView();
// where there are no answers, that may take longer than to say so
void drawn.then(() => revealSelected(grid));
keepSaved(grid, saving);
shareWithTabs(desk, turn);
try {
  const { keepLookedUp, mountPane, offerFind, offerTableActions, printSheets, sayChosen, showCharts } =
    await import(/* webpackChunkName: "pane" */ './page/pane');
  keepLookedUp(grid, (words) => notice.say(words));
  footNear = offerTableActions(grid, (words) => notice.say(words));
  // over what is offered at the foot of a table, which would hide a chart's name
  showCharts(grid);
  offerFind(grid);
  printSheets(grid);
  sayChosen(grid, failures);
  mountPane(frame.element, paneHost(grid, failures, tellOverSheet));
  leadToFunctions(frame);
  document.documentElement.dataset['pane'] = 'true';
} catch {
  clearBar();
  notice.say(
    'The part beside the sheet and the charts on it could not be loaded. Load the page anew when the network is back.',
  );
}
if (last.before) offerBack(desk, last.before, 'The workbook from before can still be taken back.');
