import type { Grid } from './grid';
import { takeKeyboard } from './keyboard';

/** The name of a sheet, which takes the keyboard when it is clicked on, and can do nothing with what is typed. */
const NAME = '[data-u-comp="slide-tab-item"]';
const WRITTEN = `${NAME} [contenteditable="true"]`;

const isNameWritten = (): boolean => document.querySelector(WRITTEN) !== null;

/** Whoever has clicked on the name of a sheet types into its chosen cell; with a finger the letters would come up. */
export function typeBelowName(grid: Grid): void {
  addEventListener('click', (event) => {
    const name = event.target instanceof Element ? event.target.closest<HTMLElement>(NAME) : null;
    // a second click may have begun to write the name
    if (!(event instanceof PointerEvent) || !name || isNameWritten()) return;
    show(grid, name.dataset['id']);
    if (event.pointerType !== 'touch' && document.activeElement === name) takeKeyboard(grid);
  });
}

/** The grid hears of no other name until one that was being written has been left. */
function show(grid: Grid, id: string | undefined): void {
  const workbook = grid.api.getActiveWorkbook();
  if (id && workbook && workbook.getActiveSheet().getSheetId() !== id) workbook.setActiveSheet(id);
}

/** Enter and Escape give the keyboard to the cells, with the name that was written or the one before. */
export function leaveNameByKey(grid: Grid): void {
  addEventListener(
    'keydown',
    ({ key, target, isComposing }) => {
      if (isComposing || !(target instanceof HTMLElement) || !target.matches(WRITTEN)) return;
      if (key !== 'Enter' && key !== 'Escape') return;
      // the grid has taken either name by then, or asks for another
      setTimeout(() => {
        if (!isNameWritten() && document.activeElement === document.body) takeKeyboard(grid);
      });
    },
    { capture: true },
  );
}
