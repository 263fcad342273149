import { h } from '../../../../pane/element';
import { numberText, plainNumber } from '../../../../pane/numberText';
import { isDrawn, type LiveChart } from '../liveChart';
import { chartRows } from './chartRows';
import { isFNumber } from './stopMarks';

function xText(x: number | string, format: string): string {
  if (typeof x === 'string') return x;
  return isFNumber(format) ? numberText(x, format) : plainNumber(x);
}

/** The numbers of a chart, for those who cannot see it or want them exactly. */
export const chartTable = ({ xTitle, xFormat, ...chart }: LiveChart): HTMLTableElement =>
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
        ...chart.series.filter(isDrawn).map(({ name }) => h('th', { scope: 'col' }, name)),
      ),
    ),
    h(
      'tbody',
      {},
      ...chartRows(chart).map(({ x, values }) =>
        h(
          'tr',
          {},
          h('th', { scope: 'row' }, xText(x, xFormat)),
          ...chart.series.flatMap((series, i) => {
            const value = values[i];
            const text = value == null ? '–' : numberText(value, series.format);
            return isDrawn(series) ? [h('td', {}, text)] : [];
          }),
        ),
      ),
    ),
  );
