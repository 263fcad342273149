import { h } from '../../../pane/element';
import type { setImage } from '../../../set/setImage';
import type { SheetAsRead } from '../../../set/sheetAsRead';

const TOLD_OF_KEYS =
  'Arrow keys move it, Shift and an arrow key size it, Delete takes it away, Escape goes back to the cells.';
const NO_PLACES = 'No places yet: they stand in a table with the columns Light, X, Y and Height.';

/** Pixels of its edges and what is left free within them, left and right. */
const BESIDE = 18;

type Draw = typeof setImage;
/** The code that draws comes with the first picture. */
let draw: Draw | undefined;

/** An SVG text as an element. It is our own, and all words in it are escaped. */
const elementOf = (svg: string): Element =>
  document.importNode(new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement, true);

/** The picture of the set as it stands on its sheet, drawn from its cells. */
export class PictureFace {
  readonly #plot = h('div', { class: 'plot' });
  readonly corner = h('div', { class: 'corner', 'aria-hidden': 'true' });
  readonly element = h('figure', { class: 'chart picture', tabindex: 0 }, this.#plot, this.corner);
  #sheet: SheetAsRead | undefined;
  /** Width, zoom and colours that it is drawn for. */
  #drawnFor = '';

  tell(sheet: SheetAsRead): void {
    this.#sheet = sheet;
    this.#drawnFor = '';
  }

  /** Draws it as large as its place, unless it is drawn so already. */
  fit(width: number, height: number, zoom: number): void {
    if (!this.element.isConnected) return;
    this.element.style.setProperty('--zoom', String(zoom));
    const wanted = `${width} ${height} ${zoom}`;
    if (wanted === this.#drawnFor) return;
    if (draw) {
      this.#drawnFor = wanted;
      this.#draw(draw, width / zoom - BESIDE);
      return;
    }
    void import(/* webpackChunkName: "set-picture" */ '../../../set/setImage').then(
      (drawing) => {
        draw = drawing.setImage;
        this.fit(width, height, zoom);
      },
      () => this.#say('The picture did not arrive. Load the page anew when the network is back.'),
    );
  }

  #draw(drawing: Draw, width: number): void {
    const { color: ink, backgroundColor: paper } = getComputedStyle(this.element);
    const made = this.#sheet && drawing(this.#sheet, Math.max(300, Math.round(width)), { ink, paper });
    if (!made) {
      this.#say(NO_PLACES);
      return;
    }
    const svg = elementOf(made.svg);
    svg.setAttribute('aria-hidden', 'true');
    svg.setAttribute('preserveAspectRatio', 'xMinYMin meet');
    svg.setAttribute('width', '100%');
    svg.setAttribute('height', '100%');
    this.#plot.replaceChildren(svg);
    this.element.setAttribute('aria-label', `The picture of the set. ${made.said} ${TOLD_OF_KEYS}`);
  }

  #say(sentence: string): void {
    this.#plot.replaceChildren(h('p', {}, sentence));
    this.element.setAttribute('aria-label', `The picture of the set. ${sentence} ${TOLD_OF_KEYS}`);
  }

  /** Draws it anew when it is next seen, with the colours that hold then. */
  repaint(): void {
    this.#drawnFor = '';
  }

  dispose(): void {
    this.element.remove();
  }
}
