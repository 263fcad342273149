import type uPlot from 'uplot';
import { isColumns } from '../../../../book/chart';
import { seriesLook } from '../../../../book/seriesLook';
import { h } from '../../../../pane/element';
import type { Inks } from '../drawing/axes';
import { barFillOf } from '../drawing/barFill';
import { chartTable } from '../drawing/chartTable';
import { drawChart, hasNumbers } from '../drawing/draw';
import { isDrawn, type LiveChart } from '../liveChart';
import { undoKey } from '../../grid/undoKey';

const TOLD_OF_KEYS = 'Arrow keys move it, Shift and an arrow key size it, Escape goes back to the cells.';
const NO_NUMBERS = 'No numbers yet: fill in the inputs of the sheet.';
const gone = (): string => `The cells that this chart drew are gone. ${undoKey()} brings them back.`;

/** One chart as it stands on its sheet: title, key, drawing, and its numbers for those who do not see it. */
export class Face {
  readonly #title = h('figcaption', {});
  readonly #keys = h('ul', { class: 'keys', 'aria-hidden': 'true' });
  readonly #plot = h('div', { class: 'plot' });
  readonly #numbers = h('div', { class: 'heard' });
  readonly corner = h('div', { class: 'corner', 'aria-hidden': 'true' });
  readonly element = h(
    'figure',
    { class: 'chart', tabindex: 0 },
    this.#title,
    this.#keys,
    this.#plot,
    this.#numbers,
    this.corner,
  );
  #chart: LiveChart | undefined;
  #drawn: uPlot | undefined;
  /** Width, height, zoom and pixels of the screen that it is drawn for. */
  #drawnFor = '';

  tell(chart: LiveChart): void {
    this.#chart = chart;
    this.#drawnFor = '';
    const { title, series, x } = chart;
    this.#title.textContent = title;
    this.#title.hidden = title === '';
    this.element.setAttribute('aria-label', `Chart${title === '' ? '' : `: ${title}`}. ${TOLD_OF_KEYS}`);
    this.#keys.replaceChildren(
      ...series.map((each, i) => {
        const { ink, dash, marks } = seriesLook(each, i, x.length);
        const look = isColumns(chart, each) ? `column ${barFillOf(i)}` : `${dash} ${marks}`;
        const isShown = isDrawn(each) ? {} : ({ hidden: true } as const);
        return h('li', isShown, h('span', { class: `ink ${ink} ${look}` }), each.name);
      }),
    );
    this.#keys.hidden = series.length < 2;
    this.#numbers.replaceChildren(chartTable(chart));
  }

  /** Draws it as large as its place, unless it is drawn so already. */
  fit(width: number, height: number, zoom: number): void {
    const wanted = `${width} ${height} ${zoom} ${devicePixelRatio}`;
    // Without a place on the page it has no size to be drawn in.
    if (wanted === this.#drawnFor || !this.element.isConnected) return;
    this.#drawnFor = wanted;
    this.element.style.setProperty('--zoom', String(zoom));
    this.#draw(zoom);
  }

  /** Draws it anew when it is next seen, with the colours that hold then. */
  repaint(): void {
    this.#drawnFor = '';
  }

  #draw(zoom: number): void {
    this.#drawn?.destroy();
    this.#drawn = undefined;
    const chart = this.#chart;
    if (!chart) return;
    if (chart.series.length === 0 || !hasNumbers(chart)) {
      this.#plot.replaceChildren(h('p', {}, chart.series.length === 0 ? gone() : NO_NUMBERS));
      return;
    }
    this.#plot.replaceChildren();
    const { clientWidth: width, clientHeight: height } = this.#plot;
    if (width > 0 && height > 0)
      this.#drawn = drawChart(chart, this.#inks(), this.#plot, { width, height, zoom });
  }

  dispose(): void {
    this.#drawn?.destroy();
    this.element.remove();
  }

  #inks(): Inks {
    const look = getComputedStyle(this.#plot);
    const inks = [...this.#keys.querySelectorAll('.ink')];
    return {
      text: look.color,
      lines: look.borderTopColor,
      series: inks.map((ink) => getComputedStyle(ink).color),
    };
  }
}
