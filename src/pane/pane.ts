import { fetchLong } from '../sheets/offeredTemplates';
import { balanceView } from './balanceView';
import { cautions } from './cautions';
import { h } from './element';
import { explainView } from './explainView';
import { foot } from './foot';
import { functionsView } from './functionsView';
import type { PaneHost } from './host';
import { OneAtATime } from './oneAtATime';
import { setView } from './setView';
import { sheetsView } from './sheetsView';
import { StatusLine } from './statusLine';
import { makeTabs, type View } from './tabs';
import { isFirstTime, welcome } from './welcome';
import { whenIdle } from './whenIdle';

/** So that they can be inserted without a network later on. What fails here is told when such a sheet is asked for. */
const fetchAhead = (): void => void fetchLong().catch(() => {});

/** Fills an element with the task pane. The same pane stands in Excel and beside the workbench's grid. */
export function mountPane(root: HTMLElement, host: PaneHost): { dispose(): void } {
  const status = new StatusLine();
  const scroller = h('div', { class: 'pane-scroll' });
  const pane = h('div', { class: 'pane' });
  const care = cautions();
  const greeting = isFirstTime() ? welcome(host.newJob !== undefined) : undefined;
  // whoever has done something with the pane is no newcomer
  const work = new OneAtATime(pane, status, () => {
    care.fold();
    greeting?.remove();
  });
  const views: View[] = [sheetsView(host, work), functionsView(host, work)];
  if (host.watchCell) views.push(explainView(host.watchCell));
  if (host.tables) views.push(balanceView(host.tables, work));
  if (host.pictures) views.push(setView(host.pictures, host.watchCell, work));

  const { bar, panels, dispose } = makeTabs(views, scroller, () => status.clear());
  scroller.append(...(greeting ? [greeting] : []), ...panels);
  pane.append(bar, scroller, status.element, foot(host.help, care.element));
  root.append(pane);
  if (host.insertSheet) whenIdle(fetchAhead);
  // What it says of one workbook, and would take back in it, has no meaning in another.
  const unwatch = host.watchWorkbook?.(() => status.clear());
  return {
    dispose() {
      unwatch?.();
      dispose();
      pane.remove();
    },
  };
}
