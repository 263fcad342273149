import type { BookChart } from '../../../../book/chart';
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
import { liveCharts, type PlacedChart } from '../liveCharts';
import { chartChange } from '../setCharts';
import { Face } from './face';
import { draggable, type Held } from './hand';
import { byCells, type Wish } from './newPlace';
import './onSheet.css';

const ARROWS: Readonly<Record<string, readonly [rows: number, columns: number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

/** Rows that are shown above a chart that is scrolled to: the rows that stay would hide its head. */
const ABOVE = 3;

/** One chart of the sheet in view. */
interface Standing {
  /** What is drawn: one more for each further piece of a chart that reaches over rows or columns that stay. */
  readonly faces: [Face, ...Face[]];
  readonly held: Held;
  chart: PlacedChart;
  /** What it was told last, to see whether it has to be drawn anew. */
  told: string;
  /** Where it is dragged to at the moment. */
  dragged: Area | undefined;
}

/** The charts of the sheet in view, drawn over the grid's canvas by elements of the page's own. */
class Overlay {
  readonly #grid: Grid;
  readonly #standing: Standing[] = [];
  readonly #said = h('div', { class: 'heard', role: 'status' });
  readonly #layer = h('div', { class: 'inks charts', role: 'group', 'aria-label': 'Charts of this sheet' });
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
    const charts = liveCharts(this.#grid);
    for (const { faces } of this.#standing.splice(charts.length)) for (const face of faces) face.dispose();
    for (const [i, chart] of charts.entries()) {
      const standing = (this.#standing[i] ??= this.#stand(i, chart));
      standing.chart = chart;
      const told = JSON.stringify(chart.live);
      if (told !== standing.told) for (const face of standing.faces) face.tell(chart.live);
      standing.told = told;
    }
    this.#followFrames();
    this.#settle();
  }

  #settle(): void {
    if (this.#standing.length === 0) return;
    const view = sheetView(this.#grid);
    for (const standing of this.#standing) {
      const { faces, chart, dragged } = standing;
      const pieces = view?.pieces(dragged ?? chart.kept.place) ?? [];
      while (faces.length < pieces.length) this.#copy(standing);
      for (const [k, face] of faces.entries()) {
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
    for (const { faces } of this.#standing) for (const face of faces) face.repaint();
    this.#settle();
  }

  #stand(i: number, chart: PlacedChart): Standing {
    const face = new Face();
    const held: Held = {
      place: () => standing.chart.kept.place,
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
    const standing: Standing = { faces: [face], held, chart, told: '', dragged: undefined };
    this.#layer.append(face.element);
    this.#letDrag(face, held);
    face.element.addEventListener('keydown', (event) => this.#key(event, i));
    face.element.addEventListener('focus', () => this.#bringIntoSight(i));
    return standing;
  }

  /** Another piece of a chart, which is heard and reached by keys as one. */
  #copy({ faces, held, chart }: Standing): void {
    const face = new Face();
    face.element.setAttribute('aria-hidden', 'true');
    face.element.removeAttribute('tabindex');
    face.tell(chart.live);
    faces[0].element.after(face.element);
    this.#letDrag(face, held);
    faces.push(face);
  }

  #letDrag(face: Face, held: Held): void {
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
    const put = (chart: BookChart, at: number): BookChart => (at === i ? { ...chart, place } : chart);
    const change = sheet && chartChange(this.#grid, sheet.getSheetId(), put);
    if (!change) {
      this.#settle();
      return;
    }
    takeStep(this.#grid, change.redo, change.undo);
    this.#look();
    this.#said.textContent = `From ${areaText(place).replace(':', ' to ')}`;
  }

  #bringIntoSight(i: number): void {
    const place = this.#standing[i]?.chart.kept.place;
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
      const place = this.#standing[i]?.chart.kept.place;
      const wish: Wish = event.shiftKey ? 'size' : 'move';
      if (view && place) this.#put(i, byCells(place, wish, ...arrow, view));
      this.#bringIntoSight(i);
    } else if (event.key === 'Escape') takeKeyboard(this.#grid);
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
    first.faces[0].element.focus({ preventScroll: true });
  }
}

/** Shows the charts of sheets on their sheets, from now on. */
export const showCharts = (grid: Grid): void => {
  new Overlay(grid).start();
};
