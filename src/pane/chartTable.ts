import { h } from './element';
import type { LiveChart } from './host';
import { numberText, plainNumber } from './numberText';

const xText = (x: number | string): string => (typeof x === 'number' ? plainNumber(x) : x);

/** The numbers of a chart, for those who cannot see it or want them exactly. */
export const chartTable = ({ x, xTitle, series }: LiveChart): HTMLTableElement =>
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
        ...series.map(({ name }) => h('th', { scope: 'col' }, name)),
      ),
    ),
    h(
      'tbody',
      {},
      ...x.map((at, row) =>
        h(
          'tr',
          {},
          h('th', { scope: 'row' }, xText(at)),
          ...series.map(({ values, format }) => {
            const value = values[row];
            return h('td', {}, value == null ? '–' : numberText(value, format));
          }),
        ),
      ),
    ),
  );
