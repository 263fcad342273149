import { areaText } from '../../../../formula/areaText';
import type { Area } from '../../../../formula/area';
import { h } from '../../../../pane/element';
import { watchTheme } from '../../../../pane/watchTheme';
import { onEveryChange } from '../../grid/changes';
import type { Grid } from '../../grid/grid';
import { restKeysWithin, takeKeyboard } from '../../grid/keyboard';
import { takeStep } from '../../grid/sheetData';
import { followFrames, layOverGrid } from '../../grid/overGrid';
import { sheetView } from '../../grid/sheetView';
import { keptChange } from '../setCharts';
import { draggable, type Held } from './hand';
import { byCells, type Wish } from './newPlace';
import { type OnSheet, type Shown, shownAs, standingOn } from './standing';
import './onSheet.css';

const ARROWS: Readonly<Record<string, readonly [rows: number, columns: number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

/** Rows that are shown above a chart that is scrolled to: the rows that stay would hide its head. */
const ABOVE = 3;

/** One chart or picture of the sheet in view. */
interface Standing {
  /** What is drawn: one more for each further piece of a chart that reaches over rows or columns that stay. */
  readonly shown: [Shown, ...Shown[]];
  readonly held: Held;
  one: OnSheet;
  /** What it was told last, to see whether it has to be drawn anew. */
  told: string;
  /** Where it is dragged to at the moment. */
  dragged: Area | undefined;
}

function dispose({ shown }: Standing): void {
  for (const { face } of shown) face.dispose();
}

/** The charts and pictures of the sheet in view, drawn over the grid's canvas by elements of the page's own. */
class Overlay {
  readonly #grid: Grid;
  readonly #standing: Standing[] = [];
  readonly #said = h('div', { class: 'heard', role: 'status' });
  readonly #layer = h('div', {
    class: 'inks charts',
    role: 'group',
    'aria-label': 'Charts and pictures of this sheet',
  });
  readonly #followFrames: () => void;

  constructor(grid: Grid) {
    this.#grid = grid;
    this.#followFrames = followFrames(grid, () => this.#settle());
    this.#layer.append(this.#said);
  }

  start(): void {
    const grid = this.#grid;
    restKeysWithin(grid, this.#layer);
    watchTheme(() => this.#repaint());
    layOverGrid(grid, this.#layer, () => this.#settle());
    this.#look();
    onEveryChange(grid, () => this.#look());
    addEventListener('keydown', (event) => this.#toCharts(event), { capture: true });
  }

  /** Reads the charts anew, and draws those that are not as they were. */
  #look(): void {
    const sheet = this.#grid.api.getActiveWorkbook()?.getActiveSheet();
    const all = sheet ? standingOn(sheet) : [];
    for (const standing of this.#standing.splice(all.length)) dispose(standing);
    for (const [i, one] of all.entries()) {
      const there = this.#standing[i];
      const isOther = there !== undefined && there.one.kind !== one.kind;
      if (isOther) dispose(there);
      const standing = there === undefined || isOther ? this.#stand(i, one) : there;
      this.#standing[i] = standing;
      standing.one = one;
      const told = JSON.stringify(one.live);
      if (told !== standing.told) for (const { tell } of standing.shown) tell(one);
      standing.told = told;
    }
    this.#followFrames();
    this.#settle();
  }

  #settle(): void {
    if (this.#standing.length === 0) return;
    const view = sheetView(this.#grid);
    for (const standing of this.#standing) {
      const { shown, one, dragged } = standing;
      const pieces = view?.pieces(dragged ?? one.place) ?? [];
      while (shown.length < pieces.length) this.#copy(standing);
      for (const [k, { face }] of shown.entries()) {
        const [seen, { style }] = [pieces[k], face.element];
        // One that is out of sight can still be heard, and reached by keys.
        face.element.classList.toggle('away', !seen);
        if (!view || !seen) continue;
        const { cutTop, cutRight, cutBottom, cutLeft } = seen;
        style.width = `${seen.width}px`;
        style.height = `${seen.height}px`;
        style.transform = `translate(${seen.x}px, ${seen.y}px)`;
        const isCut = cutTop + cutRight + cutBottom + cutLeft > 0;
        style.clipPath = isCut ? `inset(${cutTop}px ${cutRight}px ${cutBottom}px ${cutLeft}px)` : '';
        face.fit(seen.width, seen.height, view.zoom);
      }
    }
  }

  #repaint(): void {
    for (const { shown } of this.#standing) for (const { face } of shown) face.repaint();
    this.#settle();
  }

  #stand(i: number, one: OnSheet): Standing {
    const first = shownAs(one.kind);
    const { face } = first;
    const held: Held = {
      place: () => standing.one.place,
      view: () => sheetView(this.#grid),
      show: (place: Area | undefined) => {
        standing.dragged = place;
        this.#settle();
      },
      put: (place: Area) => {
        standing.dragged = undefined;
        this.#put(i, place);
      },
    };
    const standing: Standing = { shown: [first], held, one, told: '', dragged: undefined };
    this.#layer.append(face.element);
    this.#letDrag(face, held);
    face.element.addEventListener('keydown', (event) => this.#key(event, i));
    face.element.addEventListener('focus', () => this.#bringIntoSight(i));
    return standing;
  }

  /** Another piece of a chart, which is heard and reached by keys as one. */
  #copy({ shown, held, one }: Standing): void {
    const another = shownAs(one.kind);
    const { face } = another;
    face.element.setAttribute('aria-hidden', 'true');
    face.element.removeAttribute('tabindex');
    another.tell(one);
    shown[0].face.element.after(face.element);
    this.#letDrag(face, held);
    shown.push(another);
  }

  #letDrag(face: Shown['face'], held: Held): void {
    draggable(face.element, 'move', held);
    draggable(face.corner, 'size', held);
    // What is turned over a chart scrolls the sheet, or zooms it.
    face.element.addEventListener('wheel', (event) => {
      event.preventDefault();
      sheetView(this.#grid)?.canvas.dispatchEvent(new WheelEvent(event.type, event));
    });
  }

  /** Puts a chart into another place, as a step that undo takes back. */
  #put(i: number, place: Area): void {
    const sheet = this.#grid.api.getActiveWorkbook()?.getActiveSheet();
    const put = <T extends object>(all: readonly T[], at: number): T[] =>
      all.map((each, n) => (n === at ? { ...each, place } : each));
    const change =
      sheet &&
      keptChange(this.#grid, sheet.getSheetId(), ({ charts, pictures, ...kept }) => ({
        ...kept,
        charts: put(charts, i),
        ...(pictures ? { pictures: put(pictures, i - charts.length) } : {}),
      }));
    if (!change) {
      this.#settle();
      return;
    }
    takeStep(this.#grid, change.redo, change.undo);
    this.#look();
    this.#said.textContent = `From ${areaText(place).replace(':', ' to ')}`;
  }

  /** Takes a picture away, as a step that undo takes back. Charts belong to their sheets and stay. */
  #takeAway(i: number): void {
    const sheet = this.#grid.api.getActiveWorkbook()?.getActiveSheet();
    const change =
      sheet &&
      keptChange(this.#grid, sheet.getSheetId(), (kept) => ({
        ...kept,
        pictures: (kept.pictures ?? []).filter((_, n) => n !== i - kept.charts.length),
      }));
    if (!change) return;
    takeStep(this.#grid, change.redo, change.undo);
    takeKeyboard(this.#grid);
    this.#look();
    this.#said.textContent = 'The picture is taken away.';
  }

  #bringIntoSight(i: number): void {
    const place = this.#standing[i]?.one.place;
    if (!place || sheetView(this.#grid)?.seen(place)) return;
    const sheet = this.#grid.api.getActiveWorkbook()?.getActiveSheet();
    sheet?.scrollToCell(Math.max(0, place.row - ABOVE), place.column);
  }

  #key(event: KeyboardEvent, i: number): void {
    const arrow = ARROWS[event.key];
    const isCommand = event.ctrlKey || event.metaKey;
    if (event.altKey) return;
    if (arrow && !isCommand) {
      const view = sheetView(this.#grid);
      const place = this.#standing[i]?.one.place;
      const wish: Wish = event.shiftKey ? 'size' : 'move';
      if (view && place) this.#put(i, byCells(place, wish, ...arrow, view));
      this.#bringIntoSight(i);
    } else if (event.key === 'Delete' && this.#standing[i]?.one.kind === 'picture') this.#takeAway(i);
    else if (event.key === 'Escape') takeKeyboard(this.#grid);
    else if (isCommand && /^[zy]$/i.test(event.key)) {
      const isRedo = event.shiftKey || event.key.toLowerCase() === 'y';
      void (isRedo ? this.#grid.api.redo() : this.#grid.api.undo());
    } else return;
    event.preventDefault();
    event.stopPropagation();
  }

  /** As in other spreadsheets: from a cell to the first chart, wherever on the sheet it stands. */
  #toCharts(event: KeyboardEvent): void {
    const [first] = this.#standing;
    // Where AltGr writes letters, it comes as both of these keys.
    const isAltGr = event.getModifierState('AltGraph');
    const asks = event.ctrlKey && event.altKey && !isAltGr && event.code === 'Digit5';
    if (!asks || !first) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    first.shown[0].face.element.focus({ preventScroll: true });
  }
}

/** Shows the charts of sheets on their sheets, from now on. */
export const showCharts = (grid: Grid): void => {
  new Overlay(grid).start();
};
