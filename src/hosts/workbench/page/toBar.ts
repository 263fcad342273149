import type { Grid } from '../grid/grid';
import { takeKeyboard } from '../grid/keyboard';
import { takeKey } from '../grid/takeKey';
import { elementById } from './elementById';

/**
 * Ctrl+Shift+F6 goes to the bar from wherever the keyboard is, and from there to the cells; Tab goes on from the bar to the tools
 * of the grid. From the cells alone no other key leads there. Call it before what takes every F6 with Ctrl.
 */
export function toBarByKey(grid: Grid): void {
  const bar = elementById('commands');
  takeKey(
    ({ key, ctrlKey, shiftKey }) => key === 'F6' && ctrlKey && shiftKey,
    () => {
      if (bar.contains(document.activeElement)) takeKeyboard(grid);
      else bar.querySelector<HTMLElement>('button:enabled')?.focus();
    },
  );
}
