import type { Grid } from '../grid/grid';
import { takeKeyboard } from '../grid/keyboard';
import { elementById } from './elementById';

/**
 * Ctrl+Shift+F6 goes to the bar from wherever the keyboard is, and from there to the cells; Tab goes on from the bar to the tools
 * of the grid. From the cells alone no other key leads there. Call it before what takes every F6 with Ctrl.
 */
export function toBarByKey(grid: Grid): void {
  const bar = elementById('commands');
  addEventListener(
    'keydown',
    (event) => {
      if (event.key !== 'F6' || !event.ctrlKey || !event.shiftKey || document.querySelector('dialog[open]'))
        return;
      event.preventDefault();
      event.stopImmediatePropagation();
      if (bar.contains(document.activeElement)) takeKeyboard(grid);
      else bar.querySelector('button')?.focus();
    },
    { capture: true },
  );
}
