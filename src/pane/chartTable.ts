import { chartRows } from './chartRows';
import { h } from './element';
import type { LiveChart } from './host';
import { numberText, plainNumber } from './numberText';

const xText = (x: number | string): string => (typeof x === 'number' ? plainNumber(x) : x);

/** The numbers of a chart, for those who cannot see it or want them exactly. */
export const chartTable = ({ xTitle, ...chart }: LiveChart): HTMLTableElement =>
  h(
    'table',
    {},
    h(
      'thead',
      {},
      h(
        'tr',
        {},
        h('th', { scope: 'col' }, xTitle),
        ...chart.series.map(({ name }) => h('th', { scope: 'col' }, name)),
      ),
    ),
    h(
      'tbody',
      {},
      ...chartRows(chart).map(({ x, values }) =>
        h(
          'tr',
          {},
          h('th', { scope: 'row' }, xText(x)),
          ...chart.series.map(({ format }, i) => {
            const value = values[i];
            return h('td', {}, value == null ? '–' : numberText(value, format));
          }),
        ),
      ),
    ),
  );
