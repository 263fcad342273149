import type { Grid } from './grid';
import { isWriting, takeKeyboard } from './keyboard';

const STEPS: Readonly<Record<string, number>> = { PageDown: 1, PageUp: -1 };

/** Ctrl+Alt+Page Down shows the next sheet, Page Up the one before: the grid has no key for it, and browsers keep the others for themselves. */
export function sheetsByKey(grid: Grid): void {
  addEventListener(
    'keydown',
    (event) => {
      const step = STEPS[event.key];
      const isOurs = event.ctrlKey && event.altKey && !event.shiftKey;
      if (step === undefined || !isOurs || isWriting(grid) || document.querySelector('dialog[open]')) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      show(grid, step);
    },
    { capture: true },
  );
}

/** The first follows on the last. */
function show(grid: Grid, step: number): void {
  const workbook = grid.api.getActiveWorkbook();
  const shown = workbook?.getSheets().filter((sheet) => !sheet.isSheetHidden()) ?? [];
  const now = workbook?.getActiveSheet().getSheetId();
  const at = shown.findIndex((sheet) => sheet.getSheetId() === now);
  const next = shown[(at + step + shown.length) % shown.length];
  if (!workbook || !next) return;
  workbook.setActiveSheet(next.getSheetId());
  takeKeyboard(grid);
}
