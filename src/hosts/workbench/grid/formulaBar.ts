import { DOCS_NORMAL_EDITOR_UNIT_ID_KEY } from '@univerjs/core';
import { DocSelectionRenderService, Editor, IEditorService } from '@univerjs/preset-sheets-core';
import { replaceMethod } from '../../../engine/mends/replaceMethod';
import { editingEnded } from './editingEnded';
import type { Grid } from './grid';
import { inside } from './inside';
import { takeKeyboard } from './keyboard';
import { onWriting } from './refusedInput';

const BAR = '__editor___INTERNAL_EDITOR__DOCS_FORMULA_BAR';
const CELL = DOCS_NORMAL_EDITOR_UNIT_ID_KEY;

/** Whether somebody has clicked into the formula bar, and writes there. */
let isInBar = false;

/** Its document, in the grid's words, is the one of the cell. */
const isOfCell = (part: object): boolean => {
  const { _context: context } = part as { readonly _context?: { readonly unitId: string } };
  return context?.unitId === CELL;
};

/**
 * Lets a click into the formula bar end there: the grid gives the bar the keyboard and at once takes it back for the cell, and what
 * is typed then is lost. Call it before there is a grid.
 */
export function keepKeyboardInBar(): void {
  replaceMethod(
    Editor.prototype,
    'focus',
    (original) =>
      function () {
        if (!isInBar || (this as Editor).getEditorId() !== CELL) original.call(this);
      },
  );
  replaceMethod(
    DocSelectionRenderService.prototype,
    'focus',
    (original) =>
      function () {
        if (!isInBar || !isOfCell(this)) original.call(this);
      },
  );
  addEventListener(
    'pointerdown',
    ({ target }) => {
      isInBar = target instanceof Element && target.closest('[data-u-comp="formula-bar"] canvas') !== null;
    },
    { capture: true },
  );
}

/**
 * What was written in the bar is kept, and what is typed next goes into the chosen cell: the grid leaves the keyboard in the bar,
 * where it is lost.
 */
export function leaveBarWithWriting(grid: Grid): void {
  const editors = inside(grid).get(IEditorService);
  const focus = editors.focus.bind(editors);
  editors.focus = (id, ...rest) => {
    if (!isInBar || id !== CELL) focus(id, ...rest);
  };
  onWriting(grid, ({ visible }) => {
    if (visible) return;
    isInBar = false;
    if (document.activeElement?.id === BAR) void editingEnded(grid).then(() => takeKeyboard(grid));
  });
}
