import type uPlot from 'uplot';
import { seriesLook } from '../book/seriesLook';
import { chartTable } from './chartTable';
import { drawChart, hasNumbers, type Inks } from './chart';
import { h } from './element';
import type { LiveChart } from './host';

/** One chart with its title, its key and its numbers. It can be told new numbers, and keeps what is open. */
export class ChartCard {
  readonly #title: HTMLElement;
  readonly #plot = h('div', { class: 'plot', role: 'img' });
  readonly #keys = h('ul', { class: 'keys' });
  readonly #note = h('p', { class: 'hint' });
  readonly #numbers = h('div', { class: 'numbers' });
  readonly element: HTMLElement;
  readonly #sizes = new ResizeObserver(() => this.#fit());
  #chart: LiveChart | undefined;
  #drawn: uPlot | undefined;

  constructor(id: string) {
    this.#title = h('h2', { id });
    this.element = h(
      'section',
      { class: 'card chart', 'aria-labelledby': id },
      this.#title,
      this.#keys,
      this.#plot,
      this.#note,
      h('details', {}, h('summary', {}, 'Show the numbers'), this.#numbers),
    );
    this.#sizes.observe(this.#plot);
  }

  tell(chart: LiveChart): void {
    this.#chart = chart;
    this.#title.textContent = chart.title;
    this.#keys.replaceChildren(
      ...chart.series.map((series, i) => {
        const { ink, dash, marks } = seriesLook(series, i, chart.x.length);
        const key = h(
          'li',
          {},
          h('span', { class: `ink ${ink} ${chart.kind} ${dash} ${marks}` }),
          series.name,
        );
        key.hidden = chart.series.length < 2;
        return key;
      }),
    );
    this.#plot.setAttribute('aria-label', `${chart.yTitle} against ${chart.xTitle}. The numbers follow.`);
    this.#note.textContent = chart.note ?? '';
    this.#note.hidden = chart.note === undefined;
    this.#numbers.replaceChildren(chartTable(chart));
    this.draw();
  }

  /** Draws again, with the colours that hold now. */
  draw(): void {
    this.#drawn?.destroy();
    this.#drawn = undefined;
    const width = this.#plot.clientWidth;
    if (!this.#chart || width === 0) return;
    if (hasNumbers(this.#chart)) {
      this.#plot.replaceChildren();
      this.#drawn = drawChart(this.#chart, this.#inks(), this.#plot, width);
    } else this.#plot.replaceChildren(h('p', {}, 'No numbers yet: fill in the inputs of the sheet.'));
  }

  dispose(): void {
    this.#sizes.disconnect();
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

  #fit(): void {
    const width = this.#plot.clientWidth;
    if (width === 0) return;
    if (this.#drawn) this.#drawn.setSize({ width, height: this.#drawn.height });
    else this.draw();
  }
}
