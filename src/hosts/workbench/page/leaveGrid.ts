import type { Grid } from '../grid/grid';
import { takeKeyboard } from '../grid/keyboard';
import { elementById } from './elementById';

/** What the keyboard goes to: the chosen tab of the pane, or with a closed pane the button that opens it. */
const BESIDE = ['#pane [role=tab][aria-selected=true]', '#commands [aria-controls=pane]'];
const beside = (): HTMLElement | undefined =>
  BESIDE.flatMap((each) => [...document.querySelectorAll<HTMLElement>(each)]).find((each) =>
    each.checkVisibility(),
  );

/**
 * Ctrl+F6 goes from the grid to what stands beside it, and back. The grid takes every other key for its cells, Tab among
 * them: without this one a keyboard that has come into it does not get out again.
 */
export function leaveGridByKey(grid: Grid): void {
  const place = elementById('grid');
  addEventListener(
    'keydown',
    (event) => {
      if (event.key !== 'F6' || !event.ctrlKey || document.querySelector('dialog[open]')) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      if (place.contains(document.activeElement)) beside()?.focus();
      else takeKeyboard(grid);
    },
    { capture: true },
  );
}
