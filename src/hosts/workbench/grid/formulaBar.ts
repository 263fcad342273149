const BAR = '__editor___INTERNAL_EDITOR__DOCS_FORMULA_BAR';
const CELL = '__editor___INTERNAL_EDITOR__DOCS_NORMAL';

/** As long as the grid may take, in milliseconds, to settle which of its editors has the keyboard. */
const SETTLES = 500;

/**
 * Lets a click into the formula bar end there: the grid gives the bar the keyboard and at once takes it back for the cell, and what
 * is typed then is lost.
 */
export function writeInFormulaBar(): void {
  let until = 0;
  addEventListener(
    'pointerdown',
    ({ target }) => {
      const isInBar = target instanceof Element && target.closest('[data-u-comp="formula-bar"] canvas');
      until = isInBar ? performance.now() + SETTLES : 0;
    },
    { capture: true },
  );
  addEventListener('focusin', ({ target }) => {
    const clicked = until;
    if (performance.now() >= clicked || !(target instanceof Element) || target.id !== CELL) return;
    requestAnimationFrame(() => {
      if (until === clicked) document.getElementById(BAR)?.focus();
    });
  });
}
