import './languageTag';
import uPlot from 'uplot';
import type { LiveChart } from '../liveChart';
import type { Inks, Size } from './axes';
import { barData, barOptions } from './bars';
import { lineData, lineOptions } from './lines';

export const hasNumbers = ({ series }: LiveChart): boolean =>
  series.some(({ values }) => values.some((value) => value != null));

/** Draws a chart into an element, as large as is said. */
export function drawChart(chart: LiveChart, inks: Inks, place: HTMLElement, size: Size): uPlot {
  const { width, height } = size;
  const common = { width, height, cursor: { show: false }, legend: { show: false } };
  if (chart.kind === 'column')
    return new uPlot({ ...common, ...barOptions(chart, inks, size) }, barData(chart), place);
  const data = lineData(chart);
  return new uPlot({ ...common, ...lineOptions(chart, inks, size, data) }, data, place);
}
