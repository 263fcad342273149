import { elementById } from './elementById';
import type { PaneFrame } from './paneFrame';

/** Told by the button beside the line in which a cell is written: mended-grid-loader.cjs puts it there. */
const WANTED = 'sweeptable-functions';

/** Leads from the cell to the list of functions beside it, to the field that finds one. */
export function leadToFunctions(frame: PaneFrame): void {
  addEventListener(WANTED, () => {
    frame.come();
    elementById('tab-functions').click();
    elementById('pane-find').focus();
  });
}
