import { DOCS_NORMAL_EDITOR_UNIT_ID_KEY } from '@univerjs/core';
import {
  ICellEditorManagerService,
  IEditorBridgeService,
  IEditorService,
  SetCellEditVisibleOperation,
  SetScrollOperation,
} from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';
import { commands, inside } from './inside';
import { isWriting } from './keyboard';
import { revealSelected } from './reveal';
import { scrollBy } from './scroll';
import { type Seen, sheetView } from './sheetView';

/** Room below it, in pixels. */
const BELOW = 8;

/** Where the cell that is written into lies over the canvas; nothing where it is out of sight. */
function seenCell(grid: Grid): Seen | undefined {
  const cell = inside(grid).get(IEditorBridgeService).getEditCellState();
  if (!cell) return undefined;
  return sheetView(grid)?.seen({ row: cell.row, column: cell.column, rows: 1, columns: 1 });
}

/** Whether its beginning is in sight, and not under rows or columns that stay. */
function isInSight(grid: Grid): boolean {
  const seen = seenCell(grid);
  return seen?.cutTop === 0 && seen.cutLeft === 0;
}

/** Scrolls it up where a keyboard on the glass has come over it. */
function aboveLetters(grid: Grid, { offsetTop, height }: VisualViewport): void {
  if (!isWriting(grid)) return;
  const [seen, view] = [seenCell(grid), sheetView(grid)];
  if (!seen || !view) return revealSelected(grid);
  const bottom = view.canvas.getBoundingClientRect().top + seen.y + seen.height + BELOW;
  // what is around the canvas shrinks before it where the page does
  const around = view.canvas.parentElement?.getBoundingClientRect().bottom ?? Infinity;
  const end = Math.min(offsetTop + height, around);
  if (bottom > end) scrollBy(grid, 0, bottom - end);
}

/** Where the grid writes. */
const editorBox = (grid: Grid): HTMLElement | null | undefined =>
  inside(grid)
    .get(IEditorService)
    .getEditor(DOCS_NORMAL_EDITOR_UNIT_ID_KEY)
    ?.render.engine.getCanvasElement()
    ?.parentElement?.closest<HTMLElement>('div[style]');

/** Moves it by as much as its cell has moved. */
function follow(grid: Grid): void {
  const [bridge, editors] = [
    inside(grid).get(IEditorBridgeService),
    inside(grid).get(ICellEditorManagerService),
  ];
  const before = bridge.getEditCellLayout()?.position;
  bridge.refreshEditCellPosition(false);
  const [now, state] = [bridge.getEditCellLayout()?.position, editors.getState()];
  if (!before || !now || !state) return;
  const { startX = 0, startY = 0, endX = 0, endY = 0, show } = state;
  const [across, down] = [now.startX - before.startX, now.startY - before.startY];
  editors.setState({
    show,
    startX: startX + across,
    endX: endX + across,
    startY: startY + down,
    endY: endY + down,
  });
}

/**
 * A cell that is written into goes along with its sheet as that is scrolled. The grid would leave it where it was on the page,
 * over another cell, as if that one were written into. Out of sight, what is written shows in the line above the cells.
 * It stays above a keyboard on the glass.
 */
export function letEditorFollow(grid: Grid): void {
  commands(grid).onCommandExecuted(({ id }) => {
    if (id !== SetScrollOperation.id && id !== SetCellEditVisibleOperation.id) return;
    if (!isWriting(grid)) return;
    if (id === SetScrollOperation.id) follow(grid);
    const box = editorBox(grid);
    if (box) box.style.opacity = isInSight(grid) ? '' : '0';
  });
  const { visualViewport } = window;
  visualViewport?.addEventListener('resize', () => aboveLetters(grid, visualViewport));
}
