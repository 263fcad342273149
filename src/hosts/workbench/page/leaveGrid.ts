import type { Grid } from '../grid/grid';
import { isWriting, takeKeyboard } from '../grid/keyboard';
import { takeKey } from '../grid/takeKey';
import { elementById } from './elementById';
import type { PaneFrame } from './paneFrame';

/** What the keyboard goes to: the chosen tab of the pane, or with a closed pane the button that opens it. */
const BESIDE = ['#pane [role=tab][aria-selected=true]', '#commands [aria-controls=pane]'];
const beside = (): HTMLElement | undefined =>
  BESIDE.flatMap((each) => [...document.querySelectorAll<HTMLElement>(each)]).find((each) =>
    each.checkVisibility(),
  );

/**
 * Ctrl+F6 goes from the cells to the foot of the nearest table, then to what stands beside the grid, and back. The grid takes
 * every other key for its cells, Tab among them: without this one a keyboard that has come into it does not get out again.
 * A pane that lies over the grid leaves with the keyboard, and by Escape.
 * @param foot - what to go to first; nothing where no table has anything at its foot.
 */
export function leaveGridByKey(grid: Grid, pane: PaneFrame, foot: () => HTMLElement | undefined): void {
  const place = elementById('grid');
  const isAtFoot = (): boolean => document.activeElement?.closest('.at-foot') != null;
  // What is being written is kept by leaving the grid.
  const next = (): HTMLElement | undefined =>
    (isAtFoot() || isWriting(grid) ? undefined : foot()) ?? beside();
  takeKey(
    ({ key, ctrlKey }) => key === 'F6' && ctrlKey,
    () => {
      if (!pane.leave() && place.contains(document.activeElement)) next()?.focus();
      else takeKeyboard(grid);
    },
  );
  pane.element.addEventListener('keydown', (event) => {
    if (event.key === 'Escape' && pane.leave()) takeKeyboard(grid);
  });
}
