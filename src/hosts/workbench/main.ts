import { showEarlyDialogs } from './earlyDialogs';
import { createGrid } from './grid';
import { growTables } from './growTables';
import { KnownFailures } from './knownFailures';
import { dropLateAnswers } from './lateAnswers';
import { fillBar } from './page/bar';
import { type Desk, offerBack, startOver } from './page/commands';
import { openFile, saveFile } from './page/files';
import { Notice } from './page/notice';
import { paneFrame } from './page/paneFrame';
import { place } from './page/place';
import { paneHost } from './paneHost';
import { firstAnswersShown } from './ready';
import { readout } from './readout';
import { onReport } from './reports';
import { openFirst, openWorkbook, snapshotOf } from './session';
import { keepSaved } from './state/keepSaved';
import { putAside, remembered, rememberedBefore } from './state/memory';
import type { Found } from './state/stored';
import { offerEveryFunction } from './suggestions';
import { insertWholeRows } from './tableRowCommands';
import { tellFailuresInTips } from './tip';
import './workbench.css';

const UNREADABLE = {
  newer: 'Your last workbook was stored by a newer version of this page.',
  damaged: 'Your last workbook could not be read.',
} as const;
const ASIDE = 'It was put aside in this browser, unchanged; this is a new one.';

const notice = new Notice(place('notice'));
let toldNotStored = false;
function notStored(reason: unknown): void {
  if (toldNotStored) return;
  toldNotStored = true;
  const full = reason instanceof DOMException && reason.name === 'QuotaExceededError';
  notice.say(
    `${full ? 'The browser’s storage is full' : 'The browser allows no storage here'}: you can work on, but the workbook is gone when the page is closed. Save it as .xlsx to keep it.`,
  );
}

async function lastVisit(): Promise<Found> {
  try {
    return await remembered();
  } catch (reason) {
    notStored(reason);
    return { kind: 'nothing' };
  }
}

const worker = new Worker(new URL('./worker.ts', import.meta.url));
const failures = new KnownFailures();
onReport(worker, (report) => failures.take(report));

const showPane = paneFrame();
const last = await lastVisit();
const grid = createGrid('grid', worker);
const desk: Desk = { grid, notice, notStored };
insertWholeRows();
showEarlyDialogs(grid);

function openLast(): void {
  if (last.kind !== 'workbook') {
    openFirst(grid);
    return;
  }
  try {
    openWorkbook(grid, last.snapshot);
  } catch (reason) {
    // Half-opened, the grid is of no more use: the next load finds nothing to open.
    void putAside().finally(() => location.reload());
    throw reason;
  }
}
openLast();
if (last.kind === 'unreadable') notice.say(`${UNREADABLE[last.why]} ${ASIDE}`);

tellFailuresInTips(grid, failures);
offerEveryFunction(grid);
growTables(grid);
dropLateAnswers(grid);
fillBar([openFile(desk), saveFile(desk), startOver(desk)], (reason) => {
  notice.say(`That did not work: ${reason instanceof Error ? reason.message : String(reason)}`);
});
window.sweeptable = readout(grid, failures);

await firstAnswersShown(grid.api);
document.documentElement.dataset['ready'] = 'true';
keepSaved(grid, () => snapshotOf(grid), notStored);
await showPane(paneHost(grid, failures));
document.documentElement.dataset['pane'] = 'true';
if (!toldNotStored) {
  const before = await rememberedBefore();
  if (before) offerBack(desk, before, 'The workbook from before can still be taken back.');
}
