import type { IRange } from '@univerjs/core';
import { holdsCell } from '../../../../engine/gridRange';
import { h } from '../../../../pane/element';
import { onEveryChange } from '../../grid/changes';
import type { Grid } from '../../grid/grid';
import { restKeysWithin, takeKeyboard } from '../../grid/keyboard';
import { followFrames, layOverGrid } from '../../grid/overGrid';
import { sheetView } from '../../grid/sheetView';
import { type GridTable, tablesOn } from '../../grid/tables';
import { isBlank } from '../newTableRows';
import { cellsAway } from './cellsAway';
import './atFoot.css';

/** What can be done with a table. */
export interface TableAction {
  /** Whether its words tell something that must not be overlooked: then it comes first, and is never cut. */
  readonly isTelling?: true;
  /** Nothing where there is nothing to be done of that kind. */
  readonly label: (table: GridTable) => string | undefined;
  /** What it is called for one who hears it. */
  readonly name: (table: string, label: string) => string;
  /** Said when the pointer rests on it. */
  readonly about: string;
  readonly run: (table: GridTable) => void;
}

/** How tall the buttons are at the usual zoom, and how far they stand from the corner of their cell. */
const SIZE = { height: 18, gap: 3 } as const;

/** Rows that are shown above a foot that is scrolled to. */
const ABOVE = 6;

/** The buttons of one table. */
interface Foot {
  readonly element: HTMLElement;
  readonly buttons: readonly HTMLButtonElement[];
  /** How wide they are with their words, at the usual zoom; nothing until they are measured. */
  wide: number | undefined;
  /** The row that has room for them, or for the first alone; nothing until it is looked for, and after each change. */
  spot: { readonly row: number; readonly isSmall: boolean } | undefined;
}

/**
 * At the foot of each table of the sheet in view, buttons for what can be done with it. The first is there
 * alone, and small, until the pointer or the keyboard is on it: a person who clicks below a table shall not press what lies over
 * those cells. Where no pointer can rest on anything, the others come with the choice of a cell of the table.
 */
class AtFoot {
  readonly #grid: Grid;
  readonly #actions: readonly TableAction[];
  readonly #layer = h('div', { class: 'inks at-foot', role: 'group', 'aria-label': 'Tables of this sheet' });
  readonly #feet: Foot[] = [];
  readonly #pointer = matchMedia('(hover: hover)');
  #tables: readonly GridTable[] = [];
  readonly #followFrames: () => void;

  constructor(grid: Grid, actions: readonly TableAction[]) {
    this.#grid = grid;
    this.#followFrames = followFrames(grid, () => this.#settle());
    this.#actions = actions;
  }

  start(): void {
    const grid = this.#grid;
    restKeysWithin(grid, this.#layer);
    layOverGrid(grid, this.#layer, () => this.#look());
    onEveryChange(grid, () => this.#look());
  }

  /** The first button at the foot of the table that is nearest to the chosen cell, counted in cells. */
  near(): HTMLElement | undefined {
    const cell = this.#grid.api.getActiveWorkbook()?.getActiveCell();
    if (!cell) return undefined;
    const far = (table: GridTable): number => cellsAway(cell.getRow(), cell.getColumn(), table.getRange());
    const [nearest] = this.#tables
      .map((table, i) => ({ far: far(table), button: this.#feet[i]?.buttons.find((one) => !one.hidden) }))
      .sort((a, b) => a.far - b.far);
    return nearest?.button;
  }

  #look(): void {
    const sheet = this.#grid.api.getActiveWorkbook()?.getActiveSheet();
    this.#tables = sheet ? tablesOn(this.#grid, sheet.getSheetId()) : [];
    for (const { element } of this.#feet.splice(this.#tables.length)) element.remove();
    const cell = this.#grid.api.getActiveWorkbook()?.getActiveCell();
    for (const [i, table] of this.#tables.entries()) {
      const foot = (this.#feet[i] ??= this.#made(i));
      this.#name(foot, table);
      foot.spot = undefined;
      const isChosen = cell && holdsCell(table.getRange(), cell.getRow(), cell.getColumn());
      foot.element.classList.toggle('quiet', !isChosen || this.#pointer.matches);
    }
    this.#followFrames();
    this.#settle();
  }

  #name(foot: Foot, table: GridTable): void {
    for (const [k, { label, name }] of this.#actions.entries()) {
      const [button, words = ''] = [foot.buttons[k], label(table)];
      button?.setAttribute('aria-label', name(table.getDisplayName(), words));
      if (!button || button.textContent === words) continue;
      button.textContent = words;
      button.hidden = words === '';
      foot.wide = undefined;
    }
  }

  #made(i: number): Foot {
    const buttons = this.#actions.map(({ about, isTelling, run }) => {
      const button = h('button', {
        type: 'button',
        title: about,
        hidden: true,
        ...(isTelling ? { class: 'telling' } : {}),
      });
      button.addEventListener('click', () => {
        const table = this.#tables[i];
        takeKeyboard(this.#grid);
        if (table) run(table);
      });
      return button;
    });
    const element = h('div', { class: 'foot' }, ...buttons);
    element.addEventListener('focusin', () => this.#bringIntoSight(i));
    element.addEventListener('keydown', (event) => {
      if (event.key === 'Escape') takeKeyboard(this.#grid);
      // The grid listens for keys everywhere: those of a button are the button's.
      if (!event.ctrlKey) event.stopPropagation();
    });
    element.addEventListener('wheel', (event) => {
      event.preventDefault();
      sheetView(this.#grid)?.canvas.dispatchEvent(new WheelEvent(event.type, event));
    });
    this.#layer.append(element);
    return { element, buttons, wide: undefined, spot: undefined };
  }

  #settle(): void {
    // Without a place on the page they cannot be measured.
    const view = this.#tables.length > 0 && this.#layer.isConnected ? sheetView(this.#grid) : undefined;
    for (const [i, foot] of this.#feet.entries()) {
      const { element } = foot;
      const table = this.#tables[i]?.getRange();
      const row = (table?.endRow ?? 0) + 1;
      const columns = table ? table.endColumn - table.startColumn + 1 : 0;
      const seen = (at: number) =>
        table && view?.seen({ row: at, rows: 1, column: table.startColumn, columns });
      const below = seen(row);
      element.classList.toggle('away', !below || below.cutTop > 0);
      if (!table || !view || !below) {
        // Out of sight it lies over nothing, and all of it is within reach of the keyboard.
        element.classList.remove('small');
        continue;
      }
      element.style.setProperty('--zoom', String(view.zoom));
      foot.spot ??= this.#spotFor(foot, table, view.zoom);
      const { isSmall } = foot.spot;
      element.classList.toggle('small', isSmall);
      const place = seen(foot.spot.row);
      if (!place || place.cutTop > 0) element.classList.add('away');
      const gap = SIZE.gap * view.zoom;
      // Over words that stand there they would hide them: then the first alone is there, small, and on the edge of the table.
      const down =
        place && !isSmall
          ? place.y - below.y + (place.height - SIZE.height * view.zoom) / 2
          : (-SIZE.height * view.zoom) / 2;
      element.style.transform = `translate(${below.x + below.cutLeft + gap}px, ${below.y + down}px)`;
    }
  }

  #spotFor(foot: Foot, { endRow, startColumn, endColumn }: IRange, zoom: number): NonNullable<Foot['spot']> {
    const wide = (foot.wide ??= this.#measured(foot.element, zoom));
    const row = endRow + 1;
    const columns = endColumn - startColumn + 1;
    const taken = [row, row + 1].findIndex((at) => !this.#isFree(at, startColumn, columns, wide));
    // The row right below is for typing and pasting, where there is another: who clicks into it means its cells.
    return { row: [row - 1, row, row + 1].at(taken) ?? row, isSmall: taken === 0 };
  }

  #measured(element: HTMLElement, zoom: number): number {
    const look = element.className;
    element.classList.remove('small', 'quiet');
    const wide = element.offsetWidth / zoom;
    element.className = look;
    return wide;
  }

  /** Whether the cells that buttons so wide would lie over hold nothing. */
  #isFree(row: number, column: number, columns: number, wide: number): boolean {
    const sheet = this.#grid.api.getActiveWorkbook()?.getActiveSheet().getSheet();
    if (!sheet) return true;
    let width = 0;
    for (let i = column; i < column + columns && width < wide; i++) {
      if (!isBlank(sheet.getCellRaw(row, i))) return false;
      width += sheet.getColumnWidth(i);
    }
    return true;
  }

  #bringIntoSight(i: number): void {
    const range = this.#tables[i]?.getRange();
    if (!range || !this.#feet[i]?.element.classList.contains('away')) return;
    const sheet = this.#grid.api.getActiveWorkbook()?.getActiveSheet();
    sheet?.scrollToCell(Math.max(0, range.endRow - ABOVE), range.startColumn);
  }
}

/**
 * Shows at the foot of each table, from now on, what can be done with it.
 * @returns what finds the first button of the table nearest to the chosen cell.
 */
export function showAtFoot(grid: Grid, actions: readonly TableAction[]): () => HTMLElement | undefined {
  const atFoot = new AtFoot(grid, actions);
  atFoot.start();
  return () => atFoot.near();
}
