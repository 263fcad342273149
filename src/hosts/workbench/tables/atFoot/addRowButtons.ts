import { createElement } from 'react';
import { h } from '../../../../pane/element';
import { onEveryChange } from '../../grid/changes';
import type { Grid } from '../../grid/grid';
import { isWriting, restKeysWithin, takeKeyboard } from '../../grid/keyboard';
import { renderOf, sheetView } from '../../grid/sheetView';
import { type GridTable, tableOfCell, tablesOn } from '../../grid/tables';
import { addRow } from '../addRow';
import { isBlank } from '../newTableRows';
import './atFoot.css';

/** The button's height at the usual zoom, how far it stands from the corner of its cell, and how wide it is with its words. */
const SIZE = { height: 18, gap: 3, width: 96 } as const;

const KEYS = 'In a cell of the table: Ctrl+Alt+Enter, or Tab in its last cell';

/** Rows that are shown above a foot that is scrolled to. */
const ABOVE = 6;

/** A button at the foot of each table of the sheet in view, which adds a row. */
class AddRowButtons {
  readonly #grid: Grid;
  readonly #say: (words: string) => void;
  readonly #layer = h('div', { class: 'inks at-foot', role: 'group', 'aria-label': 'Tables of this sheet' });
  readonly #buttons: HTMLButtonElement[] = [];
  #tables: readonly GridTable[] = [];
  #render: ReturnType<typeof renderOf>;
  #frames: { unsubscribe(): void } | undefined;

  constructor(grid: Grid, say: (words: string) => void) {
    this.#grid = grid;
    this.#say = say;
  }

  start(): void {
    const grid = this.#grid;
    restKeysWithin(grid, this.#layer);
    const mounted = (place: HTMLElement | null): void => {
      place?.append(this.#layer);
      this.#settle();
    };
    grid.api.registerUIPart(grid.api.Enum.BuiltInUIPart.CONTENT, () =>
      createElement('div', { ref: mounted }),
    );
    this.#look();
    onEveryChange(grid, () => this.#look());
    addEventListener('keydown', (event) => this.#atKey(event), { capture: true });
  }

  /** In a cell of a table; the letters of a cell that is being written have their own keys. */
  #atKey(event: KeyboardEvent): void {
    if (!(event.ctrlKey && event.altKey && event.key === 'Enter') || isWriting(this.#grid)) return;
    const i = this.#tables.indexOf(tableOfCell(this.#grid) as GridTable);
    if (i < 0) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    this.#add(i);
  }

  #look(): void {
    const sheet = this.#grid.api.getActiveWorkbook()?.getActiveSheet();
    this.#tables = sheet ? tablesOn(this.#grid, sheet.getSheetId()) : [];
    for (const button of this.#buttons.splice(this.#tables.length)) button.remove();
    for (const [i, table] of this.#tables.entries())
      (this.#buttons[i] ??= this.#made(i)).setAttribute(
        'aria-label',
        `Add a row to ${table.getDisplayName()}`,
      );
    this.#followFrames();
    this.#settle();
  }

  #followFrames(): void {
    const render = renderOf(this.#grid);
    if (render === this.#render) return;
    this.#frames?.unsubscribe();
    this.#render = render;
    this.#frames = render?.engine.endFrame$.subscribe(() => this.#settle());
  }

  #made(i: number): HTMLButtonElement {
    const button = h('button', { type: 'button', title: KEYS }, '+', h('span', {}, ' Add a row'));
    button.addEventListener('click', () => this.#add(i));
    button.addEventListener('focus', () => this.#bringIntoSight(i));
    button.addEventListener('keydown', (event) => {
      if (event.key === 'Escape') takeKeyboard(this.#grid);
      // The grid listens for keys everywhere: those of a button are the button's.
      event.stopPropagation();
    });
    button.addEventListener('wheel', (event) => {
      event.preventDefault();
      sheetView(this.#grid)?.canvas.dispatchEvent(new WheelEvent(event.type, event));
    });
    this.#layer.append(button);
    return button;
  }

  #add(i: number): void {
    const table = this.#tables[i];
    if (!table) return;
    const refused = addRow(this.#grid, table);
    if (refused !== undefined) this.#say(refused);
    takeKeyboard(this.#grid);
  }

  #settle(): void {
    const view = this.#tables.length > 0 ? sheetView(this.#grid) : undefined;
    for (const [i, button] of this.#buttons.entries()) {
      const foot = this.#tables[i]?.getRange();
      const row = (foot?.endRow ?? 0) + 1;
      const columns = foot ? foot.endColumn - foot.startColumn + 1 : 0;
      const below = foot && view?.seen({ row, rows: 1, column: foot.startColumn, columns });
      button.classList.toggle('away', !below || below.cutTop > 0);
      if (!foot || !view || !below) continue;
      const isFree = this.#isFree(row, foot.startColumn, columns);
      button.classList.toggle('small', !isFree);
      button.style.setProperty('--zoom', String(view.zoom));
      const gap = SIZE.gap * view.zoom;
      // Over words that stand there it would hide them: then it is small, and sits on the edge of the table.
      const up = isFree ? (below.height - SIZE.height * view.zoom) / 2 : (-SIZE.height * view.zoom) / 2;
      button.style.transform = `translate(${below.x + below.cutLeft + gap}px, ${below.y + up}px)`;
    }
  }

  /** Whether the cells that its words would lie over hold nothing. */
  #isFree(row: number, column: number, columns: number): boolean {
    const sheet = this.#grid.api.getActiveWorkbook()?.getActiveSheet().getSheet();
    if (!sheet) return true;
    let width = 0;
    for (let i = column; i < column + columns && width < SIZE.width; i++) {
      if (!isBlank(sheet.getCellRaw(row, i))) return false;
      width += sheet.getColumnWidth(i);
    }
    return true;
  }

  #bringIntoSight(i: number): void {
    const foot = this.#tables[i]?.getRange();
    if (!foot || !this.#buttons[i]?.classList.contains('away')) return;
    const sheet = this.#grid.api.getActiveWorkbook()?.getActiveSheet();
    sheet?.scrollToCell(Math.max(0, foot.endRow - ABOVE), foot.startColumn);
  }
}

/** Shows at the foot of each table, from now on, the button that adds a row. */
export const showAddRow = (grid: Grid, say: (words: string) => void): void => {
  new AddRowButtons(grid, say).start();
};
