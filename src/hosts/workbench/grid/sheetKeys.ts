import type { Grid } from './grid';
import { isWriting, takeKeyboard } from './keyboard';
import { takeKey } from './takeKey';

const STEPS: Readonly<Record<string, number>> = { PageDown: 1, PageUp: -1 };

/** Ctrl+Alt+Page Down shows the next sheet, Page Up the one before: the grid has no key for it, and browsers keep the others for themselves. */
export function sheetsByKey(grid: Grid): void {
  takeKey(
    ({ key, ctrlKey, altKey, shiftKey }) =>
      STEPS[key] !== undefined && ctrlKey && altKey && !shiftKey && !isWriting(grid),
    ({ key }) => show(grid, STEPS[key] ?? 0),
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
