import type { BookCell, BookSheet } from '../../../book/book';
import type { BookChart } from '../../../book/chart';
import { styleOf } from '../../../sheets/looks';

/** Where another host draws a chart: in the grid it would be an unexplained gap, in a file the chart covers it. */
const chartSign = ({ title, place: { row, column } }: BookChart): BookCell => ({
  row,
  column,
  value: `${title}: its chart is under “Charts” on the right.`,
  style: styleOf('remark'),
});

/** A sheet as the grid can hold it. */
export const withChartSigns = (sheet: BookSheet): BookSheet => ({
  ...sheet,
  cells: [...sheet.cells, ...sheet.charts.map(chartSign)],
});
